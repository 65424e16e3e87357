package rollbook.learning;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What is believed of the days' log ratios, ln(recorded / planned): they are normal about a level with a variance, and
 * neither is known. Variance ~ inverse gamma(a, b), level given the variance ~ normal(mu, variance / k): the normal
 * inverse gamma distribution, which stays one when days are added (conjugate; textbook).
 *
 * @param k days that the level is worth
 * @param mu expected level, 0 is as planned
 * @param a half the degrees of freedom of the spread
 * @param b b / a is about the variance of a day; 0 leaves no doubt at all: every day is exp(mu)
 */
public record Belief(double k, double mu, double a, double b) {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    public Belief {
        if (!(k > 0 && a > 0 && b >= 0 && Double.isFinite(k + mu + a + b))) {
            throw new IllegalArgumentException("No belief: k %s, mu %s, a %s, b %s".formatted(k, mu, a, b));
        }
    }

    /** With days that count fully. */
    public Belief updated(double... logRatios) {
        double[] weights = new double[logRatios.length];
        Arrays.fill(weights, 1);
        return updated(logRatios, weights);
    }

    /**
     * With days that count in part: a day of weight ½ teaches as much as half a day (power likelihood). The sum of
     * squares is one of deviations, as a difference of sums would lose the digits.
     */
    public Belief updated(double[] logRatios, double[] weights) {
        double total = 0;
        double sum = 0;
        for (int i = 0; i < logRatios.length; i++) {
            total += weights[i];
            sum += weights[i] * logRatios[i];
        }
        if (total == 0) {
            return this;
        }
        double mean = sum / total;
        double squares = 0;
        for (int i = 0; i < logRatios.length; i++) {
            squares += weights[i] * (logRatios[i] - mean) * (logRatios[i] - mean);
        }
        double apart = mean - mu;
        return new Belief(
                k + total,
                (k * mu + total * mean) / (k + total),
                a + total / 2,
                b + squares / 2 + k * total * apart * apart / (2 * (k + total)));
    }

    /** The same expectations, but worth no more than so many days; for what was learned elsewhere. */
    Belief worthAtMost(double days, double halfDegreesOfFreedom) {
        double cappedA = Math.min(a, halfDegreesOfFreedom);
        return new Belief(Math.min(k, days), mu, cappedA, b / a * cappedA);
    }

    /** Of one day to come: recorded / planned. */
    public LogT predictive() {
        return ofMean(1);
    }

    /**
     * Of the geometric mean of so many days to come. It doesn't narrow to nothing with more days, as they share the
     * level that isn't known.
     */
    public LogT ofMean(int days) {
        return ofMean(days, 0);
    }

    /** @param wander what the wandering of the level adds, as a part of the variance of a day */
    LogT ofMean(int days, double wander) {
        return new LogT(mu, Math.sqrt(b / a * (1 / k + 1.0 / days + wander)), 2 * a);
    }

    /** Of the level alone: what the days to come have in common. */
    public LogT level() {
        return new LogT(mu, Math.sqrt(b / a / k), 2 * a);
    }

    /** Of the log ratios of two days to come. */
    public double correlationOfTwoDays() {
        return 1 / (k + 1);
    }

    /** The standard deviation of a day about its level that belongs to a uniform number: inverse of its distribution. */
    double spread(double uniform) {
        return b == 0 ? 0 : Math.sqrt(b / GammaDistribution.of(a, 1).inverseCumulativeProbability(uniform));
    }

    /** The same for each of many numbers. */
    double[] spreads(double[] uniforms) {
        boolean worthATable = b > 0 && uniforms.length > 2 * SpreadTable.SIZE;
        return Arrays.stream(uniforms)
                .map(worthATable ? new SpreadTable(this)::spread : this::spread)
                .toArray();
    }

    /** The level that belongs to a standard normal number, given the spread. */
    double level(double spread, double standardNormal) {
        return mu + spread / Math.sqrt(k) * standardNormal;
    }

    /**
     * Possible levels, as factors: exp(level), one for each pair of numbers uniform in (0, 1). For what varies little and
     * is wanted only on the whole, such as the share that an encoding keeps.
     */
    public double[] levelFactors(double[] uniformsOfSpread, double[] uniformsOfLevel) {
        double[] factors = spreads(uniformsOfSpread);
        for (int i = 0; i < factors.length; i++) {
            factors[i] = Math.exp(level(factors[i], NORMAL.inverseCumulativeProbability(uniformsOfLevel[i])));
        }
        return factors;
    }
}
