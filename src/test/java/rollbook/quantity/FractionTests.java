package rollbook.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FractionTests {

    @Test
    void isKeptInLowestTerms() {
        assertThat(Fraction.of(48_000, 2002))
                .isEqualTo(Fraction.of(24_000, 1001))
                .hasToString("24000/1001");
        assertThat(Fraction.of(0, 7)).isEqualTo(Fraction.ZERO).hasToString("0");
    }

    @Test
    void refusesWhatIsNegativeOrDividedByZero() {
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.of(-1, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.of(1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.of(1, -2));
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.of(1).minus(Fraction.of(2)));
        assertThatThrownBy(() -> Fraction.ONE.dividedBy(Fraction.ZERO)).isInstanceOf(ArithmeticException.class);
    }

    @ParameterizedTest
    @CsvSource({"24,24", "0.005,1/200", "24000/1001,24000/1001", "1.50,3/2", "2/4,1/2", "' 7 ',7", "0,0"})
    void readsWholeDecimalAndFraction(String text, String expected) {
        assertThat(Fraction.parse(text)).hasToString(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-1", "1e9", "1/0", "1/", "/2", ".5", "1.", "1/2/3", "one", "0x10"})
    void refusesOtherText(String text) {
        assertThatThrownBy(() -> Fraction.parse(text)).isInstanceOf(NumberFormatException.class);
    }

    @Test
    void refusesDecimalsThatWouldFillTheMemory() {
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.of(new BigDecimal("1e999999999")));
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.of(new BigDecimal("1e-999999999")));
    }

    @Test
    void takesDecimalsOfEveryScale() {
        assertThat(Fraction.of(new BigDecimal("1.25"))).isEqualTo(Fraction.of(5, 4));
        assertThat(Fraction.of(new BigDecimal("12e3"))).isEqualTo(Fraction.of(12_000));
        assertThat(Fraction.of(new BigDecimal("0.00"))).isEqualTo(Fraction.ZERO);
    }

    @Test
    void roundsOnlyWhenAsked() {
        Fraction third = Fraction.of(10, 3);
        assertThat(third.floor()).isEqualTo(3);
        assertThat(third.ceiling()).isEqualTo(4);
        assertThat(Fraction.of(4).ceiling()).isEqualTo(4);
        assertThat(third.toBigDecimal(2, RoundingMode.HALF_UP)).isEqualTo(new BigDecimal("3.33"));
        assertThat(third.toDouble()).isEqualTo(10.0 / 3.0);
        assertThat(third.isWhole()).isFalse();
    }

    @Test
    void takesDurationsToTheNanosecond() {
        assertThat(Fraction.seconds(Duration.ofMillis(1500))).isEqualTo(Fraction.of(3, 2));
        assertThat(Fraction.seconds(Duration.ofNanos(1))).isEqualTo(Fraction.of(1, 1_000_000_000L));
        assertThatIllegalArgumentException().isThrownBy(() -> Fraction.seconds(Duration.ofNanos(-1)));
    }

    @Test
    void arithmeticUndoesItself() {
        long seed = 20_260_114L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            Fraction a = Fraction.of(random.nextLong(Long.MAX_VALUE), 1 + random.nextLong(100_000));
            Fraction b = Fraction.of(1 + random.nextLong(1_000_000), 1 + random.nextLong(Long.MAX_VALUE - 1));
            assertThat(a.plus(b).minus(b)).as("seed %d", seed).isEqualTo(a);
            assertThat(a.times(b).dividedBy(b)).as("seed %d", seed).isEqualTo(a);
            assertThat(Fraction.parse("0").plus(a).compareTo(a))
                    .as("seed %d", seed)
                    .isZero();
            assertThat(a.plus(b)).as("seed %d", seed).isGreaterThan(a);
            BigInteger gap = a.ceiling().subtract(a.floor());
            assertThat(gap).as("seed %d", seed).isEqualTo(a.isWhole() ? BigInteger.ZERO : BigInteger.ONE);
        }
    }
}
