package rollbook.burndown;

import java.util.Arrays;

/**
 * Bands of many numbers, exact, without sorting them all: the numbers are counted into narrow buckets, and only those
 * buckets are sorted that hold a number asked for. Quantiles of bytes are of type 7 (Hyndman and Fan, 1996): between
 * the numbers next to rank (n − 1) × chance, in proportion.
 */
final class Bands {
    private static final double[] CHANCES = {0.1, 0.25, 0.5, 0.75, 0.9};
    private static final int MOST_BUCKETS = 1024;
    private static final int NOT_ASKED = -1;

    private final int size;
    private final int[] buckets;
    private final int[] counts;
    private final int[] places;
    private final long[] asked;

    Bands(int size) {
        this.size = size;
        asked = new long[size];
        buckets = new int[size];
        counts = new int[Math.min(size, MOST_BUCKETS)];
        places = new int[counts.length];
    }

    Band of(long[] values) {
        long lowest = values[0];
        long highest = values[0];
        for (long value : values) {
            lowest = Math.min(lowest, value);
            highest = Math.max(highest, value);
        }
        if (lowest == highest) {
            return Band.certain(lowest);
        }
        double scale = (counts.length - 1) / (double) Math.subtractExact(highest, lowest);
        count(values, lowest, scale);
        double[] ranks =
                Arrays.stream(CHANCES).map(chance -> (size - 1) * chance).toArray();
        int[] starts = collect(values, ranks);
        long[] found = new long[CHANCES.length];
        for (int i = 0; i < found.length; i++) {
            int rank = (int) ranks[i];
            long below = at(rank, starts);
            double rest = ranks[i] - rank;
            found[i] = rest == 0 ? below : below + Math.round(rest * (at(rank + 1, starts) - below));
        }
        return new Band(found[0], found[1], found[2], found[3], found[4]);
    }

    private void count(long[] values, long lowest, double scale) {
        for (int i = 0; i < size; i++) {
            buckets[i] = (int) ((values[i] - lowest) * scale);
        }
        Arrays.fill(counts, 0);
        for (int bucket : buckets) {
            counts[bucket]++;
        }
    }

    /** Brings the numbers of the buckets asked for together, each bucket sorted. Returns the ranks they start with. */
    private int[] collect(long[] values, double[] ranks) {
        Arrays.fill(places, NOT_ASKED);
        int[] starts = new int[counts.length + 1];
        for (int bucket = 0; bucket < counts.length; bucket++) {
            starts[bucket + 1] = starts[bucket] + counts[bucket];
        }
        int next = 0;
        for (double exact : ranks) {
            for (int rank = (int) exact; rank <= Math.min(size - 1, (int) exact + 1); rank++) {
                int bucket = bucketOf(rank, starts);
                if (places[bucket] == NOT_ASKED) {
                    places[bucket] = next;
                    next += counts[bucket];
                }
            }
        }
        for (int i = 0; i < size; i++) {
            int bucket = buckets[i];
            if (places[bucket] != NOT_ASKED) {
                asked[places[bucket]++] = values[i];
            }
        }
        for (int bucket = 0; bucket < counts.length; bucket++) {
            if (places[bucket] != NOT_ASKED) {
                Arrays.sort(asked, places[bucket] - counts[bucket], places[bucket]);
            }
        }
        return starts;
    }

    /** The last bucket that starts with this rank or before and isn't empty. */
    private static int bucketOf(int rank, int[] starts) {
        int low = 0;
        int high = starts.length - 2;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (starts[middle] <= rank) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    private long at(int rank, int[] starts) {
        int bucket = bucketOf(rank, starts);
        return asked[places[bucket] - counts[bucket] + rank - starts[bucket]];
    }

    /** The least value that so many of them don't exceed, of values counted from zero on: no day lies between two. */
    static Band ofCounts(int[] counts) {
        long all = Arrays.stream(counts).asLongStream().sum();
        long[] found = new long[CHANCES.length];
        for (int i = 0; i < found.length; i++) {
            int value = 0;
            long until = counts[0];
            while (until < CHANCES[i] * all) {
                value++;
                until += counts[value];
            }
            found[i] = value;
        }
        return new Band(found[0], found[1], found[2], found[3], found[4]);
    }
}
