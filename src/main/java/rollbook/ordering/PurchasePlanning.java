package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolPaths;
import rollbook.learning.Streams;
import rollbook.quantity.ExactDivision;

/**
 * Makes a {@link PurchasePlan}: solves the integer program for what each pool needs by each date with a chance, tries the
 * plan on the simulated paths with lead times drawn, and asks for more certainty where a pool still runs out too often,
 * for the chance of each date alone says nothing of all dates together.
 */
final class PurchasePlanning {
    /** How often more certainty is asked for at most. */
    private static final int ROUNDS = 4;

    /** Days on which hiring is considered, and the order days between them. Buying later is never cheaper, hiring is. */
    private static final int ORDER_DAYS = 4;

    private static final int ORDER_DAYS_BETWEEN = 5;

    private record Order(
            Offer offer, int pool, int delivery, boolean hired, LocalDate orderOn, long packPriceMinorUnits) {}

    private final List<PurchasePlan.Wanted> wanted;
    private final ServiceLevel level;
    private final LocalDate endOfShow;
    private final long seed;
    private final List<Supplier> suppliers;
    private final List<LocalDate> deliveryDays = new ArrayList<>();
    private final List<Supplier> deliverySuppliers = new ArrayList<>();
    private final List<Order> orders = new ArrayList<>();

    PurchasePlanning(
            List<PurchasePlan.Wanted> wanted, ServiceLevel level, Instant now, LocalDate endOfShow, long seed) {
        this.wanted = List.copyOf(wanted);
        this.level = level;
        this.endOfShow = endOfShow;
        this.seed = seed;
        this.suppliers = wanted.stream()
                .flatMap(pool -> pool.offers().stream())
                .map(Offer::supplier)
                .distinct()
                .toList();
        suppliers.forEach(supplier -> considerOrdersFrom(supplier, now));
    }

    private void considerOrdersFrom(Supplier supplier, Instant now) {
        LocalDate day = supplier.days().countsAsOf(now);
        for (int i = 0; i < ORDER_DAYS && !usefulFrom(supplier, day, 0.5).isAfter(endOfShow); i++) {
            int delivery = deliveryDays.size();
            deliveryDays.add(day);
            deliverySuppliers.add(supplier);
            for (int pool = 0; pool < wanted.size(); pool++) {
                for (Offer offer : wanted.get(pool).offers()) {
                    if (offer.supplier().equals(supplier)) {
                        considerOrders(offer, pool, delivery, i == 0);
                    }
                }
            }
            for (int step = 0; step < ORDER_DAYS_BETWEEN; step++) {
                day = supplier.days().nextOrderDay(day);
            }
        }
    }

    private void considerOrders(Offer offer, int pool, int delivery, boolean onFirstDay) {
        LocalDate day = deliveryDays.get(delivery);
        if (onFirstDay) {
            orders.add(new Order(offer, pool, delivery, false, day, offer.packPriceMinorUnits()));
        }
        if (offer.hire() != null && wanted.get(pool).comesBack()) {
            LocalDate arrival = offer.supplier()
                    .days()
                    .arrival(day, offer.supplier().leadTime().days(0.5));
            long days = ChronoUnit.DAYS.between(arrival, endOfShow) + 1;
            long price = Math.multiplyExact(offer.hire().priceMinorUnits(days), offer.packSize());
            orders.add(new Order(offer, pool, delivery, true, day, price));
        }
    }

    private static LocalDate usefulFrom(Supplier supplier, LocalDate orderOn, double chance) {
        return supplier.days()
                .arrival(orderOn, supplier.leadTime().days(chance))
                .plusDays(1);
    }

    @Nullable
    PurchasePlan plan() {
        double[] certainty = new double[wanted.size()];
        Arrays.fill(certainty, level.chance());
        PurchasePlan plan = null;
        for (int round = 0; round < ROUNDS; round++) {
            PurchasePlan next = planWith(certainty);
            if (next == null) {
                return plan;
            }
            plan = next;
            boolean enough = true;
            for (int pool = 0; pool < certainty.length; pool++) {
                PurchasePlan.PoolRisk risk = plan.risks().get(pool);
                if (risk.risk() - risk.unavoidable() > level.allowedRisk()) {
                    certainty[pool] = 1 - (1 - certainty[pool]) / 2;
                    enough = false;
                }
            }
            if (enough) {
                return plan;
            }
        }
        return plan;
    }

    private @Nullable PurchasePlan planWith(double[] certainty) {
        List<PurchaseProgram.Need> needs = new ArrayList<>();
        List<PurchaseProgram.Choice> choices = new ArrayList<>();
        LocalDate[] firstUseful = new LocalDate[wanted.size()];
        for (Order order : orders) {
            LocalDate usefulFrom = usefulFrom(order.offer().supplier(), order.orderOn(), certainty[order.pool()]);
            if (firstUseful[order.pool()] == null || usefulFrom.isBefore(firstUseful[order.pool()])) {
                firstUseful[order.pool()] = usefulFrom;
            }
        }
        long[] most = new long[wanted.size()];
        for (int pool = 0; pool < wanted.size(); pool++) {
            PoolPaths paths = wanted.get(pool).paths();
            for (int date = 0; date < paths.dates().size(); date++) {
                if (firstUseful[pool] != null && !paths.dates().get(date).isBefore(firstUseful[pool])) {
                    long bytes = needed(paths, date, certainty[pool]);
                    most[pool] = Math.max(most[pool], bytes);
                    needs.add(new PurchaseProgram.Need(pool, paths.dates().get(date), bytes));
                }
            }
        }
        for (Order order : orders) {
            long packBytes = packBytes(order);
            choices.add(new PurchaseProgram.Choice(
                    order.delivery(),
                    order.pool(),
                    usefulFrom(order.offer().supplier(), order.orderOn(), certainty[order.pool()]),
                    packBytes,
                    order.packPriceMinorUnits(),
                    ExactDivision.ceil(most[order.pool()], packBytes)));
        }
        long[] deliveries = deliverySuppliers.stream()
                .mapToLong(Supplier::deliveryMinorUnits)
                .toArray();
        long[] packs = PurchaseProgram.solve(choices, deliveries, needs);
        return packs == null
                ? null
                : new PurchasePlan(
                        lines(packs), PurchaseProgram.costMinorUnits(choices, deliveries, packs), risks(packs));
    }

    private long packBytes(Order order) {
        return Math.multiplyExact(
                wanted.get(order.pool()).paths().usableBytesOfItem(order.offer().itemCapacityBytes()),
                order.offer().packSize());
    }

    /** What lacks on that date, with this chance no more. */
    private static long needed(PoolPaths paths, int date, double chance) {
        long[] lacking = new long[paths.replicates()];
        for (int replicate = 0; replicate < lacking.length; replicate++) {
            lacking[replicate] = paths.shortfallBytes(date, replicate);
        }
        Arrays.sort(lacking);
        return lacking[Math.min(lacking.length - 1, (int) Math.ceil(chance * lacking.length) - 1)];
    }

    private List<PurchasePlan.Line> lines(long[] packs) {
        List<PurchasePlan.Line> lines = new ArrayList<>();
        for (int i = 0; i < packs.length; i++) {
            if (packs[i] > 0) {
                Order order = orders.get(i);
                lines.add(new PurchasePlan.Line(
                        order.offer(),
                        order.orderOn(),
                        order.hired(),
                        packs[i],
                        Math.multiplyExact(packs[i], order.packPriceMinorUnits())));
            }
        }
        return lines;
    }

    private List<PurchasePlan.PoolRisk> risks(long[] packs) {
        List<PurchasePlan.PoolRisk> risks = new ArrayList<>();
        for (int pool = 0; pool < wanted.size(); pool++) {
            risks.add(risk(pool, packs));
        }
        return risks;
    }

    private PurchasePlan.PoolRisk risk(int pool, long[] packs) {
        PoolPaths paths = wanted.get(pool).paths();
        int ranOut = 0;
        int unavoidable = 0;
        LocalDate[][] usefulFromByReplicate = drawnUsefulFrom(paths.replicates());
        for (int replicate = 0; replicate < paths.replicates(); replicate++) {
            LocalDate[] usefulFrom = usefulFromByReplicate[replicate];
            LocalDate earliest = earliest(pool, usefulFrom);
            boolean lacked = false;
            boolean lackedBefore = false;
            for (int date = 0; date < paths.dates().size() && !lackedBefore; date++) {
                LocalDate day = paths.dates().get(date);
                if (paths.shortfallBytes(date, replicate) > arrived(pool, packs, usefulFrom, day)) {
                    lacked = true;
                    lackedBefore |= earliest == null || day.isBefore(earliest);
                }
            }
            ranOut += lacked ? 1 : 0;
            unavoidable += lackedBefore ? 1 : 0;
        }
        return new PurchasePlan.PoolRisk(
                paths.poolId(), (double) ranOut / paths.replicates(), (double) unavoidable / paths.replicates());
    }

    /** By replicate and delivery; a replicate has the same lead times for every pool and every round. */
    private LocalDate[][] drawnUsefulFrom(int replicates) {
        LocalDate[][] dates = new LocalDate[replicates][deliveryDays.size()];
        for (int delivery = 0; delivery < deliveryDays.size(); delivery++) {
            Supplier supplier = deliverySuppliers.get(delivery);
            double[] chances = new Streams(seed).uniforms(replicates, "plan", supplier.name(), delivery);
            for (int replicate = 0; replicate < replicates; replicate++) {
                dates[replicate][delivery] = usefulFrom(supplier, deliveryDays.get(delivery), chances[replicate]);
            }
        }
        return dates;
    }

    private @Nullable LocalDate earliest(int pool, LocalDate[] usefulFrom) {
        LocalDate earliest = null;
        for (Order order : orders) {
            if (order.pool() == pool && (earliest == null || usefulFrom[order.delivery()].isBefore(earliest))) {
                earliest = usefulFrom[order.delivery()];
            }
        }
        return earliest;
    }

    private long arrived(int pool, long[] packs, LocalDate[] usefulFrom, LocalDate date) {
        long bytes = 0;
        for (int i = 0; i < packs.length; i++) {
            Order order = orders.get(i);
            if (order.pool() == pool && packs[i] > 0 && !usefulFrom[order.delivery()].isAfter(date)) {
                bytes = Math.addExact(bytes, Math.multiplyExact(packs[i], packBytes(order)));
            }
        }
        return bytes;
    }
}
