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
 * <p>An order doesn't have to last to the end of the show, only until one that is placed on the following order day comes;
 * what is left to order later is bought when more is known. So an order is due on the last day on which the pool probably
 * lasts until it comes, and it is enough if the pool then probably lasts until the following one comes. More than that is
 * ordered where it is cheaper than another delivery.
 *
 * <p>The risk put up with is for the whole rest of the show, and several orders share it. Waiting saves something only if
 * the order turns out not to be needed: while it is certain to be needed, only a fifth of the risk may be taken by waiting
 * for it, and all of it the less likely it is.
 *
 * <p>A higher service level never orders later, and on one day never less. It may order less at once where it orders
 * earlier.
 */
public final class Ordering {
    /** How many order days an advice tells the risk of. */
    private static final int ORDER_DAYS_TOLD = 10;

    /** Of the risk put up with, what waiting may take though the order is needed for certain; tried on generated shows. */
    private static final double PART_IF_NEEDED = 0.2;

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
                chances.mendableBy(chances.lastDate()),
                chances.firstDateWith(EARLY),
                chances.firstDateWith(HALF),
                order(toTheEnd),
                allowedWhileWaiting(),
                waiting(),
                new OrderAdvice.PackBand(toTheEnd.fewestWithin(HALF), toTheEnd.fewestWithin(EARLY)));
    }

    /** The part of the risk put up with that waiting for an order may take. */
    private double allowedWhileWaiting() {
        double notNeeded = 1 - chances.mendableBy(chances.lastDate());
        return level.allowedRisk() * (PART_IF_NEEDED + (1 - PART_IF_NEEDED) * notNeeded);
    }

    private OrderAdvice.@Nullable Order order(PackNeed toTheEnd) {
        if (chances.mendableBy(chances.lastDate()) <= level.allowedRisk()) {
            return null;
        }
        LocalDate orderBy = latestDay();
        LocalDate following = supplier.days().nextOrderDay(orderBy);
        PackNeed need = chances.needUntilArrival(following, supplier, packBytes);
        long packs = Math.max(
                Math.max(1, need.fewestWithin(level.allowedRisk())),
                toTheEnd.worthTheirPrice(offer.packPriceMinorUnits(), supplier.deliveryMinorUnits()));
        return new OrderAdvice.Order(
                orderBy,
                supplier.days().closesAt(orderBy),
                chances.mendableBeforeArrival(orderBy, supplier) > allowedWhileWaiting(),
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
        while (chances.mendableBeforeArrival(next, supplier) <= allowedWhileWaiting()) {
            latest = next;
            next = supplier.days().nextOrderDay(latest);
        }
        return latest;
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
