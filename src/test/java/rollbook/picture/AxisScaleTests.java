package rollbook.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisScaleTests {

    @ParameterizedTest
    @CsvSource(textBlock = """
            # max bytes        , unit, labels
            32000000000000     , TB  , 0 10 20 30 40
            50000000000000     , TB  , 0 10 20 30 40 50
            51000000000000     , TB  , 0 20 40 60
            1000000000000      , TB  , 0 0.2 0.4 0.6 0.8 1
            999000000000       , TB  , 0 0.2 0.4 0.6 0.8 1
            7600000000000      , TB  , 0 2 4 6 8
            240000000000       , GB  , 0 50 100 150 200 250
            600000000000       , GB  , 0 200 400 600
            4200000000000000   , PB  , 0 1 2 3 4 5
            0                  , B   , 0 1
            """)
    void ticksAreRoundNumbersFromZeroUpInOneUnit(long maxBytes, String unit, String labels) {
        AxisScale axis = AxisScale.of(maxBytes, 200, 20);

        assertThat(axis.unit()).isEqualTo(unit);
        assertThat(axis.ticks().stream().map(AxisScale.Tick::label)).containsExactly(labels.split(" "));
    }

    @Test
    void zeroIsAtTheBaseAndTheTopTickAtTheTop() {
        AxisScale axis = AxisScale.of(40_000, 200, 20);

        assertThat(axis.ticks().get(0).y()).isEqualTo(200);
        assertThat(axis.ticks().get(axis.ticks().size() - 1).y()).isEqualTo(20);
        // A quarter of the way up: 200 - 180 / 4.
        assertThat(axis.y(10_000)).isEqualTo(155);
        assertThat(axis.y(-10_000)).isEqualTo(200);
    }

    @Test
    void anyMaximumFitsUnderTheTopInOneToFiveSteps() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 2000; i++) {
            long max = random.nextLong(1L << random.nextInt(1, 62));
            AxisScale axis = AxisScale.of(max, 200, 20);
            long step = axis.ticks().get(1).bytes();
            assertThat(axis.topBytes()).as("seed 7, max %d", max).isGreaterThanOrEqualTo(max);
            assertThat(axis.topBytes() - step).as("seed 7, max %d", max).isLessThanOrEqualTo(Math.max(0, max));
            assertThat(axis.ticks()).as("seed 7, max %d", max).hasSizeBetween(2, 6);
            assertThat(Long.toString(step)).as("seed 7, max %d", max).matches("[125]0*");
        }
    }
}
