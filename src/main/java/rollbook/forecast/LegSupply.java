package rollbook.forecast;

import java.time.LocalTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * How more media for a leg can be had, as it is kept.
 *
 * @param itemPriceMinorUnits in the smallest unit of the production's currency
 * @param hire how such media can be hired; null if it can only be bought
 * @param version for noticing that somebody else changed it meanwhile; -1 before it is kept
 */
public record LegSupply(
        UUID legId,
        long itemCapacityBytes,
        int packSize,
        long itemPriceMinorUnits,
        Source source,
        @Nullable HireTerms hire,
        int version) {

    public static final int NOT_KEPT = -1;

    /**
     * Who delivers, and how. Pools with the same source share a delivery.
     *
     * @param name empty if nobody has said; then the leg stands for itself
     * @param leadTimeWorkingDays from the order to the delivery: half of all deliveries take no longer
     * @param slowLeadTimeWorkingDays nine deliveries of ten take no longer
     * @param country of the supplier, two letters of ISO 3166-1, for its public holidays; null for the production's own
     *     working days and holidays
     * @param orderCutOff in the production's time zone: what is ordered later counts as ordered on the next working day
     * @param deliveryMinorUnits price of a delivery, whatever is in it
     */
    public record Source(
            String name,
            int leadTimeWorkingDays,
            int slowLeadTimeWorkingDays,
            @Nullable String country,
            LocalTime orderCutOff,
            DeliveredTo deliveredTo,
            long deliveryMinorUnits) {}

    /** @param weekMinorUnits price of an item for a week; a week begun is paid */
    public record HireTerms(long weekMinorUnits, int minimumWeeks) {}
}
