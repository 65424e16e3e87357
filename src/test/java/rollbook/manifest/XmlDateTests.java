package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.SplittableRandom;
import javax.xml.datatype.DatatypeFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the Java platform's own reader of {@code xs:dateTime}. */
class XmlDateTests {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-03-04T18:05:12Z",
                "2026-03-04T18:05:12+01:00",
                "2026-03-04T18:05:12-05:30",
                "2026-03-04T18:05:12.5Z",
                "2026-03-04T18:05:12.123456+14:00",
                "2024-02-29T00:00:00Z",
                "2026-03-31T23:59:59Z",
                "2026-12-31T24:00:00Z",
                "2026-03-04T24:00:00+01:00",
                "0001-01-01T00:00:00Z",
            })
    void readsInstants(String text) throws Exception {
        Instant expected = DatatypeFactory.newInstance()
                .newXMLGregorianCalendar(text)
                .toGregorianCalendar()
                .toInstant();
        Instant read = XmlDate.instant(text);

        assertThat(read).isNotNull();
        assertThat(read.truncatedTo(java.time.temporal.ChronoUnit.MILLIS)).isEqualTo(withoutJulian(text, expected));
    }

    /** The platform counts the years before 1582 in the Julian calendar; the schema and Rollbook don't. */
    private static Instant withoutJulian(String text, Instant expected) {
        return text.startsWith("0001") ? Instant.parse(text) : expected;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "yesterday",
                "2026-03-04",
                "2026-03-04 18:05:12Z",
                "2026-02-29T00:00:00Z",
                "2026-13-01T00:00:00Z",
                "2026-03-04T25:00:00Z",
                "2026-03-04T18:60:00Z",
                "2026-03-04T18:05:12+1:00",
                "2026-03-04T18:05:12*01:00",
                "2026-03-04T18:05:12+01:99",
                "2O26-03-04T18:05:12Z",
                "24:00:00",
            })
    void refusesWhatIsNoDate(String text) {
        assertThatExceptionOfType(DateTimeException.class).isThrownBy(() -> XmlDate.instant(text));
    }

    @ParameterizedTest
    @CsvSource({"2026-03-04T18:05:12", "2026-03-04T18:05:12.25", "2026-03-04T24:00:00"})
    void aDateWithoutZoneIsNoInstant(String text) {
        assertThat(XmlDate.instant(text)).isNull();
    }

    @Test
    void readsWhatThePlatformWrites() {
        long seed = 221;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 20_000; i++) {
            OffsetDateTime date = Instant.ofEpochSecond(random.nextLong(0, 4_000_000_000L))
                    .atOffset(ZoneOffset.ofTotalSeconds(60 * random.nextInt(-14 * 60, 14 * 60)));
            String text = java.time.format.DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(date);
            assertThat(XmlDate.instant(text)).as("seed %d, %s", seed, text).isEqualTo(date.toInstant());
        }
    }
}
