package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolPaths;
import rollbook.ordering.PossibleOrder.Delivery;
import rollbook.quantity.ExactDivision;

/**
 * Makes a {@link PurchasePlan}: solves the integer program for what each pool needs by each date with a chance, tries the
 * plan on the courses of the show, and asks for more certainty where a pool still runs out too often, for the chance of
 * each date alone says nothing of all dates together.
 */
final class PurchasePlanning {
    /** How often a plan is made at most, each time with half the chance of running out. */
    private static final int ROUNDS = 4;

    /** Days on which hiring is considered, and the order days between them. Buying later is never cheaper, hiring is. */
    private static final int ORDER_DAYS = 4;

    private static final int ORDER_DAYS_BETWEEN = 5;
    private static final double HALF = 0.5;

    private final List<PurchasePlan.Wanted> wanted;
    private final ServiceLevel level;
    private final LocalDate endOfShow;
    private final List<Delivery> deliveries = new ArrayList<>();
    private final List<PossibleOrder> orders = new ArrayList<>();
    private final PlanTrial trial;

    PurchasePlanning(
            List<PurchasePlan.Wanted> wanted, ServiceLevel level, Instant now, LocalDate endOfShow, long seed) {
        this.wanted = List.copyOf(wanted);
        this.level = level;
        this.endOfShow = endOfShow;
        wanted.stream()
                .flatMap(pool -> pool.offers().stream())
                .map(Offer::supplier)
                .distinct()
                .forEach(supplier -> considerOrders(supplier, supplier.days().countsAsOf(now)));
        this.trial = new PlanTrial(orders, seed);
    }

    private void considerOrders(Supplier supplier, LocalDate firstDay) {
        Delivery delivery = new Delivery(supplier, firstDay);
        for (int i = 0; i < ORDER_DAYS && !delivery.usefulFrom(HALF).isAfter(endOfShow); i++) {
            deliveries.add(delivery);
            for (int pool = 0; pool < wanted.size(); pool++) {
                for (Offer offer : wanted.get(pool).offers()) {
                    if (offer.supplier().equals(supplier)) {
                        considerOrder(offer, pool, delivery, i == 0);
                    }
                }
            }
            delivery = new Delivery(supplier, later(delivery));
        }
    }

    private static LocalDate later(Delivery delivery) {
        return delivery.supplier().days().calendar().plus(delivery.orderOn(), ORDER_DAYS_BETWEEN);
    }

    private void considerOrder(Offer offer, int pool, Delivery delivery, boolean onFirstDay) {
        PoolPaths paths = wanted.get(pool).paths();
        long packBytes = Math.multiplyExact(paths.usableBytesOfItem(offer.itemCapacityBytes()), offer.packSize());
        if (packBytes == 0) {
            return;
        }
        if (onFirstDay) {
            orders.add(new PossibleOrder(offer, pool, delivery, false, offer.packPriceMinorUnits(), packBytes));
        }
        if (offer.hire() != null && wanted.get(pool).comesBack()) {
            // The day of arrival and the last day are paid for; it helps from the day after its arrival on.
            long days = ChronoUnit.DAYS.between(delivery.usefulFrom(HALF), endOfShow) + 2;
            long price = Math.multiplyExact(offer.hire().priceMinorUnits(days), offer.packSize());
            orders.add(new PossibleOrder(offer, pool, delivery, true, price, packBytes));
        }
    }

    /** Null if no numbers of packs are enough. */
    @Nullable
    PurchasePlan plan() {
        double[] certainty = new double[wanted.size()];
        Arrays.fill(certainty, level.chance());
        PurchasePlan plan = planWith(certainty);
        for (int round = 1; round < ROUNDS && plan != null && !isEnough(plan, certainty); round++) {
            plan = planWith(certainty);
        }
        return plan;
    }

    /** Whether all pools last; where one doesn't, half of what is left to its certainty is added. */
    private boolean isEnough(PurchasePlan plan, double[] certainty) {
        boolean enough = true;
        for (int pool = 0; pool < certainty.length; pool++) {
            PurchasePlan.PoolRisk risk = plan.risks().get(pool);
            if (risk.risk() - risk.unavoidable() > level.allowedRisk()) {
                certainty[pool] = 1 - (1 - certainty[pool]) / 2;
                enough = false;
            }
        }
        return enough;
    }

    private @Nullable PurchasePlan planWith(double[] certainty) {
        List<PurchaseProgram.Need> needs = IntStream.range(0, certainty.length)
                .boxed()
                .flatMap(pool -> needs(pool, certainty[pool]).stream())
                .toList();
        List<PurchaseProgram.Choice> choices = orders.stream()
                .map(order -> choice(order, needs, certainty[order.pool()]))
                .toList();
        long[] prices = deliveries.stream()
                .mapToLong(delivery -> delivery.supplier().deliveryMinorUnits())
                .toArray();
        long[] packs = PurchaseProgram.solve(choices, prices, needs);
        return packs == null
                ? null
                : new PurchasePlan(lines(packs), PurchaseProgram.costMinorUnits(choices, prices, packs), risks(packs));
    }

    /** By date; what lacks before anything can come isn't asked for. */
    private List<PurchaseProgram.Need> needs(int pool, double certainty) {
        PoolPaths paths = wanted.get(pool).paths();
        LocalDate first = orders.stream()
                .filter(order -> order.pool() == pool)
                .map(order -> order.delivery().usefulFrom(certainty))
                .min(LocalDate::compareTo)
                .orElse(LocalDate.MAX);
        return IntStream.range(0, paths.dates().size())
                .filter(date -> !paths.dates().get(date).isBefore(first))
                .mapToObj(date ->
                        new PurchaseProgram.Need(pool, paths.dates().get(date), lackingWithin(paths, date, certainty)))
                .toList();
    }

    private static long lackingWithin(PoolPaths paths, int date, double chance) {
        long[] lacking = IntStream.range(0, paths.replicates())
                .mapToLong(replicate -> paths.shortfallBytes(date, replicate))
                .sorted()
                .toArray();
        return lacking[Math.min(lacking.length, (int) Math.ceil(chance * lacking.length)) - 1];
    }

    private PurchaseProgram.Choice choice(PossibleOrder order, List<PurchaseProgram.Need> needs, double certainty) {
        long most = needs.stream()
                .filter(need -> need.pool() == order.pool())
                .mapToLong(PurchaseProgram.Need::bytes)
                .max()
                .orElse(0);
        return new PurchaseProgram.Choice(
                deliveries.indexOf(order.delivery()),
                order.pool(),
                order.delivery().usefulFrom(certainty),
                order.packBytes(),
                order.packPriceMinorUnits(),
                ExactDivision.ceil(most, order.packBytes()));
    }

    private List<PurchasePlan.Line> lines(long[] packs) {
        return IntStream.range(0, packs.length)
                .filter(i -> packs[i] > 0)
                .mapToObj(i -> new PurchasePlan.Line(
                        orders.get(i).offer(),
                        orders.get(i).delivery().orderOn(),
                        orders.get(i).hired(),
                        packs[i],
                        Math.multiplyExact(packs[i], orders.get(i).packPriceMinorUnits())))
                .toList();
    }

    private List<PurchasePlan.PoolRisk> risks(long[] packs) {
        return IntStream.range(0, wanted.size())
                .mapToObj(pool -> trial.risk(pool, wanted.get(pool).paths(), packs))
                .toList();
    }
}
