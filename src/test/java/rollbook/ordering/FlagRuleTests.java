package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.ordering.Flag.State;

class FlagRuleTests {
    private static final LocalDate DAY_0 = LocalDate.of(2026, 6, 1);
    private static final double UP = FlagRule.UP;
    private static final double DOWN = FlagRule.DOWN;

    private static FlagRule.Sighting sighting(int day, double timesAllowed) {
        return new FlagRule.Sighting(DAY_0.plusDays(day), timesAllowed);
    }

    private static @Nullable Flag after(@Nullable Flag flag, int firstDay, double... risks) {
        Flag result = flag;
        for (int i = 0; i < risks.length; i++) {
            result = FlagRule.after(result, sighting(firstDay + i, risks[i]));
        }
        return result;
    }

    @Test
    void aFlagGoesUpWhenTheRiskIsMoreThanIsPutUpWith() {
        assertThat(after(null, 0, 0, UP)).isNull();
        assertThat(after(null, 0, 0, UP + 0.001)).isEqualTo(new Flag(State.OPEN, DAY_0.plusDays(1), null, null));
    }

    @Test
    void aFlagGoesDownOnceTheRiskWasLowOnFiveDates() {
        assertThat(after(null, 0, 4, 0, 0, 0, 0).state()).isEqualTo(State.OPEN);
        assertThat(after(null, 0, 4, 0, 0, 0, 0, 0).state()).isEqualTo(State.CLOSED_BY_FORECAST);
    }

    @Test
    void manyForecastsOfOneDateAreOneDate() {
        Flag flag = after(null, 0, 4);
        for (int i = 0; i < 10; i++) {
            flag = FlagRule.after(flag, sighting(1, 0));
        }
        assertThat(flag.state()).isEqualTo(State.OPEN);
    }

    @Test
    void whatIsNeitherHighNorLowChangesNothing() {
        double between = (UP + DOWN) / 2;

        assertThat(after(null, 0, between, between, between)).isNull();
        assertThat(after(null, 0, 4, between, between, between, between).state())
                .isEqualTo(State.OPEN);
        assertThat(after(null, 0, 4, 0, 0, 0, 0, between, 0, 0, 0, 0).state()).isEqualTo(State.OPEN);
    }

    @Test
    void anAcknowledgedFlagStaysSoUntilForecastsNoLongerSeeANeed() {
        Flag flag = after(null, 0, 4).acknowledged();

        assertThat(after(flag, 1, 3, 5).state()).isEqualTo(State.ACKNOWLEDGED);
        assertThat(after(flag, 1, 0, 0, 0, 0, 0).state()).isEqualTo(State.CLOSED_BY_FORECAST);
    }

    @Test
    void aSnoozedFlagIsOpenAgainOnItsDate() {
        Flag flag = after(null, 0, 4).snoozedUntil(DAY_0.plusDays(3));

        assertThat(after(flag, 1, 3, 5).state()).isEqualTo(State.SNOOZED);
        assertThat(after(flag, 3, 5)).isEqualTo(new Flag(State.OPEN, DAY_0, null, null));
        assertThat(flag.reopened().state()).isEqualTo(State.OPEN);
    }

    @Test
    void aFlagThatAnOrderClosedGoesUpAnewWhenMoreIsNeeded() {
        Flag flag = after(null, 0, 4).ordered();

        assertThat(flag.state()).isEqualTo(State.CLOSED_BY_ORDER);
        assertThat(after(flag, 1, 0.01)).isEqualTo(flag);
        assertThat(after(flag, 1, 0.01, 4)).isEqualTo(new Flag(State.OPEN, DAY_0.plusDays(2), null, null));
        assertThatThrownBy(flag::acknowledged).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(flag::ordered).isInstanceOf(IllegalStateException.class);
    }

    /** Forecasts that move a little around any figure: a flag goes up once at most, and then stays. */
    @Test
    void aSmallChangeOfTheForecastMovesNoFlag() {
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double middle = random.nextDouble() * 2;
            double swing = (UP - DOWN) / 2;
            Flag flag = null;
            int moves = 0;
            for (int day = 0; day < 60; day++) {
                double risk = Math.max(0, middle + (2 * random.nextDouble() - 1) * swing);
                Flag next = FlagRule.after(flag, sighting(day, risk));
                moves += isUp(flag) != isUp(next) ? 1 : 0;
                flag = next;
            }
            assertThat(moves).as("seed %d", seed).isLessThanOrEqualTo(1);
        }
    }

    /** Whatever forecasts say: it goes up only on high risk, and down only after low risk on five dates in a row. */
    @Test
    void noFlagMovesWithoutReason() {
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Flag flag = null;
            int low = 0;
            for (int day = 0; day < 100; day++) {
                double risk = random.nextInt(6) == 0 ? random.nextDouble() * 2 : random.nextDouble() * DOWN;
                low = risk < DOWN ? low + 1 : 0;
                Flag next = FlagRule.after(flag, sighting(day, risk));
                if (!isUp(flag) && isUp(next)) {
                    assertThat(risk).as("seed %d, day %d", seed, day).isGreaterThan(UP);
                }
                if (isUp(flag) && !isUp(next)) {
                    assertThat(low).as("seed %d, day %d", seed, day).isGreaterThanOrEqualTo(FlagRule.CALM_DATES);
                }
                flag = next;
            }
        }
    }

    private static boolean isUp(@Nullable Flag flag) {
        return flag != null && !flag.state().isClosed();
    }
}
