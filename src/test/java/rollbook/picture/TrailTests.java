package rollbook.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class TrailTests {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    @Test
    void aStayReachesFromItsFirstMomentToItsLastOrToNow() {
        Trail trail = trail(
                8,
                new Trail.Span(day(0), day(2), "", "Set until Wednesday."),
                new Trail.Span(day(4), null, "doubted", "Post since."));

        assertThat(trail.lanes().get(0).stays())
                .containsExactly(
                        new Trail.Stay("0.00%", "25.00%", "", "Set until Wednesday."),
                        new Trail.Stay("50.00%", "50.00%", "doubted", "Post since."));
        assertThat(trail.lanes().get(0).says()).isEqualTo("Set until Wednesday. Post since.");
    }

    @Test
    void aStayOfAMomentCanStillBeSeenAndDoesNotStickOut() {
        Trail trail = trail(8, new Trail.Span(day(0), day(0), "", ""), new Trail.Span(day(8), null, "", ""));

        assertThat(trail.lanes().get(0).stays().get(0).width()).isEqualTo("0.40%");
        assertThat(trail.lanes().get(0).stays().get(1).x()).isEqualTo("99.60%");
    }

    @Test
    void aMomentHasItsPlaceAndOneBeforeAnyStayBeginsTheAxis() {
        Trail trail = Trail.of(
                List.of(
                        new Trail.Line("Set", List.of(new Trail.Span(day(2), null, "", "")), List.of()),
                        new Trail.Line("erased", List.of(), List.of(new Trail.Dot(day(0), "moment", "Erased.")))),
                day(4),
                ZoneOffset.UTC);

        assertThat(trail.lanes().get(0).stays().get(0).x()).isEqualTo("50.00%");
        assertThat(trail.lanes().get(1).marks()).containsExactly(new Trail.Mark("0.00%", "moment", "Erased."));
    }

    @Test
    void aFewDaysHaveALabelEachWhereTheyBeginInTheProductionsZone() {
        Trail utc = trail(8, new Trail.Span(day(0), null, "", ""));
        assertThat(utc.ticks().stream().map(Trail.Tick::date))
                .as("every third day, but for the last label, which would meet the one at the end")
                .containsExactly(date(2), date(5));
        assertThat(utc.ticks().get(1).x()).isEqualTo("37.50%");

        Trail east = Trail.of(
                List.of(new Trail.Line("Set", List.of(new Trail.Span(day(0), null, "", "")), List.of())),
                day(2),
                ZoneId.of("Asia/Tokyo"));
        // Midnight of the 3rd there is 15 hours after the start: 15 of 48.
        assertThat(east.ticks().get(1)).isEqualTo(new Trail.Tick("31.25%", date(3)));
    }

    @Test
    void anItemOfThisMomentHasATrail() {
        Trail trail = trail(0, new Trail.Span(day(0), null, "", ""));

        assertThat(trail.lanes().get(0).stays().get(0).x()).isEqualTo("0.00%");
        assertThat(trail.ticks()).hasSize(1);
    }

    private static Trail trail(int days, Trail.Span... spans) {
        return Trail.of(List.of(new Trail.Line("Set", List.of(spans), List.of())), day(days), ZoneOffset.UTC);
    }

    private static Instant day(int days) {
        return START.plusSeconds(86_400L * days);
    }

    private static LocalDate date(int day) {
        return LocalDate.of(2026, 3, day);
    }
}
