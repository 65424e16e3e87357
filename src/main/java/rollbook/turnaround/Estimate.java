package rollbook.turnaround;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A figure found by playing many days, and between which bounds the true one lies with 95 % confidence.
 *
 * @param low the value itself where chance plays no part
 */
public record Estimate(double value, double low, double high) {
    private static final double UPPER = 0.975;
    private static final double Z = NormalDistribution.of(0, 1).inverseCumulativeProbability(UPPER);

    /** The mean, give or take Student’s quantile times the standard error (textbook). Two values at least. */
    static Estimate ofMean(double[] values) {
        int count = values.length;
        double mean = Arrays.stream(values).sum() / count;
        double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        if (squares == 0) {
            return new Estimate(mean, mean, mean);
        }
        double error = Math.sqrt(squares / (count - 1) / count);
        double reach = error * TDistribution.of(count - 1).inverseCumulativeProbability(UPPER);
        return new Estimate(mean, mean - reach, mean + reach);
    }

    /** Wilson’s interval for a share (Wilson 1927), which stays sensible at none of many. */
    static Estimate ofShare(int hits, int of) {
        double share = (double) hits / of;
        double squared = Z * Z / of;
        double centre = (share + squared / 2) / (1 + squared);
        double reach = Z * Math.sqrt(share * (1 - share) / of + squared / (4 * of)) / (1 + squared);
        return new Estimate(share, hits == 0 ? 0 : centre - reach, hits == of ? 1 : centre + reach);
    }

    /** What is 0 for all that is known. */
    public boolean mayBeNothing() {
        return low <= 0 && high >= 0;
    }

    /** Surely below 0, as far as 95 % is sure. */
    public boolean isLess() {
        return high < 0;
    }
}
