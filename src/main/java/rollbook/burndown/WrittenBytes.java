package rollbook.burndown;

import org.jspecify.annotations.Nullable;
import rollbook.learning.Belief;
import rollbook.learning.Streams;
import rollbook.quantity.Share;

/** Bytes that a pool's media take for bytes recorded, on each course of the show. */
final class WrittenBytes {
    private final Share usual;

    /** By replicate: the share is that of the whole show, so each course has one. Null if it is known. */
    private final double @Nullable [] shares;

    private final long[] written;

    WrittenBytes(Pool pool, Streams streams, int replicates) {
        usual = pool.kept().usual();
        Belief belief = pool.kept().belief();
        shares = belief == null ? null : shares(belief, pool, streams, replicates);
        written = new long[replicates];
    }

    /** Nobody keeps an encoding that grows, so no course has one. */
    private double[] shares(Belief belief, Pool pool, Streams streams, int replicates) {
        double most = Math.max(1, usual.value().doubleValue());
        double[] drawn = belief.levelFactors(
                streams.uniforms(replicates, "kept spread", pool.id()),
                streams.uniforms(replicates, "kept level", pool.id()));
        for (int r = 0; r < replicates; r++) {
            drawn[r] = Math.min(most, drawn[r]);
        }
        return drawn;
    }

    /**
     * One a replicate, rounded up to a byte; good until the next call and not to be changed. Bytes times numerator are
     * exact up to 2^53; beyond, the result may be a byte off where the share divides without rest.
     */
    long[] of(long[] recorded) {
        if (shares != null) {
            for (int r = 0; r < written.length; r++) {
                written[r] = (long) Math.ceil(recorded[r] * shares[r]);
            }
            return written;
        }
        if (usual.equals(Share.WHOLE)) {
            return recorded;
        }
        double numerator = usual.numerator();
        double denominator = usual.denominator();
        for (int r = 0; r < written.length; r++) {
            written[r] = (long) Math.ceil(recorded[r] * numerator / denominator);
        }
        return written;
    }
}
