package rollbook.forecast;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/**
 * How one leg's pool fares to the end of the show. To the byte: room now + arriving + returning − leaving − demand = room
 * at the end.
 *
 * @param demandBytes to be written from now to the end, the waiting bytes included
 * @param roomAtEndBytes below zero by what lacks
 * @param shortfallBytes the most that lacks on any day, so what an order must bring; zero if the pool lasts
 * @param runOut null if the pool lasts to the end of the show
 * @param coverDays shooting days to come, today's included, whose bytes all fit before the pool runs out
 * @param daysToCome shooting days to come in all
 * @param overdueReturnBytes bytes that should have been released before today; they aren't counted on
 * @param overdueArrivalItems items on order that should have come before today; counted as coming today
 * @param order what to order, null if nothing is needed or how to get it isn't known
 */
public record LegForecast(
        UUID legId,
        String legName,
        Share kept,
        @Nullable Integer returnAfterDays,
        long roomNowBytes,
        long waitingBytes,
        long demandBytes,
        long returningBytes,
        long arrivingBytes,
        long leavingBytes,
        long roomAtEndBytes,
        long shortfallBytes,
        @Nullable RunOut runOut,
        int coverDays,
        int daysToCome,
        long overdueReturnBytes,
        long overdueArrivalItems,
        OrderFlag flag,
        @Nullable OrderProposal order,
        BurnDown burnDown) {

    public boolean lastsToTheEnd() {
        return runOut == null;
    }

    /** The date the pool runs out, or null. */
    public @Nullable LocalDate runOutOn() {
        return runOut == null ? null : runOut.date();
    }

    /** The same forecast with another series, such as one that knows what was left on past dates. */
    public LegForecast withBurnDown(BurnDown series) {
        return new LegForecast(
                legId,
                legName,
                kept,
                returnAfterDays,
                roomNowBytes,
                waitingBytes,
                demandBytes,
                returningBytes,
                arrivingBytes,
                leavingBytes,
                roomAtEndBytes,
                shortfallBytes,
                runOut,
                coverDays,
                daysToCome,
                overdueReturnBytes,
                overdueArrivalItems,
                flag,
                order,
                series);
    }
}
