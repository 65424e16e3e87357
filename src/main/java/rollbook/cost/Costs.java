package rollbook.cost;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.forecast.CostToCome;

/**
 * All that is known of a production's media costs.
 *
 * @param budgets the newest first
 * @param toCome what the newest forecast says; null before the first
 * @param comparisons hires of something that can be bought too
 * @param unpriced items that were bought for nobody knows how much
 */
record Costs(
        CostSheet sheet,
        List<Budget> budgets,
        @Nullable CostToCome toCome,
        List<Comparison> comparisons,
        int unpriced) {

    /**
     * What is hired against what buying it today would cost.
     *
     * @param code of the hire
     * @param hireMinorUnits from the first day to the date on which it is due back, or to the return
     * @param buyMinorUnits the supplier's price today
     */
    record Comparison(String code, String path, String model, int items, long hireMinorUnits, long buyMinorUnits) {}
}
