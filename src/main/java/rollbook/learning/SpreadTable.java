package rollbook.learning;

import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The inverse of the spread's distribution for many uniform numbers. The exact inverse of the gamma distribution takes a
 * microsecond or more, so it is computed at evenly spaced normal scores only; its logarithm is smooth over these, and a
 * cubic through the four scores about a number is right to 1e-8 of its value.
 */
final class SpreadTable {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final int STEPS_PER_SCORE = 32;

    /** No number strictly between 0 and 1 has a score beyond 8.3. */
    private static final int LARGEST_SCORE = 9;

    static final int SIZE = 2 * LARGEST_SCORE * STEPS_PER_SCORE + 1;

    private final double[] logSpreads = new double[SIZE];

    SpreadTable(Belief belief) {
        GammaDistribution precision = GammaDistribution.of(belief.a(), 1);
        for (int i = 0; i < logSpreads.length; i++) {
            double score = i / (double) STEPS_PER_SCORE - LARGEST_SCORE;
            // Near one a number can't be told from one; its distance from one can.
            double quantile = score < 0
                    ? precision.inverseCumulativeProbability(NORMAL.cumulativeProbability(score))
                    : precision.inverseSurvivalProbability(NORMAL.survivalProbability(score));
            logSpreads[i] = Math.log(belief.b() / quantile) / 2;
        }
    }

    double spread(double uniform) {
        double position = (NORMAL.inverseCumulativeProbability(uniform) + LARGEST_SCORE) * STEPS_PER_SCORE;
        int i = (int) position;
        double t = position - i;
        return Math.exp(logSpreads[i - 1] * (t * (t - 1) * (2 - t) / 6)
                + logSpreads[i] * ((t + 1) * (t - 1) * (t - 2) / 2)
                + logSpreads[i + 1] * ((t + 1) * t * (2 - t) / 2)
                + logSpreads[i + 2] * ((t + 1) * t * (t - 1) / 6));
    }
}
