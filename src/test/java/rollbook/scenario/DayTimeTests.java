package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked by hand. */
class DayTimeTests {
    @ParameterizedTest
    @CsvSource({
        "0, 00:00, 0",
        "74460000, 20:41, 0",
        "74489999, 20:41, 0",
        "74490000, 20:42, 0",
        "86369999, 23:59, 0",
        "86370000, 00:00+1, 1",
        "88860000, 00:41+1, 1",
        "172800000, 00:00+2, 2",
    })
    void timesAreToTheNearestMinuteAndSayHowManyDaysLater(long millis, String clock, long days) {
        assertThat(DayTime.clock(millis)).isEqualTo(clock);
        assertThat(DayTime.daysAfter(millis)).isEqualTo(days);
    }
}
