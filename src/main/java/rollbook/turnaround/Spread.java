package rollbook.turnaround;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** How a time or an amount of work varies around its mean. */
public sealed interface Spread {
    /** Always the mean. */
    Spread NONE = new None();

    /** Often short, now and then very long; without memory. */
    Spread EXPONENTIAL = new Exponential();

    /**
     * The factor on the mean, itself 1 on average, by the inverse of the distribution.
     *
     * @param uniform in (0, 1); a larger one never gives a smaller factor
     */
    double factor(double uniform);

    /** Always the mean. */
    record None() implements Spread {
        @Override
        public double factor(double uniform) {
            return 1;
        }
    }

    /** Density e<sup>−x</sup>. */
    record Exponential() implements Spread {
        @Override
        public double factor(double uniform) {
            return -Math.log1p(-uniform);
        }
    }

    /**
     * The logarithm is normal.
     *
     * @param variation standard deviation as a part of the mean, above zero
     */
    record LogNormal(double variation) implements Spread {
        private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

        public LogNormal {
            Invalid.unless(variation > 0 && Double.isFinite(variation), "variation", "must be above zero");
        }

        @Override
        public double factor(double uniform) {
            double variance = Math.log1p(variation * variation);
            return Math.exp(Math.sqrt(variance) * NORMAL.inverseCumulativeProbability(uniform) - variance / 2);
        }
    }

    /**
     * All values between the mean less and the mean plus a part of it, equally likely.
     *
     * @param share the part, above zero and at most 1
     */
    record Uniform(double share) implements Spread {
        public Uniform {
            Invalid.unless(share > 0 && share <= 1, "share", "must be above 0 and at most 1");
        }

        @Override
        public double factor(double uniform) {
            return 1 + share * (2 * uniform - 1);
        }
    }
}
