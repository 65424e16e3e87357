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
    private final int replicates;
    private final Bands bands;

    PoolReport(Show show, Share fillLevel, PoolCourses courses) {
        this.show = show;
        this.fillLevel = fillLevel;
        this.courses = courses;
        pool = courses.pool;
        changes = courses.changes;
        replicates = courses.neededBytes.length;
        bands = new Bands(replicates);
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
                Bands.ofCounts(counts(courses.coverDays)),
                points.get(points.size() - 1).chanceOfHavingRunOut(),
                new PoolOutlook.Causes(
                        chance(courses.runOutByWaiting),
                        chance(courses.runOutByDemand),
                        chance(courses.runOutByHiredItems)),
                bands.of(courses.neededBytes),
                bands.of(shortfall()),
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
            Band demand = courses.demandBands[i];
            int releasedOn = changes.releasedOn[i];
            if (releasedOn != PoolChanges.NEVER) {
                returning[releasedOn] = demand.plus(changes.releasedBytes[releasedOn]);
            }
            runOut += courses.runOutOn[i];
            Band returns = returning[i];
            points.add(new PoolOutlook.Point(
                    date,
                    days.stream().map(DayToCome::day).toList(),
                    courses.leftBands[i],
                    demand,
                    Arrays.stream(changes.leaving[i])
                            .mapToLong(PoolChanges.Item::takesAwayBytes)
                            .sum(),
                    (returns == null ? Band.certain(changes.releasedBytes[i]) : returns).plus(joining(i)),
                    chance(runOut)));
        }
        return points;
    }

    private long[] shortfall() {
        return Arrays.stream(courses.lowestBytes).map(lowest -> -lowest).toArray();
    }

    private int[] counts(int[] days) {
        int all = show.days().size();
        int[] counts = new int[all + 1];
        for (int fitting : days) {
            counts[Math.min(fitting, all)]++;
        }
        return counts;
    }

    private long joining(int date) {
        return Arrays.stream(changes.joining[date])
                .mapToLong(PoolChanges.Item::roomBytes)
                .sum();
    }

    private double chance(long courses) {
        return courses / (double) replicates;
    }
}
