package rollbook.ordering;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to order for a pool, by when, and why.
 *
 * @param riskWithout chance of running out before the end of the show if nothing more is ordered
 * @param mendableRiskWithout the same without the courses of the show that an order placed at once can't mend either
 * @param earlyRunOutOn the first date by which the pool has run out with a chance of at least a tenth if nothing more is
 *     ordered, null if there is none
 * @param likelyRunOutOn the same for a chance of at least a half
 * @param order null if the pool lasts well enough without
 * @param allowedWhileWaiting the chance of running out before an order comes that is put up with: the less likely an order
 *     is needed at all, the more of what is put up with to the end of the show
 * @param waiting what it costs in risk to order on the first possible day, the next one and so on; never empty, and the
 *     risk never falls from one to the next
 * @param toTheEnd packs needed to the end of the show in all, this order's included
 */
public record OrderAdvice(
        Offer offer,
        ServiceLevel level,
        double riskWithout,
        double mendableRiskWithout,
        @Nullable LocalDate earlyRunOutOn,
        @Nullable LocalDate likelyRunOutOn,
        @Nullable Order order,
        double allowedWhileWaiting,
        List<Waiting> waiting,
        PackBand toTheEnd) {

    /**
     * The order itself: the smallest one by the latest day.
     *
     * @param orderBy the last day on which to order; the first possible one if it should have been ordered before
     * @param orderBefore the moment of that day at which the supplier closes the day's orders
     * @param late whether even an order on the first possible day carries more risk than is put up with
     * @param likelyArrivalOn when it comes with the supplier's median lead time
     * @param riskUntilItComes chance that the pool has run out before it comes, if it is ordered on that day
     * @param followingOrderOn it is to last until an order placed on this day comes
     * @param riskOfTooLittle chance that it doesn't
     * @param followingOrderChance chance that another order is needed after it
     * @param capacityBytes what the items may hold in all
     * @param costMinorUnits items and one delivery
     */
    public record Order(
            LocalDate orderBy,
            Instant orderBefore,
            boolean late,
            LocalDate likelyArrivalOn,
            double riskUntilItComes,
            LocalDate followingOrderOn,
            double riskOfTooLittle,
            double followingOrderChance,
            long packs,
            long items,
            long capacityBytes,
            long costMinorUnits) {}

    /**
     * Ordering on a day.
     *
     * @param likelyArrivalOn when it would come with the supplier's median lead time
     * @param risk the chance that the pool has run out before
     * @param mendableRisk the same without the courses of the show that an order placed at once can't mend either
     */
    public record Waiting(LocalDate orderOn, LocalDate likelyArrivalOn, double risk, double mendableRisk) {}

    /** Packs that are enough with a chance of a half and of nine tenths. */
    public record PackBand(long p50, long p90) {}

    public OrderAdvice {
        waiting = List.copyOf(waiting);
    }

    /**
     * How many times the risk put up with it is to wait for so many more order days: before an order could come then, or
     * to the end of the show, whichever is less. An order that is due makes it more than one.
     *
     * @param orderDays at least one, and fewer than are told in {@code waiting}
     */
    public double timesAllowed(int orderDays) {
        return Math.min(
                waiting.get(orderDays).mendableRisk() / allowedWhileWaiting, mendableRiskWithout / level.allowedRisk());
    }

    /** The chance of running out that is left with the order: before it comes or because it was too little, at most. */
    public double riskWith() {
        return order == null ? riskWithout : Math.min(1, order.riskUntilItComes() + order.riskOfTooLittle());
    }

    /** Packs likely still needed after this order, with a chance of a half and of nine tenths. */
    public PackBand later() {
        long now = order == null ? 0 : order.packs();
        return new PackBand(Math.max(0, toTheEnd.p50() - now), Math.max(0, toTheEnd.p90() - now));
    }

    /** Zero without an order. */
    public BigDecimal cost() {
        return BigDecimal.valueOf(
                order == null ? 0 : order.costMinorUnits(), offer.currency().getDefaultFractionDigits());
    }
}
