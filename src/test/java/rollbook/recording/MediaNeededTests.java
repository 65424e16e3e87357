package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.quantity.ByteCount;
import rollbook.quantity.ByteUnit;
import rollbook.quantity.Fraction;

class MediaNeededTests {

    private static final ByteCount TAPE = ByteCount.of(12, ByteUnit.TB);

    @Test
    void bytesThatMayBeCutFillItemsOneAfterTheOther() {
        assertThat(MediaNeeded.forBytes(ByteCount.ZERO, TAPE, Fraction.ONE)).isZero();
        assertThat(MediaNeeded.forBytes(TAPE, TAPE, Fraction.ONE)).isEqualTo(1);
        assertThat(MediaNeeded.forBytes(TAPE.plus(ByteCount.of(1)), TAPE, Fraction.ONE))
                .isEqualTo(2);
        assertThat(MediaNeeded.forBytes(TAPE, TAPE, Fraction.parse("0.95"))).isEqualTo(2);
    }

    @Test
    void refusesItemsWithoutRoom() {
        assertThatIllegalArgumentException().isThrownBy(() -> MediaNeeded.forBytes(TAPE, ByteCount.ZERO, Fraction.ONE));
        assertThatIllegalArgumentException().isThrownBy(() -> MediaNeeded.forBytes(TAPE, TAPE, Fraction.ZERO));
        assertThatIllegalArgumentException().isThrownBy(() -> MediaNeeded.forBytes(TAPE, TAPE, Fraction.of(2)));
        assertThatIllegalArgumentException().isThrownBy(() -> MediaNeeded.forWholeRolls(List.of(TAPE.times(2)), TAPE));
    }

    @Test
    void wholeRollsFillGapsWhereTheyFit() {
        assertThat(MediaNeeded.forWholeRolls(List.of(), TAPE)).isZero();
        assertThat(MediaNeeded.forWholeRolls(terabytes(7, 5, 7, 5), TAPE)).isEqualTo(2);
        assertThat(MediaNeeded.forWholeRolls(terabytes(7, 7, 7), TAPE)).isEqualTo(3);
    }

    @Test
    void wholeRollsNeverNeedFewerItemsThanTheirBytes() {
        long seed = 12L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 300; i++) {
            List<ByteCount> rolls = IntStream.range(0, random.nextInt(40))
                    .mapToObj(roll -> ByteCount.of(1 + random.nextLong(TAPE.bytes())))
                    .toList();
            ByteCount total = rolls.stream().reduce(ByteCount.ZERO, ByteCount::plus);
            long fewest = MediaNeeded.forBytes(total, TAPE, Fraction.ONE);
            assertThat((long) MediaNeeded.forWholeRolls(rolls, TAPE))
                    .as("seed %d", seed)
                    .isBetween(fewest, (long) rolls.size());
        }
    }

    /** Level definitions from memory, unverified. */
    @ParameterizedTest
    @CsvSource({"STRIPED, 4, 48", "MIRRORED, 4, 24", "SINGLE_PARITY, 3, 24", "DOUBLE_PARITY, 4, 24"})
    void arraysKeepWhatTheirLevelLeaves(ArrayLevel level, int disks, long terabytes) {
        assertThat(level.usable(disks, TAPE)).isEqualTo(ByteCount.of(terabytes, ByteUnit.TB));
        assertThatIllegalArgumentException().isThrownBy(() -> level.usable(level.fewestDisks() - 1, TAPE));
    }

    @Test
    void mirrorsNeedPairs() {
        assertThatIllegalArgumentException().isThrownBy(() -> ArrayLevel.MIRRORED.usable(3, TAPE));
    }

    private static List<ByteCount> terabytes(long... amounts) {
        return Arrays.stream(amounts)
                .mapToObj(amount -> ByteCount.of(amount, ByteUnit.TB))
                .toList();
    }
}
