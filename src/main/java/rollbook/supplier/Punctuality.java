package rollbook.supplier;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.WorkingCalendar;
import rollbook.ordering.LearnedLeadTime;

/**
 * How punctual a supplier was, and the lead time to count on. An order teaches once all of it has come.
 *
 * @param calendar the days on which the supplier works
 * @param arrivals in the order of their orders
 */
public record Punctuality(WorkingCalendar calendar, List<Arrival> arrivals, LearnedLeadTime leadTime) {

    /**
     * An order and how it arrived.
     *
     * @param leadWorkingDays what the supplier took without the way; null while something is still to come
     * @param lateWorkingDays later than expected, negative if earlier; up to today while something is still to come
     */
    record Arrival(Delivery delivery, @Nullable Integer leadWorkingDays, int lateWorkingDays) {}

    /** @param productions the production's own working days and holidays */
    static Punctuality of(
            MediaSupplier supplier,
            List<Delivery> deliveries,
            WorkingCalendar productions,
            LocalDate today,
            LocalDate last) {
        LocalDate first = deliveries.stream()
                .map(Delivery::orderedOn)
                .reduce(today, (one, other) -> one.isBefore(other) ? one : other);
        WorkingCalendar calendar = supplier.calendar(productions, first, last);
        List<Arrival> arrivals = deliveries.stream()
                .map(delivery -> arrival(delivery, calendar, today))
                .toList();
        List<Integer> taken = arrivals.stream()
                .map(Arrival::leadWorkingDays)
                .filter(Objects::nonNull)
                .toList();
        return new Punctuality(calendar, arrivals, new LearnedLeadTime(supplier.statedLeadTime(), taken));
    }

    private static Arrival arrival(Delivery delivery, WorkingCalendar calendar, LocalDate today) {
        LocalDate complete = delivery.completeOn();
        LocalDate until = complete == null ? today : complete;
        int late = calendar.workingDaysBetween(delivery.expectedOn(), until);
        int early = complete == null ? 0 : calendar.workingDaysBetween(complete, delivery.expectedOn());
        return new Arrival(
                delivery,
                complete == null
                        ? null
                        : Math.max(
                                0,
                                calendar.workingDaysBetween(delivery.orderedOn(), complete)
                                        - delivery.wayWorkingDays()),
                late - early);
    }
}
