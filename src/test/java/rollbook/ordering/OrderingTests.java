package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rollbook.ordering.Pools.GB;
import static rollbook.ordering.Pools.POOL;
import static rollbook.ordering.Pools.TB;
import static rollbook.ordering.Pools.day;
import static rollbook.ordering.Pools.eveningOf;
import static rollbook.ordering.Pools.offer;
import static rollbook.ordering.Pools.paths;
import static rollbook.ordering.Pools.supplier;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.burndown.DayRef;
import rollbook.burndown.DayToCome;
import rollbook.burndown.Kept;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.burndown.PoolPaths;
import rollbook.burndown.Show;
import rollbook.burndown.Simulation;
import rollbook.learning.Habits;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.learning.ShotDay;
import rollbook.learning.Streams;
import rollbook.quantity.Share;

class OrderingTests {
    private static final int REPLICATES = 40_000;
    private static final long SEED = 7;

    // Five wrapped days of 4 to 6 TB taught the ratio, twelve days of 5 TB are to come and 32 TB are left. An order
    // that
    // takes 2, 3 or 4 days with chances of 0.5, 0.3 and 0.2 leaves these risks if it is placed at the close of day 0, 1
    // …
    // (mixture of chances computed by Fourier transform and quadrature); with 5 % put up with, day 1 is the latest.
    @ParameterizedTest
    @CsvSource({"0, 0.003863", "1, 0.032993", "2, 0.160561", "3, 0.417014", "4, 0.748725"})
    void theRiskOfWaitingIsThatComputedOtherwise(int orderedOn, double risk) {
        LeadTime leadTime = LeadTime.of(new TreeMap<>(Map.of(2, 0.5, 3, 0.3, 4, 0.2)));
        OrderAdvice advice = adviceAfterFiveDays(leadTime);

        assertThat(advice.waiting().get(orderedOn).orderOn()).isEqualTo(day(orderedOn));
        assertThat(advice.waiting().get(orderedOn).risk()).isEqualTo(risk, within(fourStandardErrors(risk) + 1e-5));
        assertThat(latestWithFivePercent(advice)).isEqualTo(day(1));
    }

    // The same with a lead time that is certain: by the close of day 3, 2, 1 and 0; with five days it is late already.
    @ParameterizedTest
    @CsvSource({"1, 3", "2, 2", "3, 1", "4, 0", "5,"})
    void theLatestDayIsTheLastThatKeepsTheRisk(int leadDays, @Nullable Integer latest) {
        assertThat(latestWithFivePercent(adviceAfterFiveDays(LeadTime.certain(leadDays))))
                .isEqualTo(latest == null ? null : day(latest));
    }

    private static @Nullable LocalDate latestWithFivePercent(OrderAdvice advice) {
        return advice.waiting().stream()
                .filter(waiting -> waiting.risk() <= 0.05)
                .map(OrderAdvice.Waiting::orderOn)
                .max(LocalDate::compareTo)
                .orElse(null);
    }

    // With three days of lead time the chances of having run out by the day of arrival, 3, 4 and 5, are 0.001708,
    // 0.016249
    // and 0.136321 (numerical integration). The order is needed on nearly every course, so a fifth of 5 % may be taken
    // by
    // waiting: day 0. With five days it is late already.
    @Test
    void whatIsNeededForCertainIsHardlyWaitedFor() {
        OrderAdvice advice = adviceAfterFiveDays(LeadTime.certain(3));

        assertThat(advice.allowedWhileWaiting()).isEqualTo(0.2 * 0.05, within(0.0005));
        assertThat(advice.order().orderBy()).isEqualTo(day(0));
        assertThat(advice.order().late()).isFalse();
        assertThat(adviceAfterFiveDays(LeadTime.certain(2)).order().orderBy()).isEqualTo(day(1));
        OrderAdvice late = adviceAfterFiveDays(LeadTime.certain(5));
        assertThat(late.order().orderBy()).isEqualTo(day(0));
        assertThat(late.order().late()).isTrue();
    }

    // Of a hundred courses so many lack 2 TB on the last day; of 5 % a fifth, and of the other 4 % the part of the
    // courses
    // that lack nothing (worked by hand).
    @ParameterizedTest
    @CsvSource({"100, 0.01", "50, 0.03", "10, 0.046", "0, 0.05"})
    void theLessLikelyAnOrderIsNeededTheMoreRiskIsTakenByWaiting(int lacking, double allowed) {
        long[][] roomGb = new long[9][100];
        for (long[] date : roomGb) {
            Arrays.fill(date, 1000);
        }
        Arrays.fill(roomGb[8], 0, lacking, -2000);
        OrderAdvice advice = advice(paths(POOL, roomGb), LeadTime.certain(2), 3, 1);

        assertThat(advice.allowedWhileWaiting()).isEqualTo(allowed, within(1e-12));
        assertThat(advice.order() == null).isEqualTo(lacking == 0);
    }

    // Days of 5 and 1.5 TB (normal), a lead time of 4 to 9 days: with 43.92 TB left the risk is 5 %, with 49.28 TB 1 %
    // (exact mixture of normal distributions). The textbook's formula asks for 42.81 and 47.90 TB, which is too little.
    @ParameterizedTest
    @CsvSource({"43.9200005, 42.8062096, 0.05", "49.2818147, 47.9049071, 0.01"})
    void theReorderPointIsExactWhereTheTextbooksIsTooLow(double exactTb, double textbookTb, double risk) {
        LeadTime leadTime = LeadTime.of(new TreeMap<>(Map.of(4, 0.1, 5, 0.25, 6, 0.3, 7, 0.2, 8, 0.1, 9, 0.05)));

        assertThat(riskOfOrderingNow(exactTb, leadTime)).isEqualTo(risk, within(fourStandardErrors(risk)));
        assertThat(riskOfOrderingNow(textbookTb, leadTime)).isGreaterThan(risk + fourStandardErrors(risk));
    }

    private static double riskOfOrderingNow(double roomTb, LeadTime leadTime) {
        NormalDistribution perDay = NormalDistribution.of(5, 1.5);
        long[][] roomGb = new long[12][REPLICATES];
        double[] written = new double[REPLICATES];
        for (int date = 0; date < roomGb.length; date++) {
            double[] chances = new Streams(SEED).uniforms(REPLICATES, "day", date);
            for (int i = 0; i < REPLICATES; i++) {
                written[i] += date == 0 ? 0 : perDay.inverseCumulativeProbability(chances[i]);
                roomGb[date][i] = Math.round((roomTb - written[i]) * 1000);
            }
        }
        return advice(paths(POOL, roomGb), leadTime, 8, 1).waiting().get(0).risk();
    }

    // All courses alike: 10 TB left, 2 TB a day to day 12. Nothing lacks up to day 5, 14 TB at the end; with two days
    // of
    // lead time order by day 3. All 14 TB are needed for certain: in packs of 2 items of 3 TB that is 3 packs, 6 items,
    // 18 TB, at 100.00 each and 40.00 for the delivery 640.00.
    @Test
    void whatIsCertainIsOrderedOnTheLastDayAndAtOnce() {
        OrderAdvice advice = advice(certain(10_000, 2000, 12), LeadTime.certain(2), 3, 2);

        assertThat(advice.riskWithout()).isEqualTo(1);
        assertThat(advice.likelyRunOutOn()).isEqualTo(day(6));
        assertThat(advice.order().orderBy()).isEqualTo(day(3));
        assertThat(advice.order().orderBefore()).isEqualTo("2026-06-04T22:00:00Z");
        assertThat(advice.order().likelyArrivalOn()).isEqualTo(day(5));
        assertThat(advice.order().packs()).isEqualTo(3);
        assertThat(advice.order().items()).isEqualTo(6);
        assertThat(advice.order().capacityBytes()).isEqualTo(18 * TB);
        assertThat(advice.cost()).isEqualTo(new BigDecimal("640.00"));
        assertThat(advice.riskWith()).isZero();
        assertThat(advice.later()).isEqualTo(new OrderAdvice.PackBand(0, 0));
        assertThat(advice.waiting().stream().map(OrderAdvice.Waiting::risk)).startsWith(0.0, 0.0, 0.0, 0.0, 1.0);
    }

    @Test
    void nothingIsOrderedWhereThePoolLasts() {
        OrderAdvice advice = advice(certain(24_000, 2000, 12), LeadTime.certain(2), 3, 1);

        assertThat(advice.order()).isNull();
        assertThat(advice.riskWith()).isZero();
        assertThat(advice.cost()).isEqualTo(new BigDecimal("0.00"));
    }

    @Test
    void aByteLackingIsEnoughForAPack() {
        long[][] room = {{1}, {-1}};
        PoolPaths paths = new PoolPaths(Pools.pool(POOL), Share.WHOLE, List.of(day(0), day(1)), 1, room);

        assertThat(advice(paths, LeadTime.certain(0), 3, 1).order().packs()).isEqualTo(1);
    }

    // The room is gone on day 1, an order that is on its way brings enough on day 3: one that is placed now comes on
    // day 2
    // at the earliest and mends what lacks on day 3; with another day of lead time it mends nothing.
    @Test
    void whatAnOrderCanNoLongerMendIsNoReasonToOrder() {
        long[][] room = {{1000}, {-1000}, {-3000}, {-5000}, {10_000}, {8000}};

        assertThat(advice(paths(POOL, room), LeadTime.certain(2), 3, 1).order()).isNotNull();
        OrderAdvice tooLate = advice(paths(POOL, room), LeadTime.certain(3), 3, 1);
        assertThat(tooLate.order()).isNull();
        assertThat(tooLate.riskWithout()).isEqualTo(1);
    }

    // Half of the courses need 20 TB, half 60 TB, from day 5 on; 10 TB are left. An order has to last until one that is
    // placed when it comes can come; the rest is ordered when more is known.
    @Test
    void anOrderDoesNotHaveToLastToTheEnd() {
        long[][] roomGb = new long[41][2];
        for (int date = 0; date < roomGb.length; date++) {
            roomGb[date][0] = 10_000 - date * 500L;
            roomGb[date][1] = 10_000 - date * 1500L;
        }
        OrderAdvice advice = advice(paths(POOL, roomGb), LeadTime.certain(2), 1, 1);

        assertThat(advice.toTheEnd()).isEqualTo(new OrderAdvice.PackBand(10, 50));
        assertThat(advice.order().packs()).isLessThan(20);
        assertThat(advice.order().riskOfTooLittle()).isZero();
        assertThat(advice.order().followingOrderChance()).isEqualTo(0.5);
        assertThat(advice.later().p90()).isEqualTo(50 - advice.order().packs());
    }

    private static PoolPaths certain(long roomGb, long perDayGb, int days) {
        long[][] room = new long[days + 1][1];
        for (int date = 0; date <= days; date++) {
            room[date][0] = roomGb - date * perDayGb;
        }
        return paths(POOL, room);
    }

    private static OrderAdvice advice(PoolPaths paths, LeadTime leadTime, long itemTb, int packSize) {
        return Ordering.advise(
                paths,
                offer(POOL, itemTb, packSize, 10_000, null, supplier("shop", leadTime, 4000)),
                ServiceLevel.USUAL,
                eveningOf(day(0)));
    }

    /** Recorded / planned of five days, none of which counts less for its age. */
    private static OrderAdvice adviceAfterFiveDays(LeadTime leadTime) {
        double[] plannedTb = {4, 5, 4, 6, 5};
        double[] recordedTb = {3.6, 6, 5, 4.8, 7};
        List<ShotDay> shot = new ArrayList<>();
        for (int i = 0; i < plannedTb.length; i++) {
            shot.add(new ShotDay(
                    "main",
                    i - 4,
                    day(i - 4),
                    Math.round(plannedTb[i] * 1000) * GB,
                    Math.round(recordedTb[i] * 1000) * GB,
                    null));
        }
        Learned learned = Learning.from(shot, new Habits(Habits.USUAL.prior(), Double.POSITIVE_INFINITY, false));
        List<DayToCome> days = new ArrayList<>();
        for (int number = 1; number <= 12; number++) {
            days.add(new DayToCome(new DayRef("main", number, day(number)), day(number), 5 * TB, 0));
        }
        Pool pool = new Pool(
                POOL,
                "SHUTTLE",
                false,
                0,
                null,
                Kept.WHOLE,
                List.of(new Pool.Item("DRIVE-01", 32 * TB, 0, true, null, null)),
                List.of(),
                List.of(),
                0);
        PoolPaths paths = Simulation.run(
                        new Show(day(0), days, day(12)), List.of(pool), learned, Share.WHOLE, SEED, REPLICATES)
                .paths()
                .get(0);
        return Ordering.advise(
                paths,
                offer(POOL, 8, 1, 18_000, null, supplier("shop", leadTime, 4000)),
                ServiceLevel.USUAL,
                eveningOf(day(0)));
    }

    private static double fourStandardErrors(double chance) {
        return 4 * Math.sqrt(chance * (1 - chance) / REPLICATES);
    }
}
