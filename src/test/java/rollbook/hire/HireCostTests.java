package rollbook.hire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.hire.HireTerms.Period;

/** All amounts are worked by hand, in cents; how weeks are counted is common practice, without a source. */
class HireCostTests {
    /** A Monday. */
    private static final LocalDate START = LocalDate.of(2026, 3, 2);

    private static LocalDate march(int day) {
        return LocalDate.of(2026, 3, day);
    }

    private static HireTerms terms(int minimumWeeks, @Nullable Long lateDay, Period... periods) {
        return new HireTerms(START, minimumWeeks, lateDay, List.of(periods));
    }

    /** Two weeks at 100.00. */
    private static final HireTerms TWO_WEEKS = terms(1, null, new Period(march(16), 10_000));

    @Test
    void fromAMondayToTheMondayAfterNextAreTwoWeeks() {
        assertThat(HireCost.untilDue(TWO_WEEKS)).isEqualTo(new HireCost(2, 20_000, 0, 0));
    }

    @Test
    void aWeekBegunCostsAWholeOne() {
        assertThat(HireCost.ifReturnedOn(march(9), TWO_WEEKS).hireMinorUnits()).isEqualTo(10_000);
        assertThat(HireCost.ifReturnedOn(march(10), TWO_WEEKS).hireMinorUnits()).isEqualTo(20_000);
    }

    @Test
    void theFirstWeekCostsOnTheVeryDayAndNothingBefore() {
        assertThat(HireCost.ifReturnedOn(START, TWO_WEEKS)).isEqualTo(new HireCost(1, 10_000, 0, 0));
        assertThat(HireCost.ifReturnedOn(START.minusDays(1), TWO_WEEKS)).isEqualTo(HireCost.NONE);
    }

    @Test
    void theMinimumIsPaidForHoweverEarlyItGoesBack() {
        HireTerms three = terms(3, null, new Period(march(30), 10_000));
        assertThat(HireCost.ifReturnedOn(march(7), three)).isEqualTo(new HireCost(3, 30_000, 0, 0));
        assertThat(HireCost.untilDue(three)).isEqualTo(new HireCost(4, 40_000, 0, 0));
    }

    @Test
    void eachWeekBegunAfterTheDueDateCostsTheWeeklyRate() {
        assertThat(HireCost.ifReturnedOn(march(17), TWO_WEEKS)).isEqualTo(new HireCost(2, 20_000, 1, 10_000));
        assertThat(HireCost.ifReturnedOn(march(23), TWO_WEEKS)).isEqualTo(new HireCost(2, 20_000, 7, 10_000));
        assertThat(HireCost.ifReturnedOn(march(24), TWO_WEEKS)).isEqualTo(new HireCost(2, 20_000, 8, 20_000));
        assertThat(HireCost.ifReturnedOn(march(24), TWO_WEEKS).totalMinorUnits())
                .isEqualTo(40_000);
        assertThat(HireCost.firstLateWeekMinorUnits(TWO_WEEKS)).isEqualTo(10_000);
    }

    @Test
    void aLateWeekCountsFromTheDueDateAndNotFromTheStart() {
        // Nine days are two weeks begun; three days late begin a third, though a second week had four days left.
        HireTerms nineDays = terms(1, null, new Period(march(11), 10_000));
        assertThat(HireCost.ifReturnedOn(march(14), nineDays)).isEqualTo(new HireCost(2, 20_000, 3, 10_000));
    }

    @Test
    void theAgreementsOwnLateRateCostsEachDay() {
        HireTerms daily = terms(1, 2_500L, new Period(march(16), 10_000));
        assertThat(HireCost.ifReturnedOn(march(19), daily)).isEqualTo(new HireCost(2, 20_000, 3, 7_500));
        assertThat(HireCost.firstLateWeekMinorUnits(daily)).isEqualTo(17_500);
        HireTerms free = terms(1, 0L, new Period(march(16), 10_000));
        assertThat(HireCost.ifReturnedOn(march(19), free).lateMinorUnits()).isZero();
    }

    @Test
    void theMinimumPaysForLateWeeksToo() {
        // Two weeks are agreed and four paid for: the first two late weeks cost nothing more.
        HireTerms four = terms(4, null, new Period(march(16), 10_000));
        assertThat(HireCost.ifReturnedOn(march(25), four)).isEqualTo(new HireCost(4, 40_000, 9, 0));
        assertThat(HireCost.ifReturnedOn(march(31), four)).isEqualTo(new HireCost(4, 40_000, 15, 10_000));
        assertThat(HireCost.firstLateWeekMinorUnits(four)).isZero();
    }

    @Test
    void aNewRateHoldsForWeeksThatBeginAfterTheFormerDueDate() {
        // Weeks begin on 2, 9, 16 and 23 March; the first two before the 11th.
        HireTerms extended = terms(1, null, new Period(march(11), 10_000), new Period(march(25), 8_000));
        assertThat(HireCost.untilDue(extended)).isEqualTo(new HireCost(4, 36_000, 0, 0));
        assertThat(HireCost.ifReturnedOn(march(16), extended)).isEqualTo(new HireCost(2, 20_000, 0, 0));
        assertThat(HireCost.ifReturnedOn(march(26), extended)).isEqualTo(new HireCost(4, 36_000, 1, 8_000));
    }

    @Test
    void aWeekThatBeginsOnTheFormerDueDateCostsTheNewRate() {
        HireTerms extended = terms(1, null, new Period(march(9), 10_000), new Period(march(16), 7_000));
        assertThat(HireCost.untilDue(extended).hireMinorUnits()).isEqualTo(17_000);
    }

    @Test
    void whatIsDueOnTheDayOnWhichItStartsHasItsFirstWeek() {
        HireTerms sameDay = terms(1, null, new Period(START, 10_000));
        assertThat(HireCost.untilDue(sameDay)).isEqualTo(new HireCost(1, 10_000, 0, 0));
        assertThat(HireCost.ifReturnedOn(march(9), sameDay).totalMinorUnits()).isEqualTo(10_000);
        assertThat(HireCost.ifReturnedOn(march(10), sameDay).totalMinorUnits()).isEqualTo(20_000);
    }

    @Test
    void whatDoesNotFitIsRefusedAndNotRounded() {
        HireTerms dear = terms(1, null, new Period(march(16), Long.MAX_VALUE));
        assertThatThrownBy(() -> HireCost.untilDue(dear)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> terms(0, null, new Period(march(16), 1))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> terms(1, null, new Period(march(1), 1))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> terms(1, null, new Period(march(16), 1), new Period(march(9), 1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Drawn terms; a failure prints the seed. */
    @Test
    void keepingAnItemLongerNeverCostsLess() {
        long seed = new Random().nextLong();
        Random random = new Random(seed);
        for (int drawn = 0; drawn < 500; drawn++) {
            List<Period> periods = new ArrayList<>();
            LocalDate due = START;
            for (int period = random.nextInt(3); period >= 0; period--) {
                due = due.plusDays(random.nextInt(20) + 1L);
                periods.add(new Period(due, random.nextInt(10_000)));
            }
            Long lateDay = random.nextBoolean() ? null : (long) random.nextInt(2_000);
            HireTerms terms = new HireTerms(START, random.nextInt(5) + 1, lateDay, periods);
            long before = 0;
            for (int day = -2; day < 90; day++) {
                long cost = HireCost.ifReturnedOn(START.plusDays(day), terms).totalMinorUnits();
                assertThat(cost).as("seed %d, %s, day %d", seed, terms, day).isGreaterThanOrEqualTo(before);
                before = cost;
            }
        }
    }
}
