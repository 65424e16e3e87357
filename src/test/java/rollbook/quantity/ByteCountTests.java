package rollbook.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.springframework.core.convert.support.DefaultConversionService;

class ByteCountTests {

    private static final ByteCount MOST = ByteCount.of(Long.MAX_VALUE);

    @Test
    void isNeverNegative() {
        assertThatIllegalArgumentException().isThrownBy(() -> ByteCount.of(-1));
        assertThatThrownBy(() -> ByteCount.of(1).minus(ByteCount.of(2))).isInstanceOf(ArithmeticException.class);
        assertThatIllegalArgumentException().isThrownBy(() -> ByteCount.of(1).times(-1));
    }

    @Test
    void overflowFailsInsteadOfWrappingAround() {
        assertThatThrownBy(() -> MOST.plus(ByteCount.of(1))).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> MOST.times(2)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> MOST.times(Fraction.of(3, 2))).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> ByteCount.of(10, ByteUnit.EB)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> ByteCount.valueOf(new BigDecimal("9223372036854775808")))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void arithmeticIsExactUpToTheLargestValue() {
        assertThat(MOST.minus(ByteCount.of(1)).plus(ByteCount.of(1))).isEqualTo(MOST);
        assertThat(MOST.times(Fraction.ONE)).isEqualTo(MOST);
        assertThat(ByteCount.of(7, ByteUnit.TB).times(3)).isEqualTo(ByteCount.of(21_000_000_000_000L));
    }

    @Test
    void partsOfAByteRoundTheWayTheNameSays() {
        assertThat(ByteCount.of(10).times(Fraction.of(1, 3))).isEqualTo(ByteCount.of(4));
        assertThat(ByteCount.roundedUp(Fraction.of(7, 2))).isEqualTo(ByteCount.of(4));
        assertThat(ByteCount.roundedDown(Fraction.of(7, 2))).isEqualTo(ByteCount.of(3));
    }

    @Test
    void comparesBySize() {
        ByteCount card = ByteCount.of(1, ByteUnit.TB);
        ByteCount binary = ByteCount.of(1, ByteUnit.TIB);
        assertThat(binary).isGreaterThan(card);
        assertThat(binary.isMoreThan(card)).isTrue();
        assertThat(card.isMoreThan(card)).isFalse();
        assertThat(card.isAtLeast(card)).isTrue();
        assertThat(card.ratioTo(ByteCount.of(250, ByteUnit.GB))).isEqualTo(Fraction.of(4));
        assertThat(ByteCount.ZERO.isZero()).isTrue();
    }

    @Test
    void unitsAreThousandsOrTheirBinaryCousins() {
        assertThat(ByteUnit.EB.bytes()).isEqualTo(1_000_000_000_000_000_000L);
        assertThat(ByteUnit.EIB.bytes()).isEqualTo(1L << 60);
        assertThat(ByteUnit.TIB.symbol()).isEqualTo("TiB");
        assertThat(ByteUnit.KB.symbol()).isEqualTo("kB");
    }

    /** The driver answers bigint as Long and a sum over bigint as BigDecimal. */
    @Test
    void springConvertsWhatTheDatabaseDriverGives() {
        DefaultConversionService conversion = new DefaultConversionService();
        assertThat(conversion.convert(960L, ByteCount.class)).isEqualTo(ByteCount.of(960));
        assertThat(conversion.convert(new BigDecimal("960"), ByteCount.class)).isEqualTo(ByteCount.of(960));
    }
}
