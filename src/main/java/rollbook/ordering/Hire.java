package rollbook.ordering;

import rollbook.quantity.ExactDivision;

/**
 * The same item for hire instead of for sale.
 *
 * @param weeklyRateMinorUnits for one item and each week begun
 * @param minimumWeeks paid for at least, one or more
 */
public record Hire(long weeklyRateMinorUnits, int minimumWeeks) {
    public Hire {
        if (weeklyRateMinorUnits < 0 || minimumWeeks < 1) {
            throw new IllegalArgumentException(
                    "Hire at %d a week for %d weeks at least".formatted(weeklyRateMinorUnits, minimumWeeks));
        }
    }

    /** What one item costs that is hired for so many calendar days. */
    long priceMinorUnits(long days) {
        return Math.multiplyExact(weeklyRateMinorUnits, Math.max(minimumWeeks, ExactDivision.ceil(days, 7)));
    }
}
