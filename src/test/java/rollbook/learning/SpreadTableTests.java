package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadTableTests {
    private static final double MILLIONTH_OF_A_PERCENT = 1e-6;

    // Against the inverse that the statistics library computes number by number.
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 2, 4.5, 10, 200})
    void theTableGivesTheInverseToEightDigits(double a) {
        Belief belief = new Belief(2, 0, a, 0.125);
        SpreadTable table = new SpreadTable(belief);
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 2000; i++) {
            double uniform = random.nextDouble();
            assertThat(table.spread(uniform))
                    .as("%s", uniform)
                    .isCloseTo(belief.spread(uniform), withinPercentage(MILLIONTH_OF_A_PERCENT));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0x1p-54, 1e-12, 1e-6, 0.5, 1 - 1e-6, 1 - 1e-12, 1 - 0x1p-53})
    void theTableReachesTheFarthestNumbersThatAreDrawn(double uniform) {
        GammaDistribution precision = GammaDistribution.of(2, 1);
        // Near one the distance from one has the digits.
        double exact = uniform < 0.5
                ? precision.inverseCumulativeProbability(uniform)
                : precision.inverseSurvivalProbability(1 - uniform);

        assertThat(new SpreadTable(new Belief(2, 0, 2, 0.125)).spread(uniform))
                .isCloseTo(Math.sqrt(0.125 / exact), withinPercentage(MILLIONTH_OF_A_PERCENT));
    }
}
