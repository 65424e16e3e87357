package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;

/**
 * A pool's bytes by date, for a chart and its table. Bytes are as written on this leg.
 *
 * @param roomNowBytes free room at the start of today's point
 * @param capacityNowBytes what the usable items of today may hold in all, within the fill level
 * @param points one per date with a shooting day or a change of the pool, and today; by date
 */
public record BurnDown(LocalDate today, long roomNowBytes, long capacityNowBytes, List<Point> points) {

    /**
     * What happens to the pool on a date, in this order: items leave, bytes are released, days are shot, orders arrive.
     *
     * @param expectedBytes still to come on this date, with today's backlog and days that should be over
     * @param leftBytes at the end of the date; below zero by what lacks; null on past dates nobody recorded
     */
    public record Point(
            LocalDate date,
            List<DayRef> days,
            long plannedBytes,
            long actualBytes,
            long expectedBytes,
            long leavingBytes,
            long returnedBytes,
            long arrivedBytes,
            @Nullable Long leftBytes) {

        Point withLeft(@Nullable Long bytes) {
            return new Point(
                    date,
                    days,
                    plannedBytes,
                    actualBytes,
                    expectedBytes,
                    leavingBytes,
                    returnedBytes,
                    arrivedBytes,
                    bytes);
        }
    }

    public BurnDown {
        points = List.copyOf(points);
    }

    /** The same series with what was left at the end of past dates, as earlier forecasts recorded it. */
    public BurnDown withPast(Map<LocalDate, Long> leftBytesByDate) {
        return new BurnDown(
                today,
                roomNowBytes,
                capacityNowBytes,
                points.stream()
                        .map(point -> point.date().isBefore(today)
                                ? point.withLeft(leftBytesByDate.get(point.date()))
                                : point)
                        .toList());
    }
}
