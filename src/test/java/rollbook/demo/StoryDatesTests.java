package rollbook.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Calendar facts are from the proleptic Gregorian calendar: 4 March 2026 is a Wednesday. */
class StoryDatesTests {
    @Test
    void onAWorkingDayTheEleventhDayIsToday() {
        StoryDates dates = startedAt("2026-03-04T15:30");
        assertThat(dates.workDate()).isEqualTo(LocalDate.of(2026, 3, 4)).isEqualTo(dates.dateOfMainDay(11));
        assertThat(dates.callOf(11)).isEqualTo(dates.now().minus(StoryDates.SHOT_TODAY));
    }

    @Test
    void onAWeekendItIsTheLastWorkingDay() {
        StoryDates dates = startedAt("2026-03-08T11:00");
        assertThat(dates.dateOfMainDay(11)).isEqualTo(LocalDate.of(2026, 3, 6));
        assertThat(LocalDate.ofInstant(dates.now(), dates.zone())).isEqualTo(LocalDate.of(2026, 3, 6));
    }

    @Test
    void beforeDawnItIsStillTheDayBefore() {
        StoryDates dates = startedAt("2026-03-04T03:00");
        assertThat(dates.dateOfMainDay(11)).isEqualTo(LocalDate.of(2026, 3, 3));
        assertThat(dates.callOf(11)).isBefore(dates.now());
    }

    @Test
    void dayEightSlippedByOneWorkingDayAndTheRestWithIt() {
        StoryDates dates = startedAt("2026-03-04T15:30");
        List<LocalDate> entered = dates.enteredDates();
        for (int day = 1; day < 8; day++) {
            assertThat(dates.dateOfMainDay(day)).isEqualTo(entered.get(day - 1));
        }
        for (int day = 8; day < 24; day++) {
            assertThat(dates.dateOfMainDay(day)).isEqualTo(entered.get(day));
        }
    }

    /** At whatever hour of a fortnight the demo is first started, across a change of the clocks too (29 March 2026). */
    @Test
    void atEveryHourTheStoryEndsBeforeTheStartAndOnItsOwnDay() {
        Instant first = startedAt("2026-03-20T00:30").now();
        for (int hour = 0; hour < 14 * 24; hour++) {
            Instant started = first.plus(Duration.ofHours(hour));
            StoryDates dates = StoryDates.endingAt(started, Show.ZONE);
            assertThat(dates.now()).as("started at %s", started).isBefore(started);
            assertThat(dates.workDate().getDayOfWeek())
                    .as("started at %s", started)
                    .isNotIn(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
            assertThat(dates.callOf(11))
                    .as("started at %s: after the last documents of day 10", started)
                    .isAfter(dates.callOf(10).plus(Duration.ofHours(14)));
            assertThat(LocalDate.ofInstant(dates.callOf(11), Show.ZONE))
                    .as("started at %s", started)
                    .isEqualTo(dates.workDate());
        }
    }

    private static StoryDates startedAt(String localTime) {
        return StoryDates.endingAt(
                LocalDateTime.parse(localTime).atZone(Show.ZONE).toInstant(), Show.ZONE);
    }
}
