package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.burndown.WorkingCalendar;

/** What is on order for the pools: expected on a date, and perhaps as much later as the supply is at its slowest. */
final class PoolArrivals {
    private final List<MediaOrder> orders;
    private final Map<UUID, LegSupply> supplied;
    private final WorkingCalendar calendar;

    PoolArrivals(List<MediaOrder> orders, Map<UUID, LegSupply> supplied, WorkingCalendar calendar) {
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
        LegSupply supply = supplied.get(order.legId());
        int later = supply == null
                ? 0
                : supply.source().slowLeadTimeWorkingDays() - supply.source().leadTimeWorkingDays();
        int usual = workingDaysBetween(order.orderedOn(), order.expectedOn());
        return new Pool.Arrival(
                order.orderedOn(),
                later == 0 ? LeadTime.certain(usual) : LeadTime.usually(usual, usual + later),
                calendar,
                order.left(),
                order.itemCapacityBytes());
    }

    /** So many working days after the first date it is at least the second. */
    private int workingDaysBetween(LocalDate from, LocalDate to) {
        int days = 0;
        for (LocalDate date = from; date.isBefore(to); date = calendar.plus(date, 1)) {
            days++;
        }
        return days;
    }
}
