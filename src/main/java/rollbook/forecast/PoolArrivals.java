package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.burndown.WorkingCalendar;
import rollbook.ordering.LearnedLeadTime;
import rollbook.purchase.OrderLine;
import rollbook.purchase.PurchaseOrder;
import rollbook.supplier.SupplyTerms;

/**
 * What is on order for the pools: expected on a date, and perhaps as much later as its supplier is at its slowest; where
 * the order doesn't tell what of a catalogue it is, as the leg's supply is.
 */
final class PoolArrivals {
    private final List<PurchaseOrder> awaited;
    private final Map<UUID, SupplyTerms> terms;
    private final Map<UUID, SuppliedLeg> supplied;
    private final WorkingCalendar calendar;

    /** @param terms by the item of a catalogue */
    PoolArrivals(
            List<PurchaseOrder> awaited,
            Map<UUID, SupplyTerms> terms,
            Map<UUID, SuppliedLeg> supplied,
            WorkingCalendar calendar) {
        this.awaited = awaited;
        this.terms = terms;
        this.supplied = supplied;
        this.calendar = calendar;
    }

    List<Pool.Arrival> of(UUID legId) {
        return awaited.stream().flatMap(order -> of(order, legId)).toList();
    }

    private Stream<Pool.Arrival> of(PurchaseOrder order, UUID legId) {
        return order.lines().stream()
                .filter(line -> legId.equals(line.legId()) && line.left() > 0 && line.capacityBytes() != null)
                .map(line -> arrival(order, line));
    }

    private Pool.Arrival arrival(PurchaseOrder order, OrderLine line) {
        LocalDate orderedOn = Objects.requireNonNull(order.orderedOn());
        LearnedLeadTime leadTime = leadTime(line);
        int later = leadTime == null ? 0 : leadTime.slowWorkingDays() - leadTime.usualWorkingDays();
        int usual = calendar.workingDaysBetween(orderedOn, Objects.requireNonNull(order.expectedOn()));
        return new Pool.Arrival(
                orderedOn,
                later == 0 ? LeadTime.certain(usual) : LeadTime.usually(usual, usual + later),
                calendar,
                line.left(),
                Objects.requireNonNull(line.capacityBytes()));
    }

    private @Nullable LearnedLeadTime leadTime(OrderLine line) {
        SupplyTerms ofItem = line.catalogueItemId() == null ? null : terms.get(line.catalogueItemId());
        if (ofItem != null) {
            return ofItem.punctuality().leadTime();
        }
        SuppliedLeg ofLeg = supplied.get(line.legId());
        return ofLeg == null ? null : ofLeg.leadTime();
    }
}
