package rollbook.purchase;

import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.purchase.OrderStep.Kind;
import rollbook.supplier.DeliveredTo;

/**
 * An order and all that became of it.
 *
 * @param number counted from one in each production
 * @param supplierId null while a line isn't in a catalogue yet, and of orders from before suppliers were kept
 * @param supplierName empty if there is none
 * @param deliveryMinorUnits price of the delivery
 * @param neededBy when it has to be there; null if nobody said
 * @param sourceName the leg or the scenario it came from, as it was called then
 * @param steps in their order, those too that were taken back
 * @param changedAt when the last step or receipt was recorded
 * @param version for noticing that somebody else did something with it meanwhile
 */
public record PurchaseOrder(
        UUID id,
        int number,
        @Nullable UUID supplierId,
        String supplierName,
        DeliveredTo deliveredTo,
        long deliveryMinorUnits,
        @Nullable LocalDate neededBy,
        String note,
        Source source,
        String sourceName,
        List<OrderLine> lines,
        List<OrderStep> steps,
        Instant changedAt,
        int version) {

    /** Where an order came from. */
    public enum Source {
        FLAG,
        SCENARIO,
        HAND
    }

    /** How an order stands. */
    public enum State {
        PROPOSED,
        APPROVED,
        PLACED,
        PART_ARRIVED,
        /** Nothing more is expected: all of it came, was credited or called off. */
        ARRIVED,
        CLOSED,
        DECLINED,
        /** Called off before anything came. */
        CANCELLED
    }

    private static final Set<State> AWAITED = EnumSet.of(State.PLACED, State.PART_ARRIVED);

    public PurchaseOrder {
        lines = List.copyOf(lines);
        steps = List.copyOf(steps);
    }

    OrderHistory history() {
        return new OrderHistory(steps);
    }

    /** The steps that may be taken back: no later step and no receipt rests on them. */
    List<OrderStep> revocable() {
        return history().revocable(lines.stream().anyMatch(line -> line.receipts() > 0));
    }

    public State state() {
        OrderHistory history = history();
        if (history.has(Kind.CLOSED)) {
            return State.CLOSED;
        } else if (history.has(Kind.DECLINED)) {
            return State.DECLINED;
        } else if (history.has(Kind.CANCELLED)) {
            return came() > 0 ? State.ARRIVED : State.CANCELLED;
        } else if (history.has(Kind.PLACED)) {
            return lines.stream().allMatch(line -> line.left() == 0)
                    ? State.ARRIVED
                    : came() > 0 ? State.PART_ARRIVED : State.PLACED;
        }
        return history.has(Kind.APPROVED) ? State.APPROVED : State.PROPOSED;
    }

    /** Whether something of it is still to come. */
    public boolean isAwaited() {
        return AWAITED.contains(state());
    }

    /** Whether it isn't placed yet and may still be. */
    public boolean isOpen() {
        return state() == State.PROPOSED || state() == State.APPROVED;
    }

    /** Whether something of it should have come before this day. */
    public boolean isOverdue(LocalDate today) {
        LocalDate expected = expectedOn();
        return isAwaited() && expected != null && expected.isBefore(today);
    }

    /** Whether all is known that an approval needs: the supplier and what each line costs. */
    public boolean isComplete() {
        return supplierId != null && totalMinorUnits() != null;
    }

    /** Whether what came of it may be recorded, or that be corrected: it is placed, not closed and nothing called off. */
    public boolean takesReceipts() {
        OrderHistory history = history();
        return history.has(Kind.PLACED) && !history.has(Kind.CLOSED) && !history.has(Kind.CANCELLED);
    }

    /** Whether what hadn't come was called off. */
    public boolean isCalledOff() {
        return history().has(Kind.CANCELLED);
    }

    /** Null if it has no such line. */
    @Nullable
    OrderLine line(@Nullable UUID lineId) {
        return lines.stream()
                .filter(line -> line.id().equals(lineId))
                .findFirst()
                .orElse(null);
    }

    /** Null before it is placed. */
    public @Nullable LocalDate orderedOn() {
        return history().last(Kind.PLACED).map(OrderStep::onDate).orElse(null);
    }

    /** As the supplier said last; null before it is placed. */
    public @Nullable LocalDate expectedOn() {
        return history()
                .last(Kind.PLACED, Kind.PROMISED)
                .map(OrderStep::expectedOn)
                .orElse(null);
    }

    public int items() {
        return lines.stream().mapToInt(OrderLine::items).sum();
    }

    /** Items that came in good order. */
    public int came() {
        return lines.stream().mapToInt(OrderLine::came).sum();
    }

    /** Items that are still to come. */
    public int left() {
        return isAwaited() ? lines.stream().mapToInt(OrderLine::left).sum() : 0;
    }

    /** When the last of it came; null before anything did. */
    public @Nullable LocalDate lastCameOn() {
        return lines.stream()
                .map(OrderLine::lastCameOn)
                .filter(Objects::nonNull)
                .max(LocalDate::compareTo)
                .orElse(null);
    }

    /** Of all lines and the delivery as they were ordered; null while a price isn't known. */
    public @Nullable Long totalMinorUnits() {
        long total = deliveryMinorUnits;
        for (OrderLine line : lines) {
            Long cost = line.costMinorUnits();
            if (cost == null) {
                return null;
            }
            total = Math.addExact(total, cost);
        }
        return total;
    }

    /**
     * What is paid or will be: nothing before it is placed, nothing for what was credited or called off; null while a
     * price isn't known.
     */
    public @Nullable Long owedMinorUnits() {
        if (!history().has(Kind.PLACED) || state() == State.CANCELLED) {
            return 0L;
        }
        long owed = deliveryMinorUnits;
        for (OrderLine line : lines) {
            Long cost = line.costMinorUnits(isCalledOff() ? line.came() : line.items() - line.credited());
            if (cost == null) {
                return null;
            }
            owed = Math.addExact(owed, cost);
        }
        return owed;
    }
}
