package rollbook.burndown;

import org.jspecify.annotations.Nullable;
import rollbook.learning.Belief;
import rollbook.learning.Streams;

/** Bytes that a pool's media take for bytes recorded, on each course of the show. */
final class WrittenBytes {
    private final RecordedBytes recorded;
    private final double numerator;
    private final double denominator;

    /** By replicate: the share is that of the whole show, so each course has one. Null if it is known. */
    private final double @Nullable [] shares;

    WrittenBytes(RecordedBytes recorded, Pool pool, Streams streams, int replicates) {
        this.recorded = recorded;
        numerator = pool.kept().usual().numerator();
        denominator = pool.kept().usual().denominator();
        Belief belief = pool.kept().belief();
        shares = belief == null ? null : shares(belief, pool, streams, replicates);
    }

    /** Nobody keeps an encoding that grows, so no course has one. */
    private double[] shares(Belief belief, Pool pool, Streams streams, int replicates) {
        double most = Math.max(1, numerator / denominator);
        double[] spreads = streams.uniforms(replicates, "kept spread", pool.id());
        double[] levels = streams.uniforms(replicates, "kept level", pool.id());
        double[] drawn = new double[replicates];
        for (int r = 0; r < replicates; r++) {
            drawn[r] = Math.min(most, belief.levelFactor(spreads[r], levels[r]));
        }
        return drawn;
    }

    /**
     * Rounded up to a byte. Bytes times numerator are exact up to 2^53; beyond, the result may be a byte off where the
     * share divides without rest.
     */
    long of(int day, int replicate) {
        long bytes = recorded.of(day, replicate);
        return (long) Math.ceil(shares == null ? bytes * numerator / denominator : bytes * shares[replicate]);
    }
}
