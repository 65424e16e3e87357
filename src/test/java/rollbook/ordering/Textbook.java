package rollbook.ordering;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Formulas of inventory theory as textbooks have them, to hold what is found on simulated paths against. They take demand
 * for normal and days for alike, so no advice is made with them.
 */
final class Textbook {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Textbook() {}

    static double z(double chance) {
        return NORMAL.inverseCumulativeProbability(chance);
    }

    static double chance(double z) {
        return NORMAL.cumulativeProbability(z);
    }

    /** Standard deviation of the demand in a lead time, demand and lead time varying independently. */
    static double leadTimeDeviation(double mean, double deviation, double lead, double leadDeviation) {
        return Math.sqrt(lead * deviation * deviation + mean * mean * leadDeviation * leadDeviation);
    }

    /** Expected excess of a standard normal variable over z. */
    static double unitNormalLoss(double z) {
        return NORMAL.density(z) - z * NORMAL.survivalProbability(z);
    }

    /** The z whose loss it is, by halving. */
    static double zOfLoss(double loss) {
        double low = -10;
        double high = 10;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (unitNormalLoss(middle) > loss) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Economic order quantity. */
    static double orderQuantity(double fixed, double holding, double demand) {
        return Math.sqrt(2 * fixed * demand / holding);
    }

    /** Cost of a period with a quantity that is too small or too large by what normal demand has it. */
    static double newsvendorCost(double under, double over, double mean, double deviation, double quantity) {
        double z = (quantity - mean) / deviation;
        return over * (quantity - mean) + (over + under) * deviation * unitNormalLoss(z);
    }
}
