package rollbook.burndown;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/** The days on which suppliers and couriers work: every day that is neither of the weekend nor a holiday. */
public record WorkingCalendar(Set<DayOfWeek> weekend, Set<LocalDate> holidays) {
    public WorkingCalendar {
        // Sorted, so that what a forecast was made from is kept in the same order every time.
        weekend = Collections.unmodifiableSortedSet(new TreeSet<>(weekend));
        holidays = Collections.unmodifiableSortedSet(new TreeSet<>(holidays));
        if (weekend.size() == DayOfWeek.values().length) {
            throw new IllegalArgumentException("A week without a working day");
        }
    }

    public boolean isWorkingDay(LocalDate date) {
        return !weekend.contains(date.getDayOfWeek()) && !holidays.contains(date);
    }

    /** The date itself if it is a working day, else the next one that is. */
    public LocalDate onOrAfter(LocalDate date) {
        return isWorkingDay(date) ? date : step(date, 1);
    }

    /** So many working days after the date; the date itself for none. */
    public LocalDate plus(LocalDate date, int workingDays) {
        LocalDate result = date;
        for (int i = 0; i < workingDays; i++) {
            result = step(result, 1);
        }
        return result;
    }

    /** So many working days before the date; the date itself for none. */
    public LocalDate minus(LocalDate date, int workingDays) {
        LocalDate result = date;
        for (int i = 0; i < workingDays; i++) {
            result = step(result, -1);
        }
        return result;
    }

    /** The fewest working days after the first date that reach the second; none if it isn't later. */
    public int workingDaysBetween(LocalDate from, LocalDate to) {
        int days = 0;
        for (LocalDate date = from; date.isBefore(to); date = step(date, 1)) {
            days++;
        }
        return days;
    }

    private LocalDate step(LocalDate date, int direction) {
        LocalDate result = date.plusDays(direction);
        while (!isWorkingDay(result)) {
            result = result.plusDays(direction);
        }
        return result;
    }
}
