package rollbook.learning;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Where figures fell within their forecasts' distributions (probability integral transform): uniform from 0 to 1 if the
 * forecasts were right, heaped at the ends if they were too narrow.
 */
final class Pit {
    private static final int BINS = 10;

    private Pit() {}

    /**
     * The place of a figure among the replicates.
     *
     * @param uniform decides within the figure's own step, so that right forecasts give exactly uniform places
     */
    static double place(double[] replicates, double actual, double uniform) {
        long below = Arrays.stream(replicates).filter(value -> value < actual).count();
        long equal = Arrays.stream(replicates).filter(value -> value == actual).count();
        return (below + uniform * (equal + 1)) / (replicates.length + 1);
    }

    /** How many places fell into each tenth. */
    static int[] histogram(List<Double> places) {
        int[] counts = new int[BINS];
        places.forEach(place -> counts[Math.min(BINS - 1, (int) (place * BINS))]++);
        return counts;
    }

    /** The chance that uniform places look at least so uneven (chi-square over tenths, nine degrees of freedom). */
    static double chanceIfUniform(List<Double> places) {
        double expected = (double) places.size() / BINS;
        double distance = 0;
        for (int count : histogram(places)) {
            distance += (count - expected) * (count - expected) / expected;
        }
        return ChiSquaredDistribution.of(BINS - 1).survivalProbability(distance);
    }
}
