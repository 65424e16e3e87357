package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigInteger;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisplayTests {
    private static final Instant NOW = Instant.parse("2026-07-14T17:54:00Z");
    private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");

    private final Display display =
            new Display(new MessagesConfiguration().messageSource(), Clock.fixed(NOW, ZoneOffset.UTC));

    DisplayTests() throws IOException {}

    // Prefixes: SI brochure for powers of 1000, IEC 80000-13 for powers of 1024; the quotients by hand.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | 0 B",
                "1 | 1 B",
                "999 | 999 B",
                "1000 | 1.00 kB (1,000 B)",
                "1024 | 1.02 kB (1.00 KiB)",
                "999499 | 999 kB (976 KiB)",
                "999500 | 1.00 MB (976 KiB)",
                "512000000000 | 512 GB (477 GiB)",
                "4820000000000 | 4.82 TB (4.38 TiB)",
                "9223372036854775807 | 9.22 EB (8.00 EiB)",
                "92233720368547758070 | 92.2 EB (80.0 EiB)",
                "-4820000000000 | -4.82 TB (-4.38 TiB)",
            })
    void amountsShowTheDecimalAndTheBinaryFigure(BigInteger bytes, String shown) {
        assertThat(display.amount(bytes)).isEqualTo(shown);
    }

    @Test
    void threeFiguresAreNeverFurtherFromTheAmountThanHalfTheThird() {
        long seed = 20260714;
        var random = new SplittableRandom(seed);
        var units = java.util.Map.of("B", 1e0, "kB", 1e3, "MB", 1e6, "GB", 1e9, "TB", 1e12, "PB", 1e15, "EB", 1e18);
        for (int i = 0; i < 2000; i++) {
            long bytes = random.nextLong(1, Long.MAX_VALUE) >>> random.nextInt(62);
            String[] shown = display.size(bytes).replace(",", "").split(" ");
            double value = Double.parseDouble(shown[0]) * units.get(shown[1]);
            assertThat(value).as("seed %d, %d bytes", seed, bytes).isCloseTo(bytes, within(bytes * 0.005 + 1e-9));
            assertThat(Double.parseDouble(shown[0]))
                    .as("seed %d, %d bytes", seed, bytes)
                    .isLessThan(1000);
        }
    }

    @Test
    void exactBytesRatesAndCounts() {
        assertThat(display.exact(4_820_000_000_000L)).isEqualTo("4,820,000,000,000 bytes");
        assertThat(display.rate(412_300_000)).isEqualTo("412 MB/s");
        assertThat(display.rate(1.25e9)).isEqualTo("1.25 GB/s");
        assertThat(display.count(1204)).isEqualTo("1,204");
        assertThat(display.figure(0.004123)).isEqualTo("0.00412");
        assertThat(display.figure(41_234)).isEqualTo("41,200");
    }

    @ParameterizedTest
    @CsvSource({"0, 0 %", "0.025, 2.5 %", "0.0994, 9.9 %", "0.0996, 10 %", "0.83, 83 %", "1, 100 %"})
    void percentages(double fraction, String shown) {
        assertThat(display.percent(fraction)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({
        "PT0S, 0 s",
        "PT59.9S, 59 s",
        "PT12M30S, 12 min",
        "PT3H12M, 3 h 12 min",
        "PT3H, 3 h",
        "PT24H, 1 day",
        "PT52H, 2 days 4 h",
    })
    void durationsInTheirTwoLargestUnits(Duration duration, String shown) {
        assertThat(display.duration(duration)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2026-07-14T17:42:00Z | 18:42, 12 min ago (Lisbon)",
                "2026-07-14T17:53:30Z | 18:53, just now (Lisbon)",
                "2026-07-13T22:59:00Z | Mon 13 Jul 2026, 23:59, 18 h ago (Lisbon)",
                "2026-07-13T23:01:00Z | 00:01, 18 h ago (Lisbon)",
                "2026-07-17T17:54:00Z | Fri 17 Jul 2026, 18:54, in 3 days (Lisbon)",
            })
    void momentsOnTheProductionsClocks(Instant instant, String shown) {
        assertThat(display.when(instant, LISBON)).isEqualTo(shown);
    }

    @Test
    void datesCarryTheirWeekday() {
        // 14 July 2026 is a Tuesday: by the calendar of any almanac.
        assertThat(display.date(LocalDate.of(2026, 7, 14))).isEqualTo("Tuesday 14 July 2026");
        assertThat(display.moment(NOW, ZoneId.of("America/Los_Angeles")))
                .isEqualTo("Tue 14 Jul 2026, 10:54 (Los Angeles)");
        assertThat(display.when(NOW, null)).isEqualTo("17:54, just now (UTC)");
    }
}
