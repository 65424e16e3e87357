package rollbook.learning;

import org.apache.commons.statistics.distribution.BetaDistribution;

/** How often a day that is shot brings nothing: the chance ~ beta(with, without), conjugate for days with and without. */
public record ZeroDays(double with, double without) {
    /** One day in twenty, worth twenty days; common sense, no source. */
    static final ZeroDays PRIOR = new ZeroDays(1, 19);

    ZeroDays plus(int daysWith, int daysWithout) {
        return new ZeroDays(with + daysWith, without + daysWithout);
    }

    public double mean() {
        return with / (with + without);
    }

    public double quantile(double chance) {
        return BetaDistribution.of(with, without).inverseCumulativeProbability(chance);
    }

    /** That none of so many days to come brings nothing. */
    public double chanceOfNone(int days) {
        double chance = 1;
        for (int day = 0; day < days; day++) {
            chance *= (without + day) / (with + without + day);
        }
        return chance;
    }
}
