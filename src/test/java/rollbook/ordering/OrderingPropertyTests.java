package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.ordering.Pools.DAY_0;
import static rollbook.ordering.Pools.POOL;
import static rollbook.ordering.Pools.drawnLeadTime;
import static rollbook.ordering.Pools.drawnRoomGb;
import static rollbook.ordering.Pools.eveningOf;
import static rollbook.ordering.Pools.supplier;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.burndown.PoolPaths;

/** What must hold for any pool and offer; they are drawn from seeds. */
class OrderingPropertyTests {
    private static final long SEEDS = 300;
    private static final int REPLICATES = 60;
    private static final double ROUNDING = 1e-9;

    private record Drawn(PoolPaths paths, Offer offer) {
        static Drawn of(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            PoolPaths paths = Pools.paths(POOL, drawnRoomGb(random, REPLICATES));
            return new Drawn(
                    paths,
                    Pools.offer(
                            POOL,
                            random.nextLong(1, 20),
                            random.nextInt(1, 4),
                            random.nextLong(1, 50_000),
                            null,
                            supplier("shop", drawnLeadTime(random), random.nextLong(10_000))));
        }

        OrderAdvice advice(double serviceLevel) {
            return Ordering.advise(paths, offer, new ServiceLevel(serviceLevel), eveningOf(DAY_0));
        }
    }

    @Test
    void theDrawnPoolsNeedOrdersNowLaterAndNotAtAll() {
        List<OrderAdvice> advice = java.util.stream.LongStream.rangeClosed(1, SEEDS)
                .mapToObj(seed -> Drawn.of(seed).advice(0.95))
                .toList();

        assertThat(advice).anyMatch(drawn -> drawn.order() == null);
        assertThat(advice)
                .anyMatch(drawn -> drawn.order() != null && drawn.order().late());
        assertThat(advice)
                .anyMatch(drawn ->
                        drawn.order() != null && drawn.order().orderBy().isAfter(DAY_0.plusDays(3)));
        assertThat(advice)
                .anyMatch(drawn -> drawn.order() != null && drawn.later().p50() > 0);
    }

    @Test
    void aLaterOrderNeverLowersTheRisk() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            OrderAdvice advice = Drawn.of(seed).advice(0.95);
            for (int i = 1; i < advice.waiting().size(); i++) {
                OrderAdvice.Waiting sooner = advice.waiting().get(i - 1);
                OrderAdvice.Waiting later = advice.waiting().get(i);
                assertThat(later.orderOn()).as("seed %d", seed).isAfter(sooner.orderOn());
                assertThat(later.risk()).as("seed %d", seed).isGreaterThanOrEqualTo(sooner.risk());
                assertThat(later.mendableRisk())
                        .as("seed %d", seed)
                        .isGreaterThanOrEqualTo(sooner.mendableRisk())
                        .isLessThanOrEqualTo(later.risk() + ROUNDING);
            }
        }
    }

    @Test
    void aHigherServiceLevelNeverOrdersLaterNorLessOnOneDay() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            Drawn drawn = Drawn.of(seed);
            OrderAdvice.Order before = null;
            for (double level : new double[] {0.5, 0.7, 0.8, 0.9, 0.95, 0.99, 0.999}) {
                OrderAdvice.Order order = drawn.advice(level).order();
                if (before != null) {
                    assertThat(order).as("seed %d, %s", seed, level).isNotNull();
                    assertThat(order.orderBy()).as("seed %d, %s", seed, level).isBeforeOrEqualTo(before.orderBy());
                    if (order.orderBy().equals(before.orderBy())) {
                        assertThat(order.packs()).as("seed %d, %s", seed, level).isGreaterThanOrEqualTo(before.packs());
                    }
                }
                before = order;
            }
        }
    }

    /** By another way than the advice's: the arrival is added to each course of the show, lead time by lead time. */
    @Test
    void morePacksNeverRaiseTheRiskAndTheAdvisedOnesKeepIt() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            Drawn drawn = Drawn.of(seed);
            OrderAdvice advice = drawn.advice(0.95);
            OrderAdvice.Order order = advice.order();
            if (order != null) {
                double before = 1;
                for (long packs = 0; packs <= order.packs() + 1; packs++) {
                    double risk = ranOutToTheEnd(drawn, order.orderBy(), packs);
                    assertThat(risk).as("seed %d, %d packs", seed, packs).isLessThanOrEqualTo(before + ROUNDING);
                    before = risk;
                }
                assertThat(order.riskUntilItComes()).as("seed %d", seed).isLessThanOrEqualTo(advice.riskWithout());
                if (!order.late()) {
                    assertThat(lacksBeforeFollowing(drawn, order, order.packs()))
                            .as("seed %d", seed)
                            .isLessThanOrEqualTo(0.05 + ROUNDING);
                    assertThat(riskOn(drawn, order.orderBy()))
                            .as("seed %d", seed)
                            .isLessThanOrEqualTo(allowed(drawn) + ROUNDING);
                    assertThat(riskOn(drawn, order.orderBy().plusDays(1)))
                            .as("seed %d", seed)
                            .isGreaterThan(allowed(drawn) - ROUNDING);
                }
            }
        }
    }

    @Test
    void theFlagIsUpWhenAnOrderIsDue() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            OrderAdvice advice = Drawn.of(seed).advice(0.95);
            if (advice.order() != null && advice.order().orderBy().equals(DAY_0)) {
                assertThat(FlagRule.after(null, FlagRule.Sighting.of(advice, DAY_0)))
                        .as("seed %d", seed)
                        .isNotNull();
            }
        }
    }

    /** Of 5 % a fifth, and the rest by the part of the courses that need no order of today. */
    private static double allowed(Drawn drawn) {
        int last = drawn.paths().dates().size() - 1;
        LocalDate helpsAfter = drawn.offer()
                .supplier()
                .days()
                .arrival(DAY_0, drawn.offer().supplier().leadTime().days(0.5));
        int needed = 0;
        for (int replicate = 0; replicate < REPLICATES; replicate++) {
            boolean mendable = false;
            for (int date = 0; date <= last; date++) {
                mendable |= drawn.paths().shortfallBytes(date, replicate) > 0
                        && drawn.paths().dates().get(date).isAfter(helpsAfter);
            }
            needed += mendable ? 1 : 0;
        }
        return 0.05 * (0.2 + 0.8 * (REPLICATES - needed) / REPLICATES);
    }

    /** The chance of running out before an order of that day comes, of what an order of today could still mend. */
    private static double riskOn(Drawn drawn, LocalDate orderOn) {
        LocalDate helpsAfter = drawn.offer()
                .supplier()
                .days()
                .arrival(DAY_0, drawn.offer().supplier().leadTime().days(0.5));
        double risk = 0;
        for (Map.Entry<Integer, Double> lead :
                drawn.offer().supplier().leadTime().chances().entrySet()) {
            LocalDate arrival = orderOn.plusDays(lead.getKey());
            for (int replicate = 0; replicate < REPLICATES; replicate++) {
                boolean before = false;
                boolean mendable = false;
                for (int date = 0; date < drawn.paths().dates().size(); date++) {
                    LocalDate day = drawn.paths().dates().get(date);
                    boolean lacks = drawn.paths().shortfallBytes(date, replicate) > 0;
                    before |= lacks && !day.isAfter(arrival);
                    mendable |= lacks && day.isAfter(helpsAfter);
                }
                risk += before && mendable ? lead.getValue() / REPLICATES : 0;
            }
        }
        return risk;
    }

    private static double ranOutToTheEnd(Drawn drawn, LocalDate orderOn, long packs) {
        return ranOut(
                drawn,
                orderOn,
                packs,
                drawn.paths().dates().get(drawn.paths().dates().size() - 1),
                true);
    }

    /** With the following order's lead time the longest. */
    private static double lacksBeforeFollowing(Drawn drawn, OrderAdvice.Order order, long packs) {
        double risk = 0;
        for (Map.Entry<Integer, Double> lead :
                drawn.offer().supplier().leadTime().chances().entrySet()) {
            risk += lead.getValue()
                    * ranOut(
                            drawn,
                            order.orderBy(),
                            packs,
                            order.followingOrderOn().plusDays(lead.getKey()),
                            false);
        }
        return risk;
    }

    private static double ranOut(Drawn drawn, LocalDate orderOn, long packs, LocalDate last, boolean alsoBefore) {
        double risk = 0;
        long bytes = packs * drawn.offer().packSize() * drawn.offer().itemCapacityBytes();
        LocalDate helpsAfter = drawn.offer()
                .supplier()
                .days()
                .arrival(DAY_0, drawn.offer().supplier().leadTime().days(0.5));
        for (Map.Entry<Integer, Double> lead :
                drawn.offer().supplier().leadTime().chances().entrySet()) {
            LocalDate arrival = orderOn.plusDays(lead.getKey());
            for (int replicate = 0; replicate < REPLICATES; replicate++) {
                boolean lacks = false;
                for (int date = 0; date < drawn.paths().dates().size(); date++) {
                    LocalDate day = drawn.paths().dates().get(date);
                    boolean there = day.isAfter(arrival);
                    boolean counts = !day.isAfter(last) && (alsoBefore || there && day.isAfter(helpsAfter));
                    lacks |= counts && drawn.paths().shortfallBytes(date, replicate) > (there ? bytes : 0);
                }
                risk += lacks ? lead.getValue() / REPLICATES : 0;
            }
        }
        return risk;
    }
}
