package rollbook.turnaround;

import java.util.Arrays;

/** Bytes on their way, from a card to destinations or back from one: an offload’s copying, or one read-back. */
final class Flow {
    final Offload offload;

    /** Number of the first destination, and of the one after the last. */
    final int from;

    final int to;
    final long startedMillis;

    /** Of each shared part, its milliseconds for each recorded byte; zero if it isn’t needed. */
    final double[] weights;

    /** Numbers of the shared parts that are needed, ascending. */
    final int[] parts;

    /** Recorded bytes per millisecond that the flow’s own way lets pass. */
    final double ceiling;

    /** The hours’ number of that way. */
    final int ownWay;

    double leftBytes;
    double bytesPerMilli;

    /** While shares are found: what it gets for as much time as all others get. */
    double bytesPerMilliOfLevel;

    boolean settled;

    /** The shared part that holds it back, or its own way. */
    int limit;

    long doneMillis;

    Flow(Offload offload, int from, int to, double[] weights, double ceiling, int ownWay, long now) {
        this.offload = offload;
        this.from = from;
        this.to = to;
        this.weights = weights;
        parts = needed(weights);
        this.ceiling = ceiling;
        this.ownWay = ownWay;
        startedMillis = now;
        leftBytes = offload.workBytes;
    }

    private static int[] needed(double[] weights) {
        int[] needed = new int[weights.length];
        int count = 0;
        for (int part = 0; part < weights.length; part++) {
            if (weights[part] > 0) {
                needed[count++] = part;
            }
        }
        return Arrays.copyOf(needed, count);
    }
}
