package rollbook.purchase;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.ordering.SupplierDays;
import rollbook.production.Membership;
import rollbook.production.Productions;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.supplier.Market;
import rollbook.supplier.SupplyTerms;
import rollbook.web.Display;

/** Gathers what the pages about orders show. */
@Component
class OrderPages {
    private final Orders orders;
    private final Limits limits;
    private final LateArrivals late;
    private final Market market;
    private final Productions productions;
    private final OrderWords words;
    private final Display display;
    private final Clock clock;

    OrderPages(
            Orders orders,
            Limits limits,
            LateArrivals late,
            Market market,
            Productions productions,
            OrderWords words,
            Display display,
            Clock clock) {
        this.orders = orders;
        this.limits = limits;
        this.late = late;
        this.market = market;
        this.productions = productions;
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    /** An order in the list of all. */
    record Row(PurchaseOrder order, String what, String date, boolean late, String total) {}

    /** How many orders stand so. */
    record StateCount(State state, long orders) {}

    /** What a sum of orders comes to. */
    record Sum(String name, String amount) {}

    /**
     * All orders, or those of one state.
     *
     * @param shown null for all
     */
    record AllPage(
            String sentence,
            List<StateCount> states,
            @Nullable State shown,
            long all,
            List<Row> rows,
            List<Sum> sums) {}

    AllPage all(Membership membership, @Nullable State shown) {
        List<PurchaseOrder> all = orders.list(membership.productionId());
        Lateness lateness = late.of(membership.productionId(), all);
        Currency currency = currency(membership);
        return new AllPage(
                words.sentence(all, lateness),
                Stream.of(State.values())
                        .map(state -> new StateCount(
                                state,
                                all.stream()
                                        .filter(order -> order.state() == state)
                                        .count()))
                        .filter(count -> count.orders() > 0)
                        .toList(),
                shown,
                all.size(),
                all.stream()
                        .filter(order -> shown == null || order.state() == shown)
                        .sorted(Comparator.comparing(PurchaseOrder::state)
                                .thenComparing(Comparator.comparing(PurchaseOrder::number)
                                        .reversed()))
                        .map(order -> new Row(
                                order,
                                words.what(order),
                                words.date(order, lateness),
                                lateness.isLate(order),
                                words.total(order, currency)))
                        .toList(),
                sums(all, currency));
    }

    private List<Sum> sums(List<PurchaseOrder> all, Currency currency) {
        return Stream.of(
                        sum("purchase.sum.open", all.stream().filter(PurchaseOrder::isOpen), currency),
                        sum("purchase.sum.awaited", all.stream().filter(PurchaseOrder::isAwaited), currency),
                        sum(
                                "purchase.sum.came",
                                all.stream()
                                        .filter(order ->
                                                order.state() == State.ARRIVED || order.state() == State.CLOSED),
                                currency))
                .flatMap(Stream::ofNullable)
                .toList();
    }

    /** Null if there are none. */
    private @Nullable Sum sum(String key, Stream<PurchaseOrder> of, Currency currency) {
        List<PurchaseOrder> summed = of.toList();
        List<Long> known = summed.stream()
                .map(order -> order.isOpen() ? order.totalMinorUnits() : order.owedMinorUnits())
                .filter(Objects::nonNull)
                .toList();
        if (summed.isEmpty()) {
            return null;
        }
        String amount = display.money(known.stream().reduce(0L, Math::addExact), currency);
        int unknown = summed.size() - known.size();
        return new Sum(
                display.text(key, summed.size()),
                unknown == 0 ? amount : display.text("purchase.sum.unknown", amount, unknown));
    }

    /** A line with its price and how much of it came. */
    record LineRow(OrderLine line, String unit, String cost, String came) {}

    /** @param revocable whether the person may take it back */
    record StepRow(OrderStep step, String text, boolean takenBack, boolean revocable) {}

    /** @param mayApprove whether this person may, as far as the amount goes */
    record OnePage(
            PurchaseOrder order,
            String sentence,
            List<LineRow> lines,
            String delivery,
            String total,
            @Nullable String owed,
            String approvers,
            boolean mayApprove,
            List<StepRow> history) {}

    OnePage one(Membership membership, PurchaseOrder order) {
        Currency currency = currency(membership);
        // Asked for only where somebody may still approve it.
        ApprovalLimits kept =
                order.state() == State.PROPOSED ? limits.of(membership.productionId()) : ApprovalLimits.USUAL;
        Long total = order.totalMinorUnits();
        long amount = total == null ? 0 : total;
        List<OrderStep> counting = order.history().counting();
        List<OrderStep> revocable = order.revocable();
        Long owed = order.owedMinorUnits();
        return new OnePage(
                order,
                words.sentence(order, late.of(membership.productionId(), List.of(order)), currency),
                order.lines().stream()
                        .map(line -> new LineRow(
                                line,
                                words.unit(line, currency),
                                words.amount(line.costMinorUnits(), currency),
                                display.text("purchase.came", line.came(), line.items(), line.credited())))
                        .toList(),
                display.money(order.deliveryMinorUnits(), currency),
                words.total(order, currency),
                order.orderedOn() == null || Objects.equals(owed, total) ? null : words.amount(owed, currency),
                words.approvers(Stream.of(Role.values())
                        .filter(role -> kept.allow(role, amount))
                        .map(Role::name)
                        .toList()),
                order.isComplete() && kept.allow(membership, amount),
                order.steps().stream()
                        .map(step -> new StepRow(
                                step,
                                words.step(step, membership.zone(), order.steps()),
                                !counting.contains(step) && step.kind() != OrderStep.Kind.TAKEN_BACK,
                                revocable.contains(step) && step.mayBeTakenBackBy(membership)))
                        .toList());
    }

    /** Placed today, and expected as its supplier usually delivers. */
    PlaceForm placeForm(Membership membership, PurchaseOrder order) {
        LocalDate today = today(membership);
        return new PlaceForm(today, usualArrival(membership, order, today), order.version());
    }

    private @Nullable LocalDate usualArrival(Membership membership, PurchaseOrder order, LocalDate today) {
        Instant now = clock.instant();
        return market
                .terms(
                        membership.productionId(),
                        item -> item.id().equals(order.lines().get(0).catalogueItemId()),
                        market.calendar(productions.get(membership.productionId())),
                        today,
                        today)
                .values()
                .stream()
                .findFirst()
                .map(terms -> arrival(terms, order, membership, now))
                .orElse(null);
    }

    private static LocalDate arrival(SupplyTerms terms, PurchaseOrder order, Membership membership, Instant now) {
        SupplierDays days = new SupplierDays(
                terms.punctuality().calendar(),
                terms.supplier().details().orderCutOff(),
                membership.zone(),
                order.deliveredTo().furtherWorkingDays());
        return days.arrival(days.countsAsOf(now), terms.punctuality().leadTime().usualWorkingDays());
    }

    LocalDate today(Membership membership) {
        return LocalDate.ofInstant(clock.instant(), membership.zone());
    }

    private static Currency currency(Membership membership) {
        return Currency.getInstance(membership.currency());
    }
}
