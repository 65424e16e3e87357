package rollbook.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DataRateTests {

    private static final ByteCount CARD = ByteCount.of(1, ByteUnit.TB);

    @Test
    void givesTheSameRateInEveryUnit() {
        DataRate rate = DataRate.ofBytesPerSecond(318_504_960);
        assertThat(rate.megabytesPerSecond()).isEqualTo(Fraction.parse("318.50496"));
        assertThat(rate.megabitsPerSecond()).isEqualTo(Fraction.parse("2548.03968"));
        assertThat(rate.gigabytesPerMinute()).isEqualTo(Fraction.parse("19.1102976"));
        assertThat(rate.gigabytesPerHour()).isEqualTo(Fraction.parse("1146.617856"));
        assertThat(rate.perHour(ByteUnit.TB)).isEqualTo(Fraction.parse("1.146617856"));
    }

    @Test
    void holdsRatesThatHaveNoDecimal() {
        DataRate rate = new DataRate(Fraction.of(24_000, 1001));
        assertThat(rate.bytesIn(Fraction.of(1001))).isEqualTo(Fraction.of(24_000));
        assertThat(rate.bytesIn(Duration.ofSeconds(1001))).isEqualTo(ByteCount.of(24_000));
        assertThat(rate.bytesIn(Duration.ofSeconds(1))).isEqualTo(ByteCount.of(24));
    }

    @Test
    void timeIsRoundedUpToANanosecond() {
        assertThat(DataRate.ofBytesPerSecond(400_000_000).timeFor(CARD)).isEqualTo(Duration.ofSeconds(2500));
        assertThat(DataRate.ofBytesPerSecond(600_000_000).timeFor(CARD))
                .isEqualTo(Duration.ofSeconds(1666, 666_666_667));
        assertThat(DataRate.ofBytesPerSecond(1).timeFor(ByteCount.of(Long.MAX_VALUE)))
                .isEqualTo(Duration.ofSeconds(Long.MAX_VALUE));
    }

    @Test
    void nothingIsEverFilledAtZero() {
        assertThat(DataRate.ZERO.isZero()).isTrue();
        assertThatThrownBy(() -> DataRate.ZERO.timeFor(CARD)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> DataRate.of(CARD, Duration.ZERO)).isInstanceOf(ArithmeticException.class);
    }

    @Test
    void tooManyBytesFailInsteadOfWrappingAround() {
        DataRate rate = DataRate.ofBytesPerSecond(Long.MAX_VALUE);
        assertThat(rate.bytesIn(Duration.ofSeconds(1)).bytes()).isEqualTo(Long.MAX_VALUE);
        assertThatThrownBy(() -> rate.bytesIn(Duration.ofSeconds(2))).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> new DataRate(Fraction.of(1, 2)).timeFor(ByteCount.of(Long.MAX_VALUE)))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void bytesAndTimeAreEachOthersInverse() {
        long seed = 7L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            DataRate rate = new DataRate(Fraction.of(1 + random.nextLong(5_000_000_000L), 1 + random.nextLong(2000)));
            ByteCount bytes = ByteCount.of(random.nextLong(20_000_000_000_000L));
            assertThat(rate.bytesIn(rate.secondsFor(bytes))).as("seed %d", seed).isEqualTo(bytes.exact());
            Duration time = rate.timeFor(bytes);
            assertThat(rate.bytesIn(time)).as("seed %d", seed).isGreaterThanOrEqualTo(bytes);
            assertThat(rate.ratioTo(rate)).as("seed %d", seed).isEqualTo(Fraction.ONE);
            assertThat(rate.plus(rate)).as("seed %d", seed).isEqualTo(rate.times(Fraction.of(2)));
        }
    }
}
