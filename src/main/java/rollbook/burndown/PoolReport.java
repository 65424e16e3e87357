package rollbook.burndown;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/** Sums up a pool's courses. */
final class PoolReport {
    private static final double EARLY = 0.1;
    private static final double LATE = 0.9;

    private final Show show;
    private final Share fillLevel;
    private final PoolCourses courses;
    private final Pool pool;
    private final PoolChanges changes;
    private final Bands bands;

    /** Of one date, one a replicate. */
    private final long[] values;

    PoolReport(Show show, Share fillLevel, PoolCourses courses) {
        this.show = show;
        this.fillLevel = fillLevel;
        this.courses = courses;
        pool = courses.pool;
        changes = courses.changes;
        values = new long[courses.neededBytes.length];
        bands = new Bands(values.length);
    }

    PoolOutlook outlook() {
        List<PoolOutlook.Point> points = points();
        return new PoolOutlook(
                pool.id(),
                pool.name(),
                changes.roomNowBytes,
                changes.capacityNowBytes,
                pool.waitingBytes(),
                points,
                show.days().size(),
                Bands.ofCounts(courses.coverDays),
                points.get(points.size() - 1).chanceOfHavingRunOut(),
                new PoolOutlook.Causes(
                        chance(courses.runOutByWaiting),
                        chance(courses.runOutByDemand),
                        chance(courses.runOutByHiredItems)),
                bands.of(courses.neededBytes),
                bands.of(courses.shortfallBytes),
                bands.of(courses.lostBytes),
                pool.arrivals().stream().map(this::expected).toList(),
                changes.overdueReturnBytes,
                pool.arrivals().stream()
                        .filter(arrival -> new ArrivalDates(arrival, show.today()).overdue())
                        .mapToLong(Pool.Arrival::items)
                        .sum());
    }

    private PoolOutlook.ExpectedArrival expected(Pool.Arrival arrival) {
        ArrivalDates dates = new ArrivalDates(arrival, show.today());
        return new PoolOutlook.ExpectedArrival(
                arrival.items(),
                Math.multiplyExact(arrival.items(), fillLevel.floorOf(arrival.itemCapacityBytes())),
                dates.by(EARLY),
                dates.usual(),
                dates.by(LATE));
    }

    private List<PoolOutlook.Point> points() {
        List<PoolOutlook.Point> points = new ArrayList<>();
        @Nullable Band[] returning = new Band[changes.dates.size()];
        long runOut = 0;
        for (int i = 0; i < changes.dates.size(); i++) {
            LocalDate date = changes.dates.get(i);
            List<DayToCome> days = show.days().subList(changes.firstDay[i], changes.firstDay[i + 1]);
            Band demand = demand(i);
            int releasedOn = changes.releasedOn[i];
            if (releasedOn != PoolChanges.NEVER) {
                returning[releasedOn] = demand.plus(changes.releasedBytes[releasedOn]);
            }
            runOut += courses.runOutOn[i];
            Band returns = returning[i];
            points.add(new PoolOutlook.Point(
                    date,
                    days.stream().map(DayToCome::day).toList(),
                    left(i),
                    demand,
                    Arrays.stream(changes.leaving[i])
                            .mapToLong(PoolChanges.Item::holdsBytes)
                            .sum(),
                    (returns == null ? Band.certain(changes.releasedBytes[i]) : returns).plus(joining(i)),
                    chance(runOut)));
        }
        return points;
    }

    private Band demand(int date) {
        long waiting = date == 0 ? pool.waitingBytes() : 0;
        int first = changes.firstDay[date];
        int end = changes.firstDay[date + 1];
        if (first == end) {
            return Band.certain(waiting);
        }
        Arrays.fill(values, waiting);
        for (int day = first; day < end; day++) {
            for (int r = 0; r < values.length; r++) {
                values[r] += courses.written.of(day, r);
            }
        }
        return bands.of(values);
    }

    private Band left(int date) {
        for (int r = 0; r < values.length; r++) {
            values[r] = courses.roomBytes[date][r] + courses.arrivals.bytesAfter(date, r);
        }
        return bands.of(values);
    }

    private long joining(int date) {
        return Arrays.stream(changes.joining[date])
                .mapToLong(PoolChanges.Item::roomBytes)
                .sum();
    }

    private double chance(long courses) {
        return courses / (double) values.length;
    }
}
