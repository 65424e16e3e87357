package rollbook.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * Spent, committed and to come side by side on one bar, with the budget as a line across it: places in thousandths of the
 * width.
 *
 * @param budget null without one
 */
record CostBar(
        int spent, int committed, int toCome, @Nullable Integer budget) {
    static final int WIDTH = 1000;

    /** @return null if there is neither a cost nor a budget */
    static @Nullable CostBar of(CostSheet sheet) {
        Long budget = sheet.budgetMinorUnits();
        long full = Math.max(sheet.total(), budget == null ? 0 : budget);
        if (full == 0) {
            return null;
        }
        int spent = place(sheet.of(Stage.SPENT), full);
        int committed = place(Math.addExact(sheet.of(Stage.SPENT), sheet.of(Stage.COMMITTED)), full);
        return new CostBar(
                spent,
                committed - spent,
                place(sheet.total(), full) - committed,
                budget == null ? null : place(budget, full));
    }

    private static int place(long minorUnits, long full) {
        return BigDecimal.valueOf(minorUnits)
                .multiply(BigDecimal.valueOf(WIDTH))
                .divide(BigDecimal.valueOf(full), 0, RoundingMode.HALF_UP)
                .intValueExact();
    }

    public int committedFrom() {
        return spent;
    }

    public int toComeFrom() {
        return spent + committed;
    }
}
