package rollbook.purchase;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.burndown.WorkingCalendar;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Production;
import rollbook.production.Productions;
import rollbook.production.Role;
import rollbook.supplier.Market;
import rollbook.supplier.Punctuality;
import rollbook.web.Display;

/**
 * Raises an alarm for each order that is later than the forecast reckoned with: than expected by as many working days of
 * its supplier as slow deliveries (nine of ten are no slower) take longer than usual ones. It ends when all has come, or
 * with a new date from the supplier.
 */
@Component
class LateArrivals implements AlarmSource {
    private final Orders orders;
    private final Market market;
    private final Productions productions;
    private final Display display;
    private final Clock clock;

    LateArrivals(Orders orders, Market market, Productions productions, Display display, Clock clock) {
        this.orders = orders;
        this.market = market;
        this.productions = productions;
        this.display = display;
        this.clock = clock;
    }

    /** @param all orders of the production, or some */
    Lateness of(UUID productionId, List<PurchaseOrder> all) {
        return all.stream().anyMatch(PurchaseOrder::isAwaited)
                ? of(productions.get(productionId), all)
                : new Lateness(LocalDate.MIN, Map.of());
    }

    private Lateness of(Production production, List<PurchaseOrder> all) {
        LocalDate today = LocalDate.now(clock.withZone(production.zone()));
        List<PurchaseOrder> overdue =
                all.stream().filter(order -> order.isOverdue(today)).toList();
        if (overdue.isEmpty()) {
            return new Lateness(today, Map.of());
        }
        WorkingCalendar own = market.calendar(production);
        Set<UUID> suppliers = overdue.stream()
                .map(PurchaseOrder::supplierId)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        Map<UUID, Punctuality> punctualities = market.punctualities(production.id(), suppliers, own, today);
        Map<UUID, LocalDate> lateAfter = new HashMap<>();
        for (PurchaseOrder order : overdue) {
            LocalDate expected = Objects.requireNonNull(order.expectedOn());
            Punctuality supplier = order.supplierId() == null ? null : punctualities.get(order.supplierId());
            lateAfter.put(
                    order.id(),
                    supplier == null
                            ? expected
                            : supplier.calendar()
                                    .plus(
                                            expected,
                                            supplier.leadTime().slowWorkingDays()
                                                    - supplier.leadTime().usualWorkingDays()));
        }
        return new Lateness(today, lateAfter);
    }

    /** One statement while nothing is awaited, and a few more if something is past its date. */
    @Override
    public List<Alarm> alarms(UUID productionId) {
        List<PurchaseOrder> awaited = orders.expected(productionId);
        if (awaited.isEmpty()) {
            return List.of();
        }
        Production production = productions.get(productionId);
        Lateness lateness = of(production, awaited);
        return awaited.stream()
                .filter(lateness::isLate)
                .map(order -> alarm(order, lateness, production))
                .toList();
    }

    /** A new date from the supplier ends the alarm; if that passes as well, another one begins. */
    private Alarm alarm(PurchaseOrder order, Lateness lateness, Production production) {
        LocalDate expected = Objects.requireNonNull(order.expectedOn());
        return new Alarm(
                "late-order:%s:%s".formatted(order.id(), expected),
                Set.of(Role.OFFICE),
                "purchase.alarm.late",
                List.of(order.number(), order.supplierName(), order.left(), display.shortDate(expected)),
                "orders/" + order.id(),
                lateness.lateAfter()
                        .get(order.id())
                        .plusDays(1)
                        .atStartOfDay(production.zone())
                        .toInstant());
    }
}
