package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Band;
import rollbook.burndown.PoolOutlook;

/**
 * How far a pool reaches, as a bar over the shooting days to come: places as shares of its length, from 0 today to 1 when the
 * last day is shot.
 *
 * @param low so far it reaches in nine of ten cases
 * @param median as likely further as not
 * @param high so far in one of ten
 * @param lead where an order placed at once would come; null where it isn't known how more can be had, or it comes too late
 */
public record CoverGauge(
        double low, double median, double high, @Nullable Double lead) {
    private static final int STEPS_AT_MOST = 6;
    private static final int[] STEPS = {1, 2, 5};

    /** A number of shooting days and its place. */
    public record Tick(int days, double share) {}

    /**
     * @param daysToCome at least one
     * @param leadDays shooting days on which nothing of an order placed at once is there yet; null if that isn't known
     */
    public static CoverGauge of(int daysToCome, Band coverDays, @Nullable Integer leadDays) {
        return new CoverGauge(
                share(coverDays.p10(), daysToCome),
                share(coverDays.p50(), daysToCome),
                share(coverDays.p90(), daysToCome),
                leadDays == null || leadDays > daysToCome ? null : share(leadDays, daysToCome));
    }

    /** From zero to all days in round steps; the last one may be shorter, and a tick close before the end is left out. */
    public static List<Tick> ticks(int daysToCome) {
        int step = step(daysToCome);
        return Stream.concat(
                        IntStream.iterate(0, days -> days + step / 2.0 < daysToCome, days -> days + step)
                                .boxed(),
                        Stream.of(daysToCome))
                .map(days -> new Tick(days, share(days, daysToCome)))
                .toList();
    }

    private static int step(int daysToCome) {
        for (int power = 1; ; power *= 10) {
            for (int factor : STEPS) {
                if (daysToCome <= (long) power * factor * STEPS_AT_MOST) {
                    return power * factor;
                }
            }
        }
    }

    /** Shooting days until an order that arrives on the date is there: it counts from the day after. */
    static int daysUntil(LocalDate arrival, PoolOutlook pool) {
        return pool.points().stream()
                .filter(point -> !point.date().isAfter(arrival))
                .mapToInt(point -> point.days().size())
                .sum();
    }

    private static double share(long days, int daysToCome) {
        return Math.min(1, (double) days / daysToCome);
    }
}
