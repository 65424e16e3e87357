package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolPaths;

/**
 * Finds the latest day and the smallest number of packs with which a pool runs out with no more than the chance that is
 * put up with.
 *
 * <p>An order doesn't have to last to the end of the show, only until a following one comes; what is left to order later is
 * bought when more is known. So the risk put up with is used up in two halves: one for running out before the order comes,
 * which says by when to order, and one for running out before a following order could come, which says how much.
 */
public final class Ordering {
    /** How many order days an advice tells the risk of. */
    private static final int ORDER_DAYS_TOLD = 10;

    private static final double HALF = 0.5;
    private static final double EARLY = 0.1;

    private final Offer offer;
    private final Supplier supplier;
    private final ServiceLevel level;
    private final RunOutChances chances;
    private final LocalDate firstDay;
    private final long packBytes;

    private Ordering(PoolPaths paths, Offer offer, ServiceLevel level, Instant now) {
        this.offer = offer;
        this.supplier = offer.supplier();
        this.level = level;
        this.firstDay = supplier.days().countsAsOf(now);
        this.chances = new RunOutChances(paths, likelyArrival(firstDay));
        this.packBytes = Math.multiplyExact(paths.usableBytesOfItem(offer.itemCapacityBytes()), offer.packSize());
        if (packBytes < 1) {
            throw new IllegalArgumentException(offer.name() + " holds no roll");
        }
    }

    /**
     * @param now when it is asked; no order can be placed before
     * @throws IllegalArgumentException if the offer's items hold no roll
     */
    public static OrderAdvice advise(PoolPaths paths, Offer offer, ServiceLevel level, Instant now) {
        return new Ordering(paths, offer, level, now).advice();
    }

    private OrderAdvice advice() {
        PackNeed toTheEnd = chances.needToTheEnd(packBytes);
        return new OrderAdvice(
                offer,
                level,
                chances.by(chances.lastDate()),
                chances.firstDateWith(EARLY),
                chances.firstDateWith(HALF),
                order(toTheEnd),
                waiting(),
                new OrderAdvice.PackBand(toTheEnd.fewestWithin(HALF), toTheEnd.fewestWithin(EARLY)));
    }

    /** Half of the risk put up with. */
    private double share() {
        return level.allowedRisk() * HALF;
    }

    private OrderAdvice.@Nullable Order order(PackNeed toTheEnd) {
        if (chances.mendableBy(chances.lastDate()) <= share()) {
            return null;
        }
        LocalDate orderBy = latestDay();
        LocalDate following = followingDay();
        PackNeed need = chances.needUntilArrival(following, supplier, packBytes);
        long packs = toTheEnd.leastWaste(
                need.fewestWithin(share()), offer.packPriceMinorUnits(), supplier.deliveryMinorUnits());
        return new OrderAdvice.Order(
                orderBy,
                supplier.days().closesAt(orderBy),
                chances.mendableBeforeArrival(orderBy, supplier) > share(),
                likelyArrival(orderBy),
                chances.beforeArrival(orderBy, supplier),
                following,
                need.chanceOfMoreThan(packs),
                toTheEnd.chanceOfMoreThan(packs),
                packs,
                Math.multiplyExact(packs, offer.packSize()),
                Math.multiplyExact(packs, packBytes),
                Math.addExact(Math.multiplyExact(packs, offer.packPriceMinorUnits()), supplier.deliveryMinorUnits()));
    }

    /** There is one before the end of the show, for somebody who never orders takes more risk than is put up with. */
    private LocalDate latestDay() {
        LocalDate latest = firstDay;
        LocalDate next = supplier.days().nextOrderDay(latest);
        while (chances.mendableBeforeArrival(next, supplier) <= share()) {
            latest = next;
            next = supplier.days().nextOrderDay(latest);
        }
        return latest;
    }

    /**
     * When a following order is placed: on the day this one comes, but not before the pool would have run out without it.
     * This doesn't depend on the service level, or a higher one could ask for less.
     */
    private LocalDate followingDay() {
        LocalDate arrival = likelyArrival(firstDay);
        LocalDate runOut = chances.firstDateWith(HALF);
        if (runOut == null) {
            return chances.lastDate();
        }
        return runOut.isAfter(arrival) ? runOut : arrival;
    }

    private List<OrderAdvice.Waiting> waiting() {
        List<OrderAdvice.Waiting> days = new ArrayList<>();
        LocalDate day = firstDay;
        for (int i = 0; i < ORDER_DAYS_TOLD; i++) {
            days.add(new OrderAdvice.Waiting(
                    day,
                    likelyArrival(day),
                    chances.beforeArrival(day, supplier),
                    chances.mendableBeforeArrival(day, supplier)));
            day = supplier.days().nextOrderDay(day);
        }
        return days;
    }

    private LocalDate likelyArrival(LocalDate orderOn) {
        return supplier.days().arrival(orderOn, supplier.leadTime().days(HALF));
    }
}
