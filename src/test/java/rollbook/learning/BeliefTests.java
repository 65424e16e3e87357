package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BeliefTests {
    private static final Belief PRIOR = Habits.USUAL.prior();
    private static final double[] LOGS = {Math.log(0.9), Math.log(1.2), Math.log(1.25), Math.log(0.8), Math.log(1.4)};

    @Test
    void learningDayByDayIsLearningAllAtOnce() {
        Belief oneByOne = PRIOR;
        for (double log : LOGS) {
            oneByOne = oneByOne.updated(log);
        }
        Belief atOnce = PRIOR.updated(LOGS);

        assertThat(oneByOne.k()).isEqualTo(atOnce.k());
        assertThat(oneByOne.a()).isEqualTo(atOnce.a());
        assertThat(oneByOne.mu()).isCloseTo(atOnce.mu(), within(1e-14));
        assertThat(oneByOne.b()).isCloseTo(atOnce.b(), within(1e-14));
    }

    @Test
    void noDayTeachesNothing() {
        assertThat(PRIOR.updated()).isEqualTo(PRIOR);
        assertThat(PRIOR.updated(LOGS, new double[LOGS.length])).isEqualTo(PRIOR);
    }

    @Test
    void aDayOfWeightTwoIsTwoDays() {
        assertThat(PRIOR.updated(new double[] {0.3}, new double[] {2})).isEqualTo(PRIOR.updated(0.3, 0.3));
    }

    @Test
    void moreDaysLikeThoseSeenNarrowTheBand() {
        double width = Double.POSITIVE_INFINITY;
        Belief belief = PRIOR;
        for (int week = 0; week < 20; week++) {
            LogT days = belief.ofMean(10);
            double now = days.quantile(0.9) / days.quantile(0.1);
            assertThat(now).as("after %d weeks", week).isLessThan(width);
            width = now;
            belief = belief.updated(0.1, -0.1, 0.2, -0.2, 0);
        }
    }

    /** Logs of a hundred million times the plan: a difference of sums of squares would be noise. */
    @Test
    void theSpreadDoesNotDependOnTheLevel() {
        Belief near = new Belief(1e-9, 0, 2, 0).updated(LOGS);
        Belief far = new Belief(1e-9, 1e8, 2, 0)
                .updated(Arrays.stream(LOGS).map(log -> log + 1e8).toArray());

        assertThat(far.b()).isCloseTo(near.b(), within(1e-7));
    }

    @Test
    void aBeliefWithoutDoubtGivesOneFigure() {
        LogT certain = new Belief(1, Math.log(1.1), 1, 0).predictive();

        assertThat(certain.quantile(0.1)).isCloseTo(1.1, within(1e-15));
        assertThat(certain.quantile(0.9)).isCloseTo(1.1, within(1e-15));
        assertThat(certain.chanceAbove(1.09)).isEqualTo(1);
        assertThat(certain.chanceAbove(1.11)).isZero();
    }

    @Test
    void quantilesAndChancesAreInverses() {
        long seed = 20261126;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 200; i++) {
            LogT factor = new LogT(random.nextDouble(-1, 1), random.nextDouble(0.01, 1), random.nextDouble(2, 60));
            double chance = random.nextDouble(0.001, 0.999);
            assertThat(factor.chanceAbove(factor.quantile(chance)))
                    .as("%s with seed %d", factor, seed)
                    .isCloseTo(1 - chance, within(1e-9));
        }
    }

    /** The mean is infinite, so nothing may offer one. */
    @Test
    void aFactorHasNoMean() {
        assertThat(LogT.class.getMethods())
                .noneMatch(method -> method.getName().toLowerCase().contains("mean"));
    }

    @Test
    void aBeliefInNothingIsRefused() {
        assertThatThrownBy(() -> new Belief(0, 0, 2, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Belief(1, Double.NaN, 2, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Belief(1, 0, 2, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Habits(PRIOR, 0.5, false)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anEncodingIsBelievedToKeepWhatWasPlannedUntilRollsTellOtherwise() {
        Belief before = Encodings.prior(0.6);
        Belief after =
                Encodings.from(0.6, Collections.nCopies(20, new Encodings.Roll(1_000_000_000_000L, 700_000_000_000L)));

        assertThat(before.level().median()).isCloseTo(0.6, within(1e-12));
        assertThat(before.level().quantile(0.9)).isBetween(0.63, 0.68);
        assertThat(after.level().median()).isBetween(0.69, 0.70);
        assertThat(after.level().quantile(0.9) / after.level().quantile(0.1)).isLessThan(1.03);
    }

    @Test
    void rollsWithNothingInThemTeachNoReduction() {
        assertThat(Encodings.from(
                        0.6,
                        List.of(new Encodings.Roll(0, 0), new Encodings.Roll(1000, 0), new Encodings.Roll(0, 1000))))
                .isEqualTo(Encodings.prior(0.6));
    }
}
