package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;

/** Worked by hand from the definitions of coverage, pinball loss and bias. */
class TrackRecordTests {
    private static LocalDate date(int number) {
        return LocalDate.of(2026, 3, 1).plusDays(number);
    }

    private static ForecastDay shot(int number, long planned, long actual) {
        return new ForecastDay("Main", number, date(number), ForecastDay.State.WRAPPED, planned, actual, true, null);
    }

    private static ForecastDay notShot(int number, ForecastDay.State state) {
        return new ForecastDay("Main", number, date(number), state, 100, 0, true, null);
    }

    /** Made on the morning of the day of that number; each later day adds the same to the total. */
    private static PastForecast forecast(int number, int days, long p10, long p50, long p90) {
        return new PastForecast(
                date(number),
                new RecordingOutlook(IntStream.rangeClosed(1, days)
                        .mapToObj(lead -> new RecordingOutlook.Point(
                                new DayRef("Main", number + lead - 1, date(number + lead - 1)),
                                100L * lead,
                                new Band(p10 * lead, p50 * lead, p50 * lead, p50 * lead, p90 * lead),
                                null))
                        .toList()));
    }

    @Test
    void aForecastIsScoredOnTheTotalOfItsNextDays() {
        List<ForecastDay> days = List.of(shot(1, 100, 120), shot(2, 100, 90));

        TrackRecord record = TrackRecord.of(List.of(forecast(1, 2, 80, 100, 110)), days);

        assertThat(record.leads()).extracting(TrackRecord.Lead::days).containsExactly(1, 2);
        TrackRecord.Lead next = Objects.requireNonNull(record.nextDay());
        // 120 is above 110: 0.1 x 40 + 0.5 x 20 + 0.9 x 10 = 4 + 10 + 9 = 23, a third of that over 100 planned.
        assertThat(next.coverage().inside()).isZero();
        assertThat(next.coverage().of()).isOne();
        assertThat(next.loss()).isCloseTo(23 / 300.0, within(1e-12));
        // The plan misses by 20 from below at each quantile: (0.1 + 0.5 + 0.9) x 20 / 3 / 100.
        assertThat(next.planLoss()).isCloseTo(0.1, within(1e-12));
        assertThat(next.ratioLoss()).as("nothing was shot before").isEqualTo(next.planLoss());
        assertThat(next.bias()).isCloseTo(Math.log(100 / 120.0), within(1e-12));
        // Both days: 210 of 200 planned, forecast 160, 200, 220: 0.1 x 50 + 0.5 x 10 + 0.1 x 10 = 11.
        TrackRecord.Lead two = record.leads().get(1);
        assertThat(two.coverage().inside()).isOne();
        assertThat(two.loss()).isCloseTo(11 / 600.0, within(1e-12));
    }

    @Test
    void thePlainGuessKnowsOnlyTheDaysBeforeTheForecast() {
        List<ForecastDay> days = List.of(shot(1, 100, 150), shot(2, 100, 130));

        TrackRecord record = TrackRecord.of(List.of(forecast(2, 1, 80, 100, 110)), days);

        // 1.5 x 100 against 130: each quantile is 20 too high, (0.9 + 0.5 + 0.1) x 20 / 3 / 100.
        assertThat(Objects.requireNonNull(record.nextDay()).ratioLoss()).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void nothingIsComparedBeforeTheDayIsWrappedAndCompleteAndNothingAcrossACancelledDay() {
        List<ForecastDay> days = List.of(
                notShot(1, ForecastDay.State.SHOOTING),
                new ForecastDay("Main", 2, date(2), ForecastDay.State.WRAPPED, 100, 50, false, null),
                shot(3, 100, 100),
                notShot(4, ForecastDay.State.CANCELLED),
                shot(5, 100, 100));
        List<PastForecast> past = List.of(
                forecast(1, 1, 1, 1, 1),
                forecast(2, 1, 1, 1, 1),
                forecast(3, 3, 80, 100, 120),
                forecast(4, 2, 1, 1, 1));

        TrackRecord record = TrackRecord.of(past, days);

        assertThat(record.leads()).hasSize(1);
        assertThat(Objects.requireNonNull(record.nextDay()).coverage().of()).isOne();
    }

    @Test
    void ofSeveralForecastsBeforeADayTheLastCounts() {
        PastForecast onFriday =
                new PastForecast(date(-2), forecast(1, 1, 1, 1, 1).recording());

        TrackRecord record =
                TrackRecord.of(List.of(onFriday, forecast(1, 1, 80, 100, 110)), List.of(shot(1, 100, 100)));

        TrackRecord.Lead next = Objects.requireNonNull(record.nextDay());
        assertThat(next.coverage().inside()).isOne();
        assertThat(next.coverage().of()).isOne();
    }

    @Test
    void tenComparisonsAreEnoughAndNineAreNot() {
        List<ForecastDay> days = new ArrayList<>();
        List<PastForecast> past = new ArrayList<>();
        for (int number = 1; number <= 10; number++) {
            assertThat(Objects.requireNonNullElse(
                                    TrackRecord.of(past, days).nextDay(),
                                    new TrackRecord.Lead(1, new rollbook.learning.Coverage(0, 0), 0, 0, 0, null))
                            .isEnough())
                    .isFalse();
            days.add(shot(number, 100, 100));
            past.add(forecast(number, 1, 90, 100, 110));
        }
        assertThat(Objects.requireNonNull(TrackRecord.of(past, days).nextDay()).isEnough())
                .isTrue();
    }
}
