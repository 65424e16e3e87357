package rollbook.learning;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A whole show as it went, with the plan as it stood on each evening. */
public record GeneratedShow(Regime regime, long seed, List<Day> days) {
    public enum Regime {
        /** A level near the plan, unknown but lasting. */
        STEADY,
        /** As steady, but more is shot than planned. */
        HEAVIER,
        /** Less and less is shot. */
        SLOWING,
        /** Steady, and a second unit starts late. */
        TWO_UNITS
    }

    /**
     * @param announcedOn from this date’s evening on the day stands in the plan
     * @param cancelled on the day itself, so nothing was shot
     */
    public record Day(
            String unit,
            int number,
            LocalDate date,
            LocalDate announcedOn,
            long plannedBytes,
            long actualBytes,
            boolean cancelled,
            ShotDay.Minutes minutes) {}

    public GeneratedShow {
        days = days.stream()
                .sorted(Comparator.comparing(Day::date).thenComparing(Day::unit))
                .toList();
    }

    public LocalDate firstDate() {
        return days.get(0).date();
    }

    public LocalDate lastDate() {
        return days.get(days.size() - 1).date();
    }

    /** What a forecast on this evening may learn from. */
    public List<ShotDay> wrappedBy(LocalDate evening) {
        return days.stream()
                .filter(day -> !day.cancelled() && !day.date().isAfter(evening))
                .map(day -> new ShotDay(
                        day.unit(), day.number(), day.date(), day.plannedBytes(), day.actualBytes(), day.minutes()))
                .toList();
    }

    /** The plan as it stood on this evening: with days that will be cancelled, without what will be added for them. */
    public List<Day> plannedAfter(LocalDate evening) {
        return days.stream()
                .filter(day -> day.date().isAfter(evening) && !day.announcedOn().isAfter(evening))
                .toList();
    }

    /** What really came after this evening. */
    public long bytesAfter(LocalDate evening) {
        return days.stream()
                .filter(day -> day.date().isAfter(evening))
                .mapToLong(Day::actualBytes)
                .sum();
    }

    /** Of the first unit, those that were shot. */
    public int shootingDays() {
        return (int) firstUnitShot().count();
    }

    /** The evening of the first unit’s day so many that was shot. */
    public LocalDate eveningOfShootingDay(int count) {
        return firstUnitShot().skip(count - 1L).findFirst().orElseThrow().date();
    }

    private Stream<Day> firstUnitShot() {
        String first = days.get(0).unit();
        return days.stream().filter(day -> day.unit().equals(first) && !day.cancelled());
    }
}
