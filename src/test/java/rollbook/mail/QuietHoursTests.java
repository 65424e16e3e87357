package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked by hand; when the clocks of the two cities change is from the tz database. */
class QuietHoursTests {
    @ParameterizedTest(name = "no mail {0}-{1} in {2}: {3} becomes {4}")
    @CsvSource({
        // Over midnight; Lisbon is an hour ahead of UTC in July.
        "22:00, 07:00, Europe/Lisbon, 2026-07-14T20:59:59Z, 2026-07-14T20:59:59Z",
        "22:00, 07:00, Europe/Lisbon, 2026-07-14T21:00:00Z, 2026-07-15T06:00:00Z",
        "22:00, 07:00, Europe/Lisbon, 2026-07-15T02:30:00Z, 2026-07-15T06:00:00Z",
        "22:00, 07:00, Europe/Lisbon, 2026-07-15T05:59:59Z, 2026-07-15T06:00:00Z",
        "22:00, 07:00, Europe/Lisbon, 2026-07-15T06:00:00Z, 2026-07-15T06:00:00Z",
        // By day, for who shoots at night.
        "09:00, 17:30, Europe/Lisbon, 2026-07-14T07:59:59Z, 2026-07-14T07:59:59Z",
        "09:00, 17:30, Europe/Lisbon, 2026-07-14T08:00:00Z, 2026-07-14T16:30:00Z",
        "09:00, 17:30, Europe/Lisbon, 2026-07-14T16:30:00Z, 2026-07-14T16:30:00Z",
        // Until midnight.
        "20:00, 00:00, Europe/Lisbon, 2026-07-14T19:00:00Z, 2026-07-14T23:00:00Z",
        "20:00, 00:00, Europe/Lisbon, 2026-07-14T23:00:00Z, 2026-07-14T23:00:00Z",
        // Where the person is, not where the production is.
        "22:00, 07:00, Pacific/Auckland, 2026-07-14T10:30:00Z, 2026-07-14T19:00:00Z",
        // The night of 25 October 2026: at 2:00 the clocks go back to 1:00, so that 1:00 to 2:00 comes twice.
        "22:00, 07:00, Europe/Lisbon, 2026-10-24T22:00:00Z, 2026-10-25T07:00:00Z",
        "22:00, 01:30, Europe/Lisbon, 2026-10-25T01:10:00Z, 2026-10-25T01:30:00Z",
        // The night of 28 March 2027: at 1:00 they go on to 2:00.
        "22:00, 07:00, Europe/Lisbon, 2027-03-27T23:00:00Z, 2027-03-28T06:00:00Z",
    })
    void mailWaitsUntilTheQuietHoursAreOver(LocalTime from, LocalTime until, String zone, Instant at, Instant goes) {
        assertThat(new QuietHours(from, until, ZoneId.of(zone)).notBefore(at)).isEqualTo(goes);
    }

    @Test
    void nothingIsPutOffForEver() {
        ZoneId lisbon = ZoneId.of("Europe/Lisbon");
        Instant year = Instant.parse("2026-01-01T00:00:00Z");
        for (int minute = 0; minute < 366 * 24 * 60; minute += 7) {
            Instant at = year.plusSeconds(minute * 60L);
            QuietHours quiet = new QuietHours(LocalTime.of(21, 15), LocalTime.of(1, 45), lisbon);
            Instant goes = quiet.notBefore(at);
            assertThat(goes).isBetween(at, at.plusSeconds(6 * 3600));
            assertThat(quiet.notBefore(goes)).as("%s", at).isEqualTo(goes);
        }
    }
}
