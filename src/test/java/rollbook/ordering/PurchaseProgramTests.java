package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.ordering.PurchaseProgram.Choice;
import rollbook.ordering.PurchaseProgram.Need;

class PurchaseProgramTests {
    private static final long GB = 1_000_000_000L;
    private static final LocalDate DAY_0 = LocalDate.of(2026, 6, 1);

    // Four periods need 90, 120, 80 and 70; an order costs 500, a unit kept over a period 2 (Snyder and Shen,
    // Fundamentals
    // of Supply Chain Theory 2e, quoted in the tests of stockpyl): order 210 in the first and 150 in the third, for
    // 1380.
    // Here a unit that is ordered in period t is paid for with its keeping in periods t to 4; what keeping the needed
    // ones
    // would cost, 2 * (90 + 210 + 290 + 360) = 1900, is not to be paid.
    @Test
    void findsThePublishedLotSizes() {
        List<Choice> choices = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        long[] needed = {90, 210, 290, 360};
        for (int period = 1; period <= 4; period++) {
            choices.add(new Choice(period - 1, 0, DAY_0.plusDays(period), GB, 2 * (5 - period), 1000));
            needs.add(new Need(0, DAY_0.plusDays(period), needed[period - 1] * GB));
        }
        long[] deliveries = {500, 500, 500, 500};

        long[] packs = PurchaseProgram.solve(choices, deliveries, needs);

        assertThat(packs).containsExactly(210, 0, 150, 0);
        assertThat(PurchaseProgram.costMinorUnits(choices, deliveries, packs) - 1900)
                .isEqualTo(1380);
    }

    // Ten days need so many TB in all by the close of each; 20 TB are there. Packs of 8 TB at 180 come after two days
    // in a
    // delivery of 40, packs of 16 TB at 330 after five days in one of 25 (computed by two other programs): 1085, two
    // packs
    // of each.
    @Test
    void mixesAFastAndACheapSupplier() {
        double[] needTb = {7.5, 14.2, 20.7, 27.0, 33.2, 39.3, 45.4, 51.5, 57.6, 63.6};
        List<Choice> choices = new ArrayList<>();
        for (int day = 0; day < needTb.length; day++) {
            choices.add(new Choice(day, 0, DAY_0.plusDays(day + 2), 8000 * GB, 180, 10));
        }
        for (int day = 0; day < needTb.length; day++) {
            choices.add(new Choice(10 + day, 0, DAY_0.plusDays(day + 5), 16_000 * GB, 330, 10));
        }
        long[] deliveries = new long[20];
        List<Need> needs = new ArrayList<>();
        for (int day = 1; day <= needTb.length; day++) {
            deliveries[day - 1] = 40;
            deliveries[day + 9] = 25;
            needs.add(new Need(0, DAY_0.plusDays(day), Math.round((needTb[day - 1] - 20) * 1000) * GB));
        }

        long[] packs = PurchaseProgram.solve(choices, deliveries, needs);

        assertThat(PurchaseProgram.costMinorUnits(choices, deliveries, packs)).isEqualTo(1085);
        assertThat(sum(packs, 0, 10)).isEqualTo(2);
        assertThat(sum(packs, 10, 20)).isEqualTo(2);
    }

    @Test
    void meetsANeedToTheByte() {
        Choice choice = new Choice(0, 0, DAY_0, 7_600 * GB, 100, 10);
        List<Choice> choices = List.of(choice);

        assertThat(PurchaseProgram.solve(choices, new long[] {0}, List.of(new Need(0, DAY_0, 2 * 7_600 * GB))))
                .containsExactly(2);
        assertThat(PurchaseProgram.solve(choices, new long[] {0}, List.of(new Need(0, DAY_0, 2 * 7_600 * GB + 1))))
                .containsExactly(3);
    }

    @Test
    void saysWhenNothingIsEnough() {
        Choice tooLate = new Choice(0, 0, DAY_0.plusDays(3), GB, 100, 10);
        Choice tooFew = new Choice(0, 0, DAY_0, GB, 100, 10);

        assertThat(PurchaseProgram.solve(List.of(tooLate), new long[] {0}, List.of(new Need(0, DAY_0, GB))))
                .isNull();
        assertThat(PurchaseProgram.solve(List.of(tooFew), new long[] {0}, List.of(new Need(0, DAY_0, 11 * GB))))
                .isNull();
    }

    @Test
    void poolsShareADelivery() {
        List<Choice> choices = List.of(
                new Choice(0, 0, DAY_0, GB, 100, 10), new Choice(1, 0, DAY_0, GB, 90, 10),
                new Choice(0, 1, DAY_0, GB, 100, 10), new Choice(2, 1, DAY_0, GB, 90, 10));
        List<Need> needs = List.of(new Need(0, DAY_0, GB), new Need(1, DAY_0, GB));

        assertThat(PurchaseProgram.solve(choices, new long[] {30, 30, 30}, needs))
                .containsExactly(1, 0, 1, 0);
    }

    /** Against trying all numbers of packs. */
    @Test
    void isAsCheapAsTheCheapestOfAllPlans() {
        for (long seed = 1; seed <= 40; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<Choice> choices = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                choices.add(new Choice(
                        random.nextInt(3),
                        random.nextInt(2),
                        DAY_0.plusDays(random.nextInt(3)),
                        random.nextLong(1, 9) * GB,
                        random.nextLong(1, 500),
                        4));
            }
            long[] deliveries = {random.nextLong(200), random.nextLong(200), random.nextLong(200)};
            List<Need> needs = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                needs.add(new Need(random.nextInt(2), DAY_0.plusDays(random.nextInt(4)), random.nextLong(12) * GB));
            }

            long[] packs = PurchaseProgram.solve(choices, deliveries, needs);

            assertThat(packs == null ? -1 : PurchaseProgram.costMinorUnits(choices, deliveries, packs))
                    .as("seed %d", seed)
                    .isEqualTo(cheapest(choices, deliveries, needs));
        }
    }

    private static long cheapest(List<Choice> choices, long[] deliveries, List<Need> needs) {
        long cheapest = -1;
        for (int code = 0; code < 625; code++) {
            long[] packs = {code % 5, code / 5 % 5, code / 25 % 5, code / 125};
            boolean enough = needs.stream().allMatch(need -> {
                long bytes = 0;
                for (int i = 0; i < packs.length; i++) {
                    Choice choice = choices.get(i);
                    if (choice.pool() == need.pool() && !choice.usefulFrom().isAfter(need.date())) {
                        bytes += packs[i] * choice.packBytes();
                    }
                }
                return bytes >= need.bytes();
            });
            long cost = PurchaseProgram.costMinorUnits(choices, deliveries, packs);
            if (enough && (cheapest < 0 || cost < cheapest)) {
                cheapest = cost;
            }
        }
        return cheapest;
    }

    private static long sum(long[] packs, int from, int to) {
        long sum = 0;
        for (int i = from; i < to; i++) {
            sum += packs[i];
        }
        return sum;
    }
}
