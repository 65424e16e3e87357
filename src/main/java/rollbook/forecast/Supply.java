package rollbook.forecast;

import java.math.BigDecimal;
import java.util.Currency;

/**
 * How more media for a pool can be had.
 *
 * @param packSize items that are sold together, at least one
 * @param leadTimeWorkingDays working days from the day of the order to the day it comes
 * @param safetyWorkingDays working days that it should be there before it has to be
 * @param itemPriceMinorUnits price of one item in the currency's smallest unit, such as cents
 */
public record Supply(
        long itemCapacityBytes,
        int packSize,
        int leadTimeWorkingDays,
        int safetyWorkingDays,
        long itemPriceMinorUnits,
        Currency currency) {
    public Supply {
        if (itemCapacityBytes < 1
                || packSize < 1
                || leadTimeWorkingDays < 0
                || safetyWorkingDays < 0
                || itemPriceMinorUnits < 0) {
            throw new IllegalArgumentException(
                    "Supply of %d-byte items in packs of %d, lead time %d and safety %d working days, price %d"
                            .formatted(
                                    itemCapacityBytes,
                                    packSize,
                                    leadTimeWorkingDays,
                                    safetyWorkingDays,
                                    itemPriceMinorUnits));
        }
    }

    BigDecimal costOf(long items) {
        return BigDecimal.valueOf(itemPriceMinorUnits, currency.getDefaultFractionDigits())
                .multiply(BigDecimal.valueOf(items));
    }
}
