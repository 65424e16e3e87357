package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RecordedMinutesTests {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "31|31.00",
                "31.5|31.50",
                "31,5|31.50",
                " 31:30 |31.50",
                "0|0.00",
                "0:01|0.02",
                "12:20|12.33",
                "90:59|90.98"
            })
    void bothWaysOfWritingAreRead(String text, BigDecimal minutes) {
        assertThat(RecordedMinutes.parse(text)).contains(minutes);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-3",
                "31:60",
                "31:5",
                "1:02:03",
                "31 min",
                "about 30",
                "1e3",
                ".5",
                "31.",
                "999999",
                "NaN",
                "٣١"
            })
    void anythingElseIsNot(String text) {
        assertThat(RecordedMinutes.parse(text)).isEmpty();
    }

    @Test
    void whatAFormStartsFromReadsBack() {
        long seed = 20261125;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 1_000; i++) {
            BigDecimal minutes = BigDecimal.valueOf(random.nextLong(10_000_000), 2);
            assertThat(RecordedMinutes.parse(RecordedMinutes.format(minutes)))
                    .as("seed %d", seed)
                    .contains(minutes);
        }
        assertThat(RecordedMinutes.format(new BigDecimal("31.50"))).isEqualTo("31.5");
        assertThat(RecordedMinutes.format(new BigDecimal("30.00"))).isEqualTo("30");
    }
}
