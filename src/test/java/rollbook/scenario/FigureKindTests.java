package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FigureKindTests {
    @ParameterizedTest
    @CsvSource({"8:05, 08:05", "08:05, 08:05", "0805, 08:05", "8.05, 08:05", "23:59, 23:59"})
    void aTimeIsReadHoweverItIsWritten(String typed, String kept) {
        assertThat(FigureKind.TIME.read(typed)).isEqualTo(kept);
    }

    @ParameterizedTest
    @ValueSource(strings = {"24:00", "8", "12:60", "noon", ""})
    void whatIsNoTimeIsRefused(String typed) {
        assertThatThrownBy(() -> FigureKind.TIME.read(typed)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "13:00-14:00|13:00-14:00",
                "13:00 to 14:00; 18:30–18:45|13:00-14:00, 18:30-18:45",
                "1300-1400|13:00-14:00",
            })
    void spansAreReadHoweverTheyAreWritten(String typed, String kept) {
        assertThat(FigureKind.SPANS.read(typed)).isEqualTo(kept);
    }

    @Test
    void noSpanIsNothing() {
        assertThat(FigureKind.SPANS.read("  ")).isEmpty();
        assertThatThrownBy(() -> FigureKind.SPANS.read("13:00")).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"'2,5', 2.5", "2.50, 2.5", "100, 100", "1e2, 100", "0.0, 0"})
    void aNumberIsKeptInOneForm(String typed, String kept) {
        assertThat(FigureKind.NUMBER.read(typed)).isEqualTo(kept);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e99999", "1234567890123", "many", "1 000"})
    void whatIsNoNumberOfAScenarioIsRefused(String typed) {
        assertThatThrownBy(() -> FigureKind.NUMBER.read(typed)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aCountHasNoDecimals() {
        assertThat(FigureKind.COUNT.read("7")).isEqualTo("7");
        assertThatThrownBy(() -> FigureKind.COUNT.read("7.5")).isInstanceOf(ArithmeticException.class);
    }
}
