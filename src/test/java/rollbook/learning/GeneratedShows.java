package rollbook.learning;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import rollbook.learning.GeneratedShow.Day;
import rollbook.learning.GeneratedShow.Regime;

/**
 * Makes shows to try forecasts on. It isn't the forecast's model: days have heavy tails, weekdays differ, days are
 * halved, cancelled, moved to the end or bring nothing, and some shows slow down. The figures were set before any
 * forecast was tried on them; common sense, no source. The same seed gives the same show.
 */
public final class GeneratedShows {
    private static final long TB = 1_000_000_000_000L;
    private static final LocalDate EARLIEST = LocalDate.of(2026, 1, 5);
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** Its variance is 2. */
    private static final TDistribution HEAVY_TAILED = TDistribution.of(4);

    private final SplittableRandom random;
    private final Regime regime;
    private final boolean sixDayWeek;
    private final double[] weekdays = new double[7];
    private final double noise;

    /** Bytes per minute differ from the plan too, but less, and hardly from day to day. */
    private final double fatness;

    private GeneratedShows(Regime regime, long seed) {
        this.regime = regime;
        random = new SplittableRandom(seed);
        sixDayWeek = random.nextDouble() < 0.3;
        for (int day = 0; day < weekdays.length; day++) {
            weekdays[day] = 0.06 * normal();
        }
        weekdays[0] -= 0.05;
        weekdays[sixDayWeek ? 5 : 4] += 0.05;
        noise = between(0.15, 0.35);
        fatness = 0.08 * normal();
    }

    public static GeneratedShow show(Regime regime, long seed) {
        GeneratedShows maker = new GeneratedShows(regime, seed);
        return new GeneratedShow(regime, seed, maker.days());
    }

    /** So many shows, the regimes by turns; seeds from the first on. */
    public static List<GeneratedShow> shows(int count, long firstSeed) {
        Regime[] regimes = Regime.values();
        return IntStream.range(0, count)
                .mapToObj(i -> show(regimes[i % regimes.length], firstSeed + i))
                .toList();
    }

    private List<Day> days() {
        LocalDate start = EARLIEST.plusDays(random.nextInt(200));
        int length = random.nextInt(15, 51);
        double level = switch (regime) {
            case STEADY, TWO_UNITS -> 0.2 * normal();
            case HEAVIER -> Math.log(1.3) + 0.15 * normal();
            case SLOWING -> 0.1 + 0.2 * normal();
        };
        double slowing = regime == Regime.SLOWING ? between(0.2, 0.6) : 0;
        double plannedBytes = TB * 2 * Math.pow(4, random.nextDouble());
        List<Day> days = new ArrayList<>(unit("main", start, start, length, level, slowing, plannedBytes));
        if (regime == Regime.TWO_UNITS) {
            LocalDate later = days.get((int) (length * between(0.25, 0.6))).date();
            int shorter = Math.max(3, (int) (length * between(0.2, 0.4)));
            days.addAll(unit("second", start, later, shorter, level + 0.2 * normal(), 0, 0.4 * plannedBytes));
        }
        return days;
    }

    private List<Day> unit(
            String unit,
            LocalDate showStart,
            LocalDate start,
            int length,
            double level,
            double slowing,
            double usualPlan) {
        List<Day> days = new ArrayList<>();
        List<LocalDate> cancelledOn = new ArrayList<>();
        LocalDate date = workingDate(start);
        for (int number = 1; number <= length; number++) {
            boolean cancelled = random.nextDouble() < 0.04;
            if (cancelled && random.nextDouble() < 2 / 3.0) {
                cancelledOn.add(date);
            }
            days.add(day(
                    unit,
                    number,
                    date,
                    showStart.minusDays(1),
                    level - slowing * number / length,
                    usualPlan,
                    cancelled));
            date = workingDate(date.plusDays(1));
        }
        for (LocalDate announced : cancelledOn) {
            days.add(day(unit, days.size() + 1, date, announced, level - slowing, usualPlan, false));
            date = workingDate(date.plusDays(1));
        }
        return days;
    }

    private Day day(
            String unit,
            int number,
            LocalDate date,
            LocalDate announced,
            double level,
            double usualPlan,
            boolean cancelled) {
        double plannedMinutes = between(60, 120) * (random.nextDouble() < 0.05 ? 0.3 : 1);
        double plannedBytes = usualPlan * plannedMinutes / 90;
        double log = level + weekdays[date.getDayOfWeek().getValue() - 1] + noise / Math.sqrt(2) * heavyTailed();
        double fat = fatness + 0.05 * normal();
        double luck = random.nextDouble();
        double part = cancelled || luck < 0.01 ? 0 : luck < 0.05 ? 0.5 : 1;
        double minutes = part * plannedMinutes * Math.exp(log - fat);
        double bytes = part * plannedBytes * Math.exp(log);
        return new Day(
                unit,
                number,
                date,
                announced,
                (long) plannedBytes,
                (long) bytes,
                cancelled,
                new ShotDay.Minutes(plannedMinutes, minutes));
    }

    private LocalDate workingDate(LocalDate date) {
        LocalDate working = date;
        while (working.getDayOfWeek() == DayOfWeek.SUNDAY
                || !sixDayWeek && working.getDayOfWeek() == DayOfWeek.SATURDAY) {
            working = working.plusDays(1);
        }
        return working;
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double normal() {
        return NORMAL.inverseCumulativeProbability(random.nextDouble());
    }

    private double heavyTailed() {
        return HEAVY_TAILED.inverseCumulativeProbability(random.nextDouble());
    }
}
