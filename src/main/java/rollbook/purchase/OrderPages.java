package rollbook.purchase;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
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
