package rollbook.learning;

import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * How many of several independent figures fell into their bands. Days of one show aren't independent: count one figure
 * for each show, or take the plausible range for too narrow.
 */
public record Coverage(int inside, int of) {
    public double share() {
        return (double) inside / of;
    }

    /** The smallest count that bands of this chance fall below in at most a half of {@code surprise}. */
    public static int fewest(int of, double chance, double surprise) {
        return BinomialDistribution.of(of, chance).inverseCumulativeProbability(surprise / 2);
    }

    /** The same at the upper end. */
    public static int most(int of, double chance, double surprise) {
        return BinomialDistribution.of(of, chance).inverseCumulativeProbability(1 - surprise / 2);
    }

    /** Whether bands of this chance would show such a count, but for a surprise of this chance. */
    public boolean agreesWith(double chance, double surprise) {
        return inside >= fewest(of, chance, surprise) && inside <= most(of, chance, surprise);
    }
}
