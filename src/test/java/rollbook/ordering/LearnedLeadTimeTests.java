package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rollbook.ordering.Pools.POOL;
import static rollbook.ordering.Pools.day;
import static rollbook.ordering.Pools.eveningOf;
import static rollbook.ordering.Pools.offer;
import static rollbook.ordering.Pools.paths;
import static rollbook.ordering.Pools.supplier;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.burndown.LeadTime;

/** All figures worked by hand from the formula, with the weight of five deliveries for what is stated. */
class LearnedLeadTimeTests {
    private static final double ROUNDING = 1e-12;

    private static LearnedLeadTime learned(LeadTime stated, Integer... deliveredAfter) {
        return new LearnedLeadTime(stated, List.of(deliveredAfter));
    }

    @Test
    void withoutADeliveryItIsAsStated() {
        LeadTime stated = LeadTime.usually(3, 5);

        assertThat(learned(stated).leadTime()).isEqualTo(stated);
    }

    // (5 × 1 + 0) / (5 + 1) = 5/6 for the stated two days, (5 × 0 + 1) / 6 = 1/6 for the four it took.
    @Test
    void aDeliveryCountsAsOneOfSix() {
        LearnedLeadTime learned = learned(LeadTime.certain(2), 4);

        assertThat(learned.leadTime().chances()).containsOnlyKeys(2, 4);
        assertThat(learned.leadTime().chances().get(2)).isEqualTo(5.0 / 6, within(ROUNDING));
        assertThat(learned.leadTime().chances().get(4)).isEqualTo(1.0 / 6, within(ROUNDING));
        assertThat(learned.usualWorkingDays()).isEqualTo(2);
        assertThat(learned.slowWorkingDays()).isEqualTo(4);
    }

    // Stated 3 and 5: half within 3, nine tenths within 5. Deliveries after 4, 4, 5, 6 and 9 days: within 3 remain
    // (5 × 0.5 + 0) / 10 = 0.25, within 5 (5 × 0.9 + 3) / 10 = 0.75, within 6 at least 0.85 and within 9 (nearly) one.
    @Test
    void fiveDeliveriesWeighAsMuchAsWhatIsStated() {
        LeadTime leadTime = learned(LeadTime.usually(3, 5), 4, 4, 5, 6, 9).leadTime();

        assertThat(within3And5(leadTime)).containsExactly(new double[] {0.25, 0.75}, within(ROUNDING));
        assertThat(leadTime.days(0.25)).isEqualTo(3);
        assertThat(leadTime.days(0.75)).isEqualTo(5);
    }

    private static double[] within3And5(LeadTime leadTime) {
        return new double[] {
            leadTime.chances().headMap(4).values().stream()
                    .mapToDouble(chance -> chance)
                    .sum(),
            leadTime.chances().headMap(6).values().stream()
                    .mapToDouble(chance -> chance)
                    .sum()
        };
    }

    // 5 / (5 + 45) = 0.1 is left of what was stated.
    @Test
    void manyDeliveriesLeaveLittleOfWhatIsStated() {
        LearnedLeadTime learned = new LearnedLeadTime(LeadTime.certain(2), Collections.nCopies(45, 7));

        assertThat(learned.leadTime().chances().get(2)).isEqualTo(0.1, within(ROUNDING));
        assertThat(learned.usualWorkingDays()).isEqualTo(7);
        assertThat(learned.slowWorkingDays()).isEqualTo(7);
    }

    @Test
    void theChancesAreWholeWhateverCame() {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 1000; i++) {
            List<Integer> deliveredAfter =
                    random.ints(random.nextInt(40), 0, 30).boxed().toList();
            LearnedLeadTime learned = new LearnedLeadTime(Pools.drawnLeadTime(random), deliveredAfter);

            assertThat(learned.leadTime().chances().values().stream()
                            .mapToDouble(chance -> chance)
                            .sum())
                    .as("seed 5, case %d, deliveries after %s", i, deliveredAfter)
                    .isEqualTo(1, within(1e-9));
            assertThat(learned.slowWorkingDays()).isGreaterThanOrEqualTo(learned.usualWorkingDays());
        }
    }

    // All courses alike: 10 TB left, 2 TB a day, so day 6 is the first that lacks; 5 % may be risked at most. An order
    // has
    // to come by day 5. With the stated two days: order by day 3. With a delivery after 3 days the chance of three days
    // is
    // 1/6, more than 5 %: order by day 2. With one after 4 days: by day 1. A hundred deliveries after one day leave
    // 5/105 = 4.8 % for two days, and of 5 % no more than 5/12 may be used up by day 5, so still by day 3; with a
    // thousand
    // 5/1005 = 0.5 % is left, which may be risked: by day 4.
    @ParameterizedTest
    @CsvSource({"0, 1, 3", "1, 2, 3", "1, 3, 2", "1, 4, 1", "100, 1, 3", "1000, 1, 4"})
    void whatCameEarlierChangesTheDateToOrderBy(int deliveries, int afterDays, int orderBy) {
        LearnedLeadTime learned = new LearnedLeadTime(LeadTime.certain(2), Collections.nCopies(deliveries, afterDays));

        assertThat(orderBy(learned.leadTime())).isEqualTo(day(orderBy));
    }

    private static LocalDate orderBy(LeadTime leadTime) {
        long[][] roomGb = new long[13][1];
        for (int date = 0; date < roomGb.length; date++) {
            roomGb[date][0] = 10_000 - date * 2000;
        }
        OrderAdvice advice = Ordering.advise(
                paths(POOL, roomGb),
                offer(POOL, 3, 2, 10_000, null, supplier("shop", leadTime, 4000)),
                ServiceLevel.USUAL,
                eveningOf(day(0)));
        return advice.order().orderBy();
    }
}
