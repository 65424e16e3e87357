package rollbook.supplier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class PriceHistoryTests {
    private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
    private static final LocalDate MAY = LocalDate.of(2026, 5, 1);
    private static final LocalDate JUNE = LocalDate.of(2026, 6, 1);

    private static Price price(int number, LocalDate from, long cents) {
        return new Price(number, from, cents, null, Instant.EPOCH, "Office");
    }

    private final PriceHistory history = new PriceHistory(
            List.of(price(3, MAY, 9_900), price(1, MAY, 9_400), price(2, MARCH, 8_900), price(4, JUNE, 10_500)));

    private Long on(LocalDate date) {
        return history.on(date).orElseThrow().itemMinorUnits();
    }

    @Test
    void aPriceIsValidFromItsDateUntilTheNextOne() {
        assertThat(on(MARCH)).isEqualTo(8_900);
        assertThat(on(MAY.minusDays(1))).isEqualTo(8_900);
        assertThat(on(JUNE.plusYears(1))).isEqualTo(10_500);
    }

    @Test
    void ofTwoFromTheSameDateTheLaterEnteredCounts() {
        assertThat(on(MAY)).isEqualTo(9_900);
        assertThat(history.isCorrected(price(1, MAY, 9_400))).isTrue();
        assertThat(history.isCorrected(price(3, MAY, 9_900))).isFalse();
        assertThat(history.newestFirst()).extracting(Price::number).containsExactly(4, 3, 1, 2);
    }

    @Test
    void beforeTheFirstPriceIsValidItIsTheFirst() {
        assertThat(on(MARCH.minusDays(1))).isEqualTo(8_900);
        assertThat(history.after(MARCH.minusDays(1))).contains(price(3, MAY, 9_900));
    }

    @Test
    void tellsTheOneBeforeAndTheNextOneButNoneThatWasCorrected() {
        assertThat(history.before(price(3, MAY, 9_900))).contains(price(2, MARCH, 8_900));
        assertThat(history.before(price(2, MARCH, 8_900))).isEmpty();
        assertThat(history.after(MARCH)).contains(price(3, MAY, 9_900));
        assertThat(history.after(JUNE)).isEmpty();
    }

    @Test
    void aPriceIsToBuyOrToHire() {
        assertThatThrownBy(() -> new Price(1, MAY, null, null, Instant.EPOCH, ""))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
