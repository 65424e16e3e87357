package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class QrSymbolTests {
    private static final Pattern RUN = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-(\\d+)z");

    /** From memory of ISO/IEC 18004: 62 bytes with correction M are version 4, which has 33 modules; 63 are version 5. */
    @Test
    void theSymbolIsTheSmallestThatHoldsTheText() {
        assertThat(QrSymbol.of("a".repeat(62)).modules()).isEqualTo(33 + 8);
        assertThat(QrSymbol.of("a".repeat(63)).modules()).isEqualTo(37 + 8);
    }

    /** From memory of ISO/IEC 18004: corners of 7 dark modules, and 4 light modules around the symbol. */
    @Test
    void theQuietZoneIsFourModulesWideOnEverySide() {
        QrSymbol symbol = QrSymbol.of("https://rollbook.example.org/p/SHOW/find?code=CARD-001");
        int end = symbol.modules() - 4;
        var runs = RUN.matcher(symbol.path()).results().toList();
        assertThat(runs.stream().mapToInt(run -> number(run, 1)).min()).hasValue(4);
        assertThat(runs.stream().mapToInt(run -> number(run, 2)).min()).hasValue(4);
        assertThat(runs.stream()
                        .mapToInt(run -> number(run, 1) + number(run, 3))
                        .max())
                .hasValue(end);
        assertThat(runs.stream().mapToInt(run -> number(run, 2) + 1).max()).hasValue(end);
        assertThat(symbol.path())
                .startsWith("M4 4h7v1h-7z")
                .contains("M" + (end - 7) + " 4h7v1h-7z", "M4 " + (end - 1) + "h7v1h-7z");
    }

    @Test
    void aTextThatNoSymbolHoldsIsRefused() {
        assertThatThrownBy(() -> QrSymbol.of("a".repeat(3000))).isInstanceOf(IllegalArgumentException.class);
    }

    private static int number(MatchResult run, int group) {
        return Integer.parseInt(run.group(group));
    }
}
