package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EstimateTests {
    /** Mean 3, standard deviation √2.5, standard error √0.5; Student’s t with 4 degrees of freedom is 2.776 (textbook table). */
    @Test
    void aMeanIsGivenWithStudentsInterval() {
        Estimate estimate = Estimate.ofMean(new double[] {1, 2, 3, 4, 5});
        assertThat(estimate.value()).isEqualTo(3);
        assertThat(estimate.low()).isCloseTo(3 - 2.776 * Math.sqrt(0.5), within(5e-4));
        assertThat(estimate.high()).isCloseTo(3 + 2.776 * Math.sqrt(0.5), within(5e-4));
    }

    @Test
    void whatNeverDiffersIsCertain() {
        assertThat(Estimate.ofMean(new double[] {0, 0, 0})).isEqualTo(new Estimate(0, 0, 0));
        assertThat(Estimate.ofMean(new double[] {-5, -5})).isEqualTo(new Estimate(-5, -5, -5));
    }

    /** Figures from the documentation of the open-source library wilson-score-interval. */
    @ParameterizedTest
    @CsvSource({
        "430, 474, 0.8776750858242243, 0.9301239839930541",
        "392, 436, 0.8672311846637769, 0.9239627360567735",
        "10, 14, 0.4535045882751561, 0.882788120898909"
    })
    void aShareIsGivenWithWilsonsInterval(int hits, int of, double low, double high) {
        Estimate estimate = Estimate.ofShare(hits, of);
        assertThat(estimate.low()).isCloseTo(low, within(1e-5));
        assertThat(estimate.high()).isCloseTo(high, within(1e-5));
    }

    /** From the closed form: z² / (n + z²) for none of n, with z = 1.959964. */
    @Test
    void noneOfManyIsNotNever() {
        assertThat(Estimate.ofShare(0, 200).low()).isZero();
        assertThat(Estimate.ofShare(0, 200).high()).isCloseTo(3.841459 / 203.841459, within(1e-7));
        assertThat(Estimate.ofShare(200, 200))
                .isEqualTo(new Estimate(1, 1 - Estimate.ofShare(0, 200).high(), 1));
    }

    /** 2,000 samples of 30 normal numbers, made from pairs of uniform ones. */
    @Test
    void theIntervalOfAMeanCoversTheTruthAsOftenAsItSays() {
        Random random = new Random(5);
        int covered = 0;
        for (int sample = 0; sample < 2_000; sample++) {
            double[] normal = random.doubles(30)
                    .map(u -> Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * random.nextDouble()))
                    .toArray();
            Estimate estimate = Estimate.ofMean(normal);
            if (estimate.low() <= 0 && estimate.high() >= 0) {
                covered++;
            }
        }
        // 1,900 expected; 4 standard deviations of a binomial are 39.
        assertThat(covered).as("seed 5").isBetween(1_861, 1_939);
    }
}
