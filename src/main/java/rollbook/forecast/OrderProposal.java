package rollbook.forecast;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.ExactDivision;
import rollbook.quantity.Share;

/**
 * The smallest order in whole packs that lets a pool last to the end of the show.
 *
 * @param orderBy last working day on which to order; before today if it is late
 * @param arrivesBy the working day on which it then comes, safety days not used up; the last one for it to be in time is
 *     {@code neededBy}
 * @param neededBy last working day before the pool runs out
 * @param earliestArrival when it comes if it is ordered today or on the next working day
 * @param capacityBytes what the items may hold in all, within the fill level
 */
public record OrderProposal(
        LocalDate orderBy,
        LocalDate arrivesBy,
        LocalDate neededBy,
        LocalDate earliestArrival,
        long items,
        long packs,
        long capacityBytes,
        BigDecimal cost,
        Currency currency,
        Supply supply) {

    static OrderProposal of(
            long shortfallBytes,
            LocalDate runOutOn,
            Supply supply,
            LocalDate today,
            Share fillLevel,
            WorkingCalendar days) {
        long itemBytes = fillLevel.floorOf(supply.itemCapacityBytes());
        long packs = ExactDivision.ceil(ExactDivision.ceil(shortfallBytes, Math.max(1, itemBytes)), supply.packSize());
        long items = Math.multiplyExact(packs, supply.packSize());
        LocalDate neededBy = days.lastBefore(runOutOn);
        LocalDate arrivesBy = days.minus(neededBy, supply.safetyWorkingDays());
        return new OrderProposal(
                days.minus(arrivesBy, supply.leadTimeWorkingDays()),
                arrivesBy,
                neededBy,
                days.plus(days.onOrAfter(today), supply.leadTimeWorkingDays()),
                items,
                packs,
                Math.multiplyExact(items, itemBytes),
                supply.costOf(items),
                supply.currency(),
                supply);
    }

    OrderFlag flagOn(LocalDate today) {
        return orderBy.isBefore(today) ? OrderFlag.LATE : OrderFlag.ORDER_BY;
    }
}
