package rollbook.ordering;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The textbook's reorder point, for comparison with what the simulated paths say: demand during the lead time is taken
 * for normal. With a lead time that varies it isn't, and the formula then asks for too little.
 *
 * @param leadTimeDemand mean demand during the lead time
 * @param standardDeviation of that demand
 * @param z standard deviations held as safety stock
 */
public record ReorderPoint(double leadTimeDemand, double standardDeviation, double z) {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /**
     * From demand and lead time that vary independently: the deviation is √(L σ² + μ² σ<sub>L</sub>²) (any textbook of
     * inventory theory).
     *
     * @param meanPerDay mean demand of a day
     * @param deviationPerDay its standard deviation
     */
    public static ReorderPoint of(
            double meanPerDay, double deviationPerDay, double meanLeadDays, double deviationLeadDays, double z) {
        return new ReorderPoint(
                meanPerDay * meanLeadDays,
                Math.sqrt(meanLeadDays * deviationPerDay * deviationPerDay
                        + meanPerDay * meanPerDay * deviationLeadDays * deviationLeadDays),
                z);
    }

    /** Standard deviations to hold so that a lead time passes without a stock-out with this chance. */
    public static double z(ServiceLevel level) {
        return NORMAL.inverseCumulativeProbability(level.chance());
    }

    /** What to hold beyond the mean demand. */
    public double safetyStock() {
        return z * standardDeviation;
    }

    /** What must be left when the order is placed. */
    public double stock() {
        return leadTimeDemand + safetyStock();
    }

    /** The chance that a lead time passes without a stock-out (cycle service level). */
    public double chanceOfLasting() {
        return NORMAL.cumulativeProbability(z);
    }
}
