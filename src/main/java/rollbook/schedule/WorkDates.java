package rollbook.schedule;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The dates on which a unit may shoot: certain weekdays, less those that are taken or left out.
 *
 * @param weekdays at least one
 */
record WorkDates(Set<DayOfWeek> weekdays, Set<LocalDate> without) {

    WorkDates {
        if (weekdays.isEmpty()) {
            throw new IllegalArgumentException("a schedule needs at least one weekday");
        }
        weekdays = Set.copyOf(weekdays);
        without = Set.copyOf(without);
    }

    boolean contains(LocalDate date) {
        return weekdays.contains(date.getDayOfWeek()) && !without.contains(date);
    }

    /** The first such date after the given one. */
    LocalDate after(LocalDate date) {
        LocalDate next = date.plusDays(1);
        while (!contains(next)) {
            next = next.plusDays(1);
        }
        return next;
    }

    /** So many steps from date to date; none leaves the date as it is. */
    LocalDate after(LocalDate date, int steps) {
        LocalDate moved = date;
        for (int i = 0; i < steps; i++) {
            moved = after(moved);
        }
        return moved;
    }

    /** The first so many dates, beginning with the given one if it is one of them. */
    List<LocalDate> from(LocalDate start, int count) {
        List<LocalDate> dates = new ArrayList<>();
        LocalDate date = start.minusDays(1);
        for (int i = 0; i < count; i++) {
            date = after(date);
            dates.add(date);
        }
        return dates;
    }

    /** How many such dates lie after the first and not after the last. */
    int between(LocalDate first, LocalDate last) {
        return (int) first.plusDays(1)
                .datesUntil(last.plusDays(1))
                .filter(this::contains)
                .count();
    }
}
