package rollbook.forecast;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.burndown.WorkingCalendar;

/** What is on order for the pools: expected on a date, and perhaps as much later as the supply is at its slowest. */
final class PoolArrivals {
    private final List<MediaOrder> orders;
    private final Map<UUID, SuppliedLeg> supplied;
    private final WorkingCalendar calendar;

    PoolArrivals(List<MediaOrder> orders, Map<UUID, SuppliedLeg> supplied, WorkingCalendar calendar) {
        this.orders = orders;
        this.supplied = supplied;
        this.calendar = calendar;
    }

    List<Pool.Arrival> of(UUID legId) {
        return orders.stream()
                .filter(order -> order.isOpen() && order.legId().equals(legId))
                .map(this::arrival)
                .toList();
    }

    private Pool.Arrival arrival(MediaOrder order) {
        SuppliedLeg supply = supplied.get(order.legId());
        int later = supply == null
                ? 0
                : supply.leadTime().slowWorkingDays() - supply.leadTime().usualWorkingDays();
        int usual = calendar.workingDaysBetween(order.orderedOn(), order.expectedOn());
        return new Pool.Arrival(
                order.orderedOn(),
                later == 0 ? LeadTime.certain(usual) : LeadTime.usually(usual, usual + later),
                calendar,
                order.left(),
                order.itemCapacityBytes());
    }
}
