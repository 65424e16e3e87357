package rollbook.turnaround;

import java.util.stream.IntStream;

/** What matters of a plan, played once for each replicate: the i-th figures are those of the i-th replicate’s luck. */
record Outcomes(double[] waitingMinutes, double[] lastProvenMinutes, double[] overtimeMinutes) {
    static final double MILLIS_PER_MINUTE = 60_000;

    /** On all cores; each replicate has its own numbers and its own place, so the order doesn’t matter. */
    static Outcomes of(DayPlan plan, long seed, int replicates) {
        Outcomes outcomes = new Outcomes(new double[replicates], new double[replicates], new double[replicates]);
        IntStream.range(0, replicates).parallel().forEach(i -> {
            DayResult day = Simulation.summary(plan, Draws.of(seed, i));
            outcomes.waitingMinutes[i] = day.waitingMillis() / MILLIS_PER_MINUTE;
            outcomes.lastProvenMinutes[i] = day.lastProvenMillis() / MILLIS_PER_MINUTE;
            outcomes.overtimeMinutes[i] = day.overtimeMillis() / MILLIS_PER_MINUTE;
        });
        return outcomes;
    }

    /** Replicate by replicate, so that luck which both had alike falls out. */
    Difference less(Outcomes others) {
        return new Difference(
                difference(waitingMinutes, others.waitingMinutes),
                difference(lastProvenMinutes, others.lastProvenMinutes),
                difference(overtimeMinutes, others.overtimeMinutes));
    }

    private static Estimate difference(double[] these, double[] others) {
        double[] differences = new double[these.length];
        for (int i = 0; i < these.length; i++) {
            differences[i] = these[i] - others[i];
        }
        return Estimate.ofMean(differences);
    }
}
