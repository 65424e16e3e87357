package rollbook.burndown;

import java.util.ArrayList;
import java.util.List;
import rollbook.learning.Learned;
import rollbook.learning.RatioPaths;
import rollbook.learning.Streams;
import rollbook.quantity.Share;

/** Plays the rest of a show many times over: all days to come, all pools. */
public final class Simulation {
    private Simulation() {}

    /**
     * Chance has a stream for each day, order and pool, so that a pool or a day more changes nothing for the others.
     *
     * @param learned how the days to come may differ from their plan
     * @param fillLevel how much of an item may be filled, such as 95/100
     * @param seed with the same inputs it gives the same result
     * @param replicates how many courses of the show are played
     */
    public static SimulatedShow run(
            Show show, List<Pool> pools, Learned learned, Share fillLevel, long seed, int replicates) {
        RatioPaths ratios = RatioPaths.of(learned, seed, replicates);
        return run(show, pools, ratios::factors, fillLevel, seed, replicates);
    }

    static SimulatedShow run(
            Show show, List<Pool> pools, DayFactors factors, Share fillLevel, long seed, int replicates) {
        if (fillLevel.numerator() > fillLevel.denominator()) {
            throw new IllegalArgumentException("Items can't be filled beyond their capacity: " + fillLevel);
        }
        Streams streams = new Streams(seed);
        List<PoolCourses> all = new ArrayList<>();
        for (Pool pool : pools) {
            PoolChanges changes = new PoolChanges(show, pool, fillLevel);
            all.add(new PoolCourses(
                    pool,
                    changes,
                    new WrittenBytes(pool, streams, replicates),
                    new Arrivals(pool, changes, fillLevel, streams, replicates),
                    replicates));
        }
        long[] toCome = new long[replicates];
        for (int i = 0; i < show.days().size(); i++) {
            DayToCome day = show.days().get(i);
            recorded(day, factors.factors(day.day().unit(), day.day().number()), toCome);
            for (PoolCourses courses : all) {
                courses.shoot(i, toCome);
            }
        }
        all.forEach(PoolCourses::finish);
        List<PoolOutlook> outlooks = all.stream()
                .map(courses -> new PoolReport(show, fillLevel, courses).outlook())
                .toList();
        List<PoolPaths> paths = all.stream()
                .map(courses -> new PoolPaths(
                        courses.pool, fillLevel, courses.changes.dates, replicates, courses.lackingRoomBytes))
                .toList();
        return new SimulatedShow(new Outlook(show.today(), show.endOfShow(), seed, replicates, outlooks), paths);
    }

    /** Bytes still to come. A day that has recorded more than a course gives it has nothing more to come. */
    private static void recorded(DayToCome day, double[] factors, long[] toCome) {
        for (int r = 0; r < toCome.length; r++) {
            toCome[r] = Math.max(0, (long) Math.ceil(day.plannedBytes() * factors[r]) - day.recordedBytes());
        }
    }
}
