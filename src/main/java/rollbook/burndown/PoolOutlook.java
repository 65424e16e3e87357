package rollbook.burndown;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * How one pool fares to the end of the show. A pool runs out when it needs more than is left; to need exactly what is
 * left isn't running out. Room goes on below zero, as if the bytes were written all the same.
 *
 * @param roomNowBytes free on the usable items, within the fill level
 * @param capacityNowBytes what the usable items may hold in all, within the fill level
 * @param points one for each date on which something is shot or changes, today and the end of the show; by date
 * @param daysToCome shooting days to come in all
 * @param coverDays how many of them fit before the pool runs out
 * @param chanceOfRunningOut before the end of the show; the sum of {@code causes}
 * @param neededBytes to be written from now to the end, the waiting bytes included
 * @param shortfallBytes the most that lacks on any date, so what orders must bring; zero if the pool lasts
 * @param lostBytes rest of items that no roll fitted on; zero unless rolls stay whole
 * @param overdueReturnBytes bytes that should have been released before today; they aren't counted on
 * @param overdueArrivalItems items on order that, nine times of ten, would have come before today
 */
public record PoolOutlook(
        UUID poolId,
        String poolName,
        long roomNowBytes,
        long capacityNowBytes,
        long waitingBytes,
        List<Point> points,
        int daysToCome,
        Band coverDays,
        double chanceOfRunningOut,
        Causes causes,
        Band neededBytes,
        Band shortfallBytes,
        Band lostBytes,
        List<ExpectedArrival> arrivals,
        long overdueReturnBytes,
        long overdueArrivalItems) {

    /**
     * What happens to the pool on a date, in this order: items leave, bytes are released, days are shot, orders arrive.
     *
     * @param leftBytes at the end of the date, with what arrives before the next
     * @param demandBytes written on this date, today with what is waiting
     * @param returningBytes released, and room on items that can be used again
     * @param chanceOfHavingRunOut on this date or before
     */
    public record Point(
            LocalDate date,
            List<DayRef> days,
            Band leftBytes,
            Band demandBytes,
            long leavingBytes,
            Band returningBytes,
            double chanceOfHavingRunOut) {
        public Point {
            days = List.copyOf(days);
        }
    }

    /**
     * The chance that a pool runs out, by what comes first: bytes that are waiting already, a day's bytes, or what is on
     * a hired item that leaves and finds no room on the rest.
     */
    public record Causes(double waiting, double demand, double hiredItemLeaves) {}

    /**
     * Media on order.
     *
     * @param bytes what they may hold in all, within the fill level
     * @param usualDate as likely to come later as by then; the two others hold in one of ten cases and nine of ten
     */
    public record ExpectedArrival(
            long items, long bytes, LocalDate earlyDate, LocalDate usualDate, LocalDate lateDate) {}

    public PoolOutlook {
        points = List.copyOf(points);
        arrivals = List.copyOf(arrivals);
    }

    public boolean lastsForSure() {
        return chanceOfRunningOut == 0;
    }

    /**
     * The first date by which the pool has run out with at least this chance, null if it lasts to the end with more than
     * the rest. A low chance gives the early date that planning has to reckon with.
     */
    public @Nullable LocalDate runsOutBy(double chance) {
        return points.stream()
                .filter(point -> point.chanceOfHavingRunOut() >= chance)
                .map(Point::date)
                .findFirst()
                .orElse(null);
    }
}
