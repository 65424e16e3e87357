package rollbook.forecast;

import java.util.Currency;
import java.util.UUID;

/**
 * How more media for a leg can be had, as it is kept.
 *
 * @param itemPriceMinorUnits in the smallest unit of the production's currency
 * @param version for noticing that somebody else changed it meanwhile; -1 before it is kept
 */
public record LegSupply(
        UUID legId,
        long itemCapacityBytes,
        int packSize,
        int leadTimeWorkingDays,
        int safetyWorkingDays,
        long itemPriceMinorUnits,
        int version) {

    public static final int NOT_KEPT = -1;

    Supply in(Currency currency) {
        return new Supply(
                itemCapacityBytes, packSize, leadTimeWorkingDays, safetyWorkingDays, itemPriceMinorUnits, currency);
    }
}
