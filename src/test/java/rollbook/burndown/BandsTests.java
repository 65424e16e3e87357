package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.LongUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rollbook.learning.Quantiles;

class BandsTests {
    private static final double[] CHANCES = {0.1, 0.25, 0.5, 0.75, 0.9};

    // Against the type 7 quantiles of a statistics library.
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 10, 11, 100, 1000, 10_001})
    void bandsAreQuantilesOfTypeSeven(int size) {
        for (long seed = 1; seed <= 10; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            for (LongUnaryOperator shape : Arrays.<LongUnaryOperator>asList(
                    uniform -> uniform,
                    uniform -> uniform / 400_000,
                    uniform -> uniform < 900_000 ? 0 : -uniform * uniform,
                    uniform -> (long) Math.exp(uniform / 50_000.0))) {
                long[] values = random.longs(size, 0, 1_000_000).map(shape).toArray();
                double[] expected = Quantiles.interpolated(
                        Arrays.stream(values).asDoubleStream().toArray(), CHANCES);
                Band band = new Bands(size).of(values);
                long[] found = {band.p10(), band.p25(), band.p50(), band.p75(), band.p90()};
                for (int i = 0; i < CHANCES.length; i++) {
                    assertThat((double) found[i]).as("seed %d", seed).isEqualTo(expected[i], within(0.51));
                }
            }
        }
    }

    @Test
    void bandsCanBeTakenOneAfterTheOther() {
        Bands bands = new Bands(5);
        Band first = bands.of(new long[] {5, 1, 4, 2, 3});
        bands.of(new long[] {0, 0, 1000, 0, 0});

        assertThat(first).isEqualTo(new Band(1, 2, 3, 4, 5));
        assertThat(bands.of(new long[] {5, 1, 4, 2, 3})).isEqualTo(first);
    }

    // One of ten is 0, so 10 % don't exceed 0; the next three are 2, so 25 % don't exceed 2; half of them 3 or less.
    @Test
    void daysAreNeverBetweenTwo() {
        assertThat(Bands.ofCounts(new int[] {1, 0, 3, 5, 0, 1})).isEqualTo(new Band(0, 2, 3, 3, 3));
    }
}
