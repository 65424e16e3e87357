package rollbook.learning;

import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A factor whose logarithm is Student’s t with a location and a scale. It has quantiles, but its mean is infinite
 * however many days were learned (the tails of t are heavier than an exponential), so there is none to ask for.
 *
 * @param scale 0 leaves one value, exp(location)
 * @param nu degrees of freedom, not always whole
 */
public record LogT(double location, double scale, double nu) {
    public LogT {
        if (!(scale >= 0 && nu > 0)) {
            throw new IllegalArgumentException("Scale %s, degrees of freedom %s".formatted(scale, nu));
        }
    }

    /** The factor that isn't exceeded with this chance. */
    public double quantile(double chance) {
        return Math.exp(
                scale == 0 ? location : location + scale * TDistribution.of(nu).inverseCumulativeProbability(chance));
    }

    public double median() {
        return Math.exp(location);
    }

    public double chanceAbove(double factor) {
        double log = Math.log(factor) - location;
        if (scale == 0) {
            return log < 0 ? 1 : 0;
        }
        return TDistribution.of(nu).survivalProbability(log / scale);
    }
}
