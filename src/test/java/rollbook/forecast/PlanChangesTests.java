package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.burndown.DayRef;
import rollbook.learning.ShotDay;

class PlanChangesTests {
    private static ForecastDay day(String unit, int number, ForecastDay.State state, long bytes, double minutes) {
        return new ForecastDay(
                unit, number, LocalDate.of(2026, 3, number), state, bytes, 0, true, new ShotDay.Minutes(minutes, 0));
    }

    private static ForecastDay planned(int number, long bytes, double minutes) {
        return day("Main", number, ForecastDay.State.PLANNED, bytes, minutes);
    }

    @Test
    void anotherFormatShowsWhereTheBytesOfAMinuteChangeByMoreThanAFifth() {
        List<ForecastDay> days =
                List.of(planned(1, 1000, 10), planned(2, 2380, 20), planned(3, 2000, 10), planned(4, 1900, 10));

        assertThat(PlanChanges.formatChanges(days))
                .containsExactly(
                        new PlanChanges.FormatChange(new DayRef("Main", 3, LocalDate.of(2026, 3, 3)), 119, 200));
    }

    @Test
    void daysWithoutAPlanAndCancelledOnesTellNoFormatAndEachUnitHasItsOwn() {
        List<ForecastDay> days = List.of(
                planned(1, 1000, 10),
                day("Second", 1, ForecastDay.State.PLANNED, 9000, 10),
                planned(2, 0, 0),
                day("Main", 3, ForecastDay.State.CANCELLED, 9000, 10),
                planned(4, 1000, 10));

        assertThat(PlanChanges.formatChanges(days)).isEmpty();
    }

    @Test
    void aDayIsAddedIfItsUnitHadNoDayOfThatNumberBefore() {
        ForecastDay moved = planned(1, 1000, 10);
        ForecastDay other = day("Second", 1, ForecastDay.State.PLANNED, 1, 1);
        ForecastDay before =
                new ForecastDay("Main", 1, LocalDate.of(2026, 2, 27), ForecastDay.State.PLANNED, 7, 0, true, null);

        assertThat(PlanChanges.added(List.of(moved, other), List.of(before))).containsExactly(other);
    }

    @Test
    void numbersAreWrittenAsRanges() {
        assertThat(NumberRanges.of(List.of(9, 1, 2, 3, 7, 10, 3))).isEqualTo("1–3, 7, 9–10");
        assertThat(NumberRanges.of(List.of(4))).isEqualTo("4");
        assertThat(NumberRanges.of(List.of())).isEmpty();
    }

    @Test
    void aTypicalRollIsTheOneThatReachesHalfOfAllBytes() {
        assertThat(TypicalRoll.bytes(List.of(1L, 1L, 1L, 1L, 10L, 11L))).isEqualTo(10);
        assertThat(TypicalRoll.bytes(List.of(0L, 0L))).isZero();
        assertThat(TypicalRoll.bytes(List.of())).isZero();
    }
}
