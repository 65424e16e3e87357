package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import rollbook.burndown.WorkingCalendar;

/**
 * When a supplier takes orders and how long the way to the production adds.
 *
 * @param calendar the days on which the supplier works
 * @param cutOff time of day, in the supplier's zone, before which an order counts as of that day
 * @param deliveryWorkingDays working days that the way adds to the lead time: none to an office where somebody always
 *     receives, usually one to a set
 */
public record SupplierDays(WorkingCalendar calendar, LocalTime cutOff, ZoneId zone, int deliveryWorkingDays) {
    public SupplierDays {
        if (deliveryWorkingDays < 0) {
            throw new IllegalArgumentException(deliveryWorkingDays + " working days of delivery");
        }
    }

    /** The supplier's date that an order placed at this moment counts as of. */
    public LocalDate countsAsOf(Instant moment) {
        ZonedDateTime there = moment.atZone(zone);
        LocalDate date = there.toLocalTime().isBefore(cutOff)
                ? there.toLocalDate()
                : there.toLocalDate().plusDays(1);
        return calendar.onOrAfter(date);
    }

    /** The moment before which an order has to be placed to count as of that working day. */
    public Instant closesAt(LocalDate orderDay) {
        return orderDay.atTime(cutOff).atZone(zone).toInstant();
    }

    /** The next day on which an order can be placed after this one. */
    public LocalDate nextOrderDay(LocalDate orderDay) {
        return calendar.plus(orderDay, 1);
    }

    /**
     * The date on which an order arrives.
     *
     * @param leadWorkingDays the supplier's lead time, as it turned out
     */
    public LocalDate arrival(LocalDate orderDay, int leadWorkingDays) {
        return calendar.plus(orderDay, leadWorkingDays + deliveryWorkingDays);
    }
}
