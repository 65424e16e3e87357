package rollbook.learning;

import org.apache.commons.statistics.descriptive.Quantile;

/** Quantiles of a sample, with the definition said: libraries differ in what they do when asked for “the” quantile. */
public final class Quantiles {
    /** Type 7 of Hyndman and Fan: linear between the two nearest values, whose ranks run from 0 to n − 1. */
    private static final Quantile LINEAR =
            Quantile.withDefaults().with(Quantile.EstimationMethod.HF7).withCopy(true);

    /** Type 1: the inverse of the empirical distribution, always one of the values. */
    private static final Quantile INVERSE =
            Quantile.withDefaults().with(Quantile.EstimationMethod.HF1).withCopy(true);

    private Quantiles() {}

    /** For what is continuous, such as bytes. Leaves the sample as it is. */
    public static double interpolated(double[] sample, double chance) {
        return LINEAR.evaluate(sample, chance);
    }

    /** Several at once, cheaper than one by one. */
    public static double[] interpolated(double[] sample, double... chances) {
        return LINEAR.evaluate(sample, chances);
    }

    /** For what is counted, such as days: the smallest value that at least this part of the sample doesn’t exceed. */
    public static int counted(int[] sample, double chance) {
        return (int) INVERSE.evaluate(sample, chance);
    }
}
