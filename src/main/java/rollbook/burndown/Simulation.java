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
        RecordedBytes recorded = new RecordedBytes(show.days(), factors, replicates);
        List<PoolOutlook> outlooks = new ArrayList<>();
        List<PoolPaths> paths = new ArrayList<>();
        for (Pool pool : pools) {
            PoolChanges changes = new PoolChanges(show, pool, fillLevel);
            PoolCourses courses = new PoolCourses(
                    pool,
                    changes,
                    new WrittenBytes(recorded, pool, streams, replicates),
                    new Arrivals(pool, changes, fillLevel, streams, replicates),
                    replicates);
            outlooks.add(new PoolReport(show, fillLevel, courses).outlook());
            paths.add(new PoolPaths(pool, fillLevel, changes.dates, courses.roomBytes));
        }
        return new SimulatedShow(new Outlook(show.today(), show.endOfShow(), seed, replicates, outlooks), paths);
    }
}
