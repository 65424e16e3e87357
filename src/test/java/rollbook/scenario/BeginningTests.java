package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BeginningTests {
    /** Of the hours that were saved last, those are kept that still make sense from now on. */
    @ParameterizedTest(name = "at {0} of {1} to {2} with a break {3}")
    @CsvSource(
            nullValues = "-",
            value = {
                "15:00, 08:00, 18:30, 13:00-14:00, 18:30, -",
                "12:00, 08:00, 18:30, 13:00-14:00, 18:30, 13:00-14:00",
                "07:00, 08:00, 18:30, 13:00-14:00, 18:30, 13:00-14:00",
                // An hour at least is played.
                "18:00, 08:00, 18:30, -, 21:00, -",
                "22:18, 08:00, 18:30, 13:00-14:00, 01:18, -",
                "23:30, 08:00, 18:30, -, 02:30, -",
                // Nights: before and after midnight.
                "22:00, 18:00, 04:00, 23:00-23:30, 04:00, 23:00-23:30",
                "01:00, 18:00, 04:00, 23:00-23:30, 04:00, -",
                "03:30, 18:00, 04:00, -, 06:30, -"
            })
    void aDayThatIsBeingShotGoesOnUntilItsWrapOrAFewHoursLonger(
            String now, String call, String wrap, String breaks, String wrapThen, String breaksThen) {
        Map<String, String> last = Map.of(
                Figure.CALL.key(), call,
                Figure.WRAP.key(), wrap,
                Figure.BREAKS.key(), breaks == null ? "" : breaks);
        Map<String, Begun> begun = Beginning.of(atNight(now), last, "Last", TestFacts.EUR);

        assertThat(begun.get(Figure.CALL.key()).value()).isEqualTo(now);
        assertThat(begun.get(Figure.WRAP.key()).value()).isEqualTo(wrapThen);
        assertThat(begun.get(Figure.BREAKS.key()).value()).isEqualTo(breaksThen == null ? "" : breaksThen);
    }

    private static DayFacts atNight(String now) {
        DayFacts day = TestFacts.DAY;
        return new DayFacts(
                day.dayId(),
                day.dayNumber(),
                day.unitName(),
                day.date(),
                day.cameras(),
                day.cards(),
                day.readers(),
                day.adapters(),
                day.destinations(),
                List.of(),
                new DayFacts.Tonight(now, 0, List.of(), List.of()));
    }
}
