package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class DrawsTests {
    private static final int COUNT = 200_000;

    /** Means of all are 1; variances from the closed forms 1, cv² and share² / 3. Four standard deviations of the mean. */
    @Test
    void factorsHaveTheMeanAndTheVarianceOfTheirSpread() {
        assertMoments(Spread.EXPONENTIAL, 1);
        assertMoments(new Spread.LogNormal(0.5), 0.25);
        assertMoments(new Spread.Uniform(0.6), 0.12);
    }

    private static void assertMoments(Spread spread, double variance) {
        double sum = 0;
        double squares = 0;
        Draws.Stream numbers = Draws.of(5, 0).stream("take", "CAM");
        for (int i = 0; i < COUNT; i++) {
            double factor = numbers.factor(spread);
            sum += factor;
            squares += (factor - 1) * (factor - 1);
        }
        assertThat(sum / COUNT).as("mean of %s", spread).isCloseTo(1, within(4 * Math.sqrt(variance / COUNT)));
        assertThat(squares / COUNT).as("variance of %s", spread).isCloseTo(variance, within(0.03 * variance));
    }

    /** Quantiles from the closed forms: −ln 0.1; e^(1.2815515655 s − s²/2) with s² = ln 1.25; 1 + 0.6 × 0.8. */
    @Test
    void largerNumbersGiveLargerFactorsByTheInverseOfTheDistribution() {
        assertThat(Spread.EXPONENTIAL.factor(0.9)).isCloseTo(2.302585092994, within(1e-12));
        assertThat(new Spread.LogNormal(0.5).factor(0.9)).isCloseTo(1.6385447243, within(1e-9));
        assertThat(new Spread.Uniform(0.6).factor(0.9)).isCloseTo(1.48, within(1e-12));
    }

    @Test
    void aStreamIsTheSameEachTimeAndSharesNoNumberWithAnyOther() {
        Set<Double> first = new HashSet<>();
        for (long seed : List.of(1L, 2L)) {
            for (int replicate = 0; replicate < 3; replicate++) {
                for (String purpose : List.of("take", "gap")) {
                    for (String entity : List.of("CAM 1", "CAM 2", "1 CAM")) {
                        double number = Draws.of(seed, replicate).stream(purpose, entity)
                                .next();
                        assertThat(number).isStrictlyBetween(0.0, 1.0);
                        assertThat(Draws.of(seed, replicate).stream(purpose, entity)
                                        .next())
                                .isEqualTo(number);
                        first.add(number);
                    }
                }
            }
        }
        assertThat(first).hasSize(2 * 3 * 2 * 3);
    }

    @Test
    void nothingIsDrawnWhereNothingVaries() {
        Draws.Stream none = () -> {
            throw new AssertionError("drawn");
        };
        assertThat(Delay.fixed(5).millis(none)).isEqualTo(5);
        assertThat(none.hits(0)).isFalse();
    }

    @Test
    void withMeansEveryDelayIsItsMean() {
        Draws.Stream means = Draws.MEANS.stream("take", "CAM");
        assertThat(Delay.exponential(7).millis(means)).isEqualTo(7);
        assertThat(means.hits(0.99)).isFalse();
    }
}
