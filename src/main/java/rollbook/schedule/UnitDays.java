package rollbook.schedule;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.production.Unit;

/**
 * The days of one unit, in the order of their dates.
 *
 * @param total of all days that are not cancelled
 */
record UnitDays(Unit unit, List<Row> rows, DayTotals total) {

    /** @param holiday the name of the holiday that the date is, or null */
    record Row(ShootingDay day, DayTotals totals, @Nullable String holiday, boolean today) {}

    static UnitDays of(
            Unit unit,
            List<ShootingDay> days,
            Map<UUID, DayTotals> totals,
            Map<LocalDate, String> holidays,
            LocalDate today) {
        List<Row> rows = days.stream()
                .filter(day -> day.unitId().equals(unit.id()))
                .map(day -> new Row(
                        day,
                        totals.getOrDefault(day.id(), DayTotals.NONE),
                        holidays.get(day.date()),
                        day.date().equals(today)))
                .toList();
        DayTotals total = rows.stream()
                .filter(row -> row.day().state() != DayState.CANCELLED)
                .map(Row::totals)
                .reduce(DayTotals.NONE, DayTotals::plus);
        return new UnitDays(unit, rows, total);
    }

    /** The days that were or will be shot. */
    List<ShootingDay> counted() {
        return rows.stream()
                .map(Row::day)
                .filter(day -> day.state() != DayState.CANCELLED)
                .toList();
    }

    Optional<ShootingDay> first(DayState state) {
        return rows.stream().map(Row::day).filter(day -> day.state() == state).findFirst();
    }

    /** The day that is being shot, else the next one; null if all is over. For templates. */
    public @Nullable ShootingDay current() {
        return first(DayState.SHOOTING).or(() -> first(DayState.PLANNED)).orElse(null);
    }

    /** The weekdays that the days lie on; those given while there are none. */
    static Set<DayOfWeek> weekdays(Collection<ShootingDay> days, Set<DayOfWeek> otherwise) {
        Set<DayOfWeek> weekdays = days.stream()
                .filter(day -> day.state() != DayState.CANCELLED)
                .map(day -> day.date().getDayOfWeek())
                .collect(Collectors.toCollection(TreeSet::new));
        return weekdays.isEmpty() ? new TreeSet<>(otherwise) : weekdays;
    }

    static int nextNumber(Collection<ShootingDay> days) {
        return days.stream().mapToInt(ShootingDay::number).max().orElse(0) + 1;
    }

    /** The last date of the days, if there are any. */
    static Optional<LocalDate> lastDate(Collection<ShootingDay> days) {
        return days.stream().map(ShootingDay::date).max(Comparator.naturalOrder());
    }
}
