package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class StreamsTests {

    /** Three implementations of SplitMix64 agree on these: the JDK's, the library's and one written anew. */
    @Test
    void seedsAreMixedByTheSameAlgorithmEverywhere() {
        SplittableRandom jdk = new SplittableRandom(42);
        UniformRandomProvider library = RandomSource.SPLIT_MIX_64.create(42L);
        for (long number : new long[] {-4767286540954276203L, 2949826092126892291L, 5139283748462763858L}) {
            assertThat(jdk.nextLong()).isEqualTo(number);
            assertThat(library.nextLong()).isEqualTo(number);
        }
    }

    /** So that a kept forecast can be computed again; measured once, then frozen. */
    @Test
    void numbersOfAStreamNeverChange() {
        assertThat(new Streams(42).uniforms(3, "noise", "main", 1))
                .containsExactly(0.23306045157877164, 0.1153331503657925, 0.47297568830732806);
    }

    @Test
    void eachPurposeHasNumbersOfItsOwn() {
        Streams streams = new Streams(1);

        assertThat(streams.uniforms(5, "noise", "main", 1))
                .isEqualTo(streams.uniforms(5, "noise", "main", 1))
                .isNotEqualTo(streams.uniforms(5, "noise", "main", 2))
                .isNotEqualTo(streams.uniforms(5, "noise", "second", 1))
                .isNotEqualTo(streams.uniforms(5, "level", "main", 1))
                .isNotEqualTo(new Streams(2).uniforms(5, "noise", "main", 1));
    }

    @Test
    void numbersAreUniformAndNeverAtTheEnds() {
        double[] numbers = new Streams(7).uniforms(100_000, "test");

        assertThat(Pit.chanceIfUniform(Arrays.stream(numbers).boxed().toList())).isGreaterThan(0.001);
        assertThat(Arrays.stream(numbers)).allMatch(number -> number > 0 && number < 1);
    }
}
