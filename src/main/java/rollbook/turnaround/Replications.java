package rollbook.turnaround;

import java.util.List;
import java.util.stream.IntStream;

/**
 * One day played many times, each time with other luck.
 *
 * @param someCameraWaits the chance of it
 * @param waitingMinutes of all cameras together
 * @param lastProvenMillis since midnight of the day’s date
 * @param overtimeMinutes after wrap, until the last card is proven
 * @param someCardUnproven the chance that no reader is left for a card; it isn’t in when the last one is proven
 * @param parts in the plan’s order
 * @param hours what holds offloads back, by hour; most first
 */
public record Replications(
        int replicates,
        Estimate someCameraWaits,
        Range waitingMinutes,
        List<CameraWaiting> cameras,
        Range lastProvenMillis,
        Range overtimeMinutes,
        Estimate someCardUnproven,
        List<Utilisation> parts,
        List<HourShare> hours) {

    /** @param chance that it waits at all */
    public record CameraWaiting(String name, Estimate chance, Range minutes) {}

    /** @param share of the time from first call until all is proven; the mean over days */
    public record Utilisation(Part part, double share) {}

    /**
     * @param hourFromMillis a whole hour since midnight of the day’s date
     * @param share of all that offloads were held back in that hour, over all days
     */
    public record HourShare(long hourFromMillis, Part part, double share) {}

    /** So many days at once are held in memory. */
    private static final int AT_ONCE = 256;

    /**
     * @param seed the same one gives the same days
     * @param replicates 2 or more
     */
    public static Replications of(DayPlan plan, long seed, int replicates) {
        Invalid.unless(replicates > 1, "replicates", "must be 2 or more");
        Tally tally = new Tally(plan, replicates);
        for (int from = 0; from < replicates; from += AT_ONCE) {
            List<DayResult> days = IntStream.range(from, Math.min(from + AT_ONCE, replicates))
                    .parallel()
                    .mapToObj(i -> Simulation.summary(plan, Draws.of(seed, i)))
                    .toList();
            days.forEach(tally::add);
        }
        return tally.result();
    }
}
