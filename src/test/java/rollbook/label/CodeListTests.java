package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CodeListTests {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|''",
                "card-1|CARD-1",
                "'A1, B2;C3 D4'|A1 B2 C3 D4",
                "A1 A1 a1|A1",
                "CARD-008 to CARD-011|CARD-008 CARD-009 CARD-010 CARD-011",
                "'X9, CARD-1 TO CARD-2, Y'|X9 CARD-1 CARD-2 Y",
                "CARD-5 to CARD-5|CARD-5",
                "001 to 003|001 002 003",
                "A1B1 to A1B3|A1B1 A1B2 A1B3",
                "12345678901 to 12345678903|12345678901 12345678902 12345678903",
                "to|TO",
                "to A1|TO A1",
                "A1 to|A1 TO",
            })
    void codesAreReadAsTheyAreWritten(String typed, String codes) throws CodeList.Unclear {
        assertThat(String.join(" ", CodeList.read(typed))).isEqualTo(codes);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "CARD-1 to DRIVE-3",
                "CARD-9 to CARD-10",
                "CARD-3 to CARD-1",
                "CARD to CARDS",
                "C0001 to C0501",
            })
    void whatIsNoRunIsSaidSo(String typed) {
        assertThatThrownBy(() -> CodeList.read(typed))
                .isInstanceOfSatisfying(
                        CodeList.Unclear.class,
                        unclear -> assertThat(typed).startsWith(unclear.from()).endsWith(unclear.to()));
    }

    @Test
    void runsAreDrawnTogether() {
        assertThat(CodeList.write(List.of("CARD-01", "CARD-02", "CARD-03", "CARD-05", "CARD-06", "DRIVE-1")))
                .isEqualTo("CARD-01 to CARD-03, CARD-05, CARD-06, DRIVE-1");
    }

    @Test
    void whatIsWrittenIsReadAsTheSame() throws CodeList.Unclear {
        long seed = new Random().nextLong();
        Random random = new Random(seed);
        for (int trial = 0; trial < 300; trial++) {
            List<String> codes = new ArrayList<>();
            int number = random.nextInt(20);
            String prefix = "CARD-";
            for (int i = 0; i < 40; i++) {
                number += random.nextInt(4) == 0 ? 2 : 1;
                if (random.nextInt(12) == 0) {
                    prefix = List.of("D", "CARD-", "7", "A.", "TO").get(random.nextInt(5)) + i;
                }
                codes.add(prefix + (random.nextInt(30) == 0 ? "X" : "%03d".formatted(number)));
            }
            List<String> once = codes.stream().distinct().toList();
            assertThat(CodeList.read(CodeList.write(once)))
                    .as("seed %d, trial %d", seed, trial)
                    .isEqualTo(once);
        }
    }
}
