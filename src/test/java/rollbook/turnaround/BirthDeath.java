package rollbook.turnaround;

import java.util.function.IntToDoubleFunction;

/**
 * A number that rises and falls by one, by rates that depend on it alone: its chances in the long run, and how far an
 * average over a long time scatters about them.
 */
final class BirthDeath {
    private final double[] births;
    private final double[] chances;

    /**
     * @param most the greatest number
     * @param birth rate from a number to the next one, asked for all but the greatest
     * @param death rate from a number to the one below, asked for all but 0
     */
    BirthDeath(int most, IntToDoubleFunction birth, IntToDoubleFunction death) {
        births = new double[most + 1];
        chances = new double[most + 1];
        chances[0] = 1;
        double sum = 1;
        for (int n = 0; n < most; n++) {
            births[n] = birth.applyAsDouble(n);
            chances[n + 1] = chances[n] * births[n] / death.applyAsDouble(n + 1);
            sum += chances[n + 1];
        }
        for (int n = 0; n <= most; n++) {
            chances[n] /= sum;
        }
    }

    double chance(int number) {
        return chances[number];
    }

    double birthRate() {
        return mean(n -> births[n]);
    }

    /** What a birth finds, on average. Not the mean over the time where the rate of births depends on the number. */
    double meanFoundByBirths(IntToDoubleFunction of) {
        return mean(n -> births[n] * of.applyAsDouble(n)) / birthRate();
    }

    double mean(IntToDoubleFunction of) {
        double sum = 0;
        for (int n = 0; n < chances.length; n++) {
            sum += chances[n] * of.applyAsDouble(n);
        }
        return sum;
    }

    /**
     * Variance per unit of time, over a long time, of the integral of {@code perTime} of the number plus the sum of
     * {@code perBirth} of the number that each birth finds.
     *
     * <p>With g from the Poisson equation of the chain, the sum less its mean is a martingale: a birth at n adds perBirth(n) + g(n + 1) −
     * g(n), a death back to n takes away g(n + 1) − g(n); births and deaths between n and n + 1 are equally frequent. Worked by hand; the
     * part for integrals is Whitt’s formula of 1992 (from memory).
     */
    double varianceRate(IntToDoubleFunction perTime, IntToDoubleFunction perBirth) {
        IntToDoubleFunction reward = n -> perTime.applyAsDouble(n) + births[n] * perBirth.applyAsDouble(n);
        double mean = mean(reward);
        double[] upTo = new double[chances.length];
        double[] beyond = new double[chances.length];
        for (int n = 0; n < chances.length - 1; n++) {
            upTo[n] = (n == 0 ? 0 : upTo[n - 1]) + chances[n] * (reward.applyAsDouble(n) - mean);
        }
        for (int n = chances.length - 2; n >= 0; n--) {
            beyond[n] = beyond[n + 1] + chances[n + 1] * (reward.applyAsDouble(n + 1) - mean);
        }
        double variance = 0;
        double below = 0;
        for (int n = 0; n < chances.length - 1; n++) {
            below += chances[n];
            double flow = chances[n] * births[n];
            // upTo = −beyond; the sum over the less likely side loses no digits
            double step = (below < 0.5 ? -upTo[n] : beyond[n]) / flow;
            double birth = perBirth.applyAsDouble(n) + step;
            variance += flow * (birth * birth + step * step);
        }
        return variance;
    }
}
