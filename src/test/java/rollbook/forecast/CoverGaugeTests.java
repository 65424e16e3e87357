package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;
import rollbook.burndown.PoolOutlook;

class CoverGaugeTests {

    @Test
    void placesAreSharesOfTheDaysToCome() {
        CoverGauge gauge = CoverGauge.of(20, new Band(8, 9, 10, 11, 14), 3);

        assertThat(gauge).isEqualTo(new CoverGauge(0.4, 0.5, 0.7, 0.15));
    }

    @Test
    void anOrderThatComesAfterTheLastDayOrFromNowhereHasNoPlace() {
        assertThat(CoverGauge.of(4, Band.certain(2), 5).lead()).isNull();
        assertThat(CoverGauge.of(4, Band.certain(2), null).lead()).isNull();
        assertThat(CoverGauge.of(4, Band.certain(2), 4).lead()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            1  , 0 1
            6  , 0 1 2 3 4 5 6
            7  , 0 2 4 7
            19 , 0 5 10 15 19
            21 , 0 5 10 15 21
            30 , 0 5 10 15 20 25 30
            34 , 0 10 20 34
            65 , 0 20 40 65
            """)
    void ticksAreRoundAndEndWithTheLastDay(int daysToCome, String days) {
        assertThat(CoverGauge.ticks(daysToCome).stream()
                        .map(tick -> Integer.toString(tick.days()))
                        .collect(Collectors.joining(" ")))
                .isEqualTo(days);
        assertThat(CoverGauge.ticks(daysToCome)
                        .get(CoverGauge.ticks(daysToCome).size() - 1)
                        .share())
                .isEqualTo(1);
    }

    @Test
    void anOrderCountsFromTheDayAfterItComes() {
        PoolOutlook pool = pool(1, 2, 4);

        assertThat(CoverGauge.daysUntil(date(1), pool)).isEqualTo(1);
        assertThat(CoverGauge.daysUntil(date(3), pool)).isEqualTo(2);
        assertThat(CoverGauge.daysUntil(date(4), pool)).isEqualTo(3);
    }

    private static LocalDate date(int day) {
        return LocalDate.of(2026, 3, day);
    }

    /** Shot on these days of March. */
    private static PoolOutlook pool(int... days) {
        List<PoolOutlook.Point> points = Arrays.stream(days)
                .mapToObj(day -> new PoolOutlook.Point(
                        date(day), List.of(new DayRef("Main", day, date(day))), Band.NONE, Band.NONE, 0, Band.NONE, 0))
                .toList();
        return new PoolOutlook(
                new UUID(0, 1),
                "Tape",
                0,
                0,
                0,
                points,
                days.length,
                Band.NONE,
                0,
                new PoolOutlook.Causes(0, 0, 0),
                Band.NONE,
                Band.NONE,
                Band.NONE,
                List.of(),
                0,
                0);
    }
}
