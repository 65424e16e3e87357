package rollbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.schedule.DayOutlooks.Expected;

class DayBarTests {

    @Test
    void theLongestOfPlanAndRecordingIsTheWholeLength() {
        assertThat(bar(DayState.WRAPPED, 400, 500, null)).isEqualTo(new DayBar("80.00%", "100.00%", "0.00%"));
        assertThat(bar(DayState.WRAPPED, 400, 100, null)).isEqualTo(new DayBar("100.00%", "25.00%", "0.00%"));
    }

    @Test
    void whatIsStillExpectedGoesOnFromWhatIsRecordedWhileTheDayIsntOver() {
        Expected expected = new Expected(100, 300, 400);

        assertThat(bar(DayState.SHOOTING, 400, 100, expected)).isEqualTo(new DayBar("100.00%", "25.00%", "50.00%"));
        assertThat(bar(DayState.SHOOTING, 400, 350, expected)).isEqualTo(new DayBar("100.00%", "87.50%", "0.00%"));
        assertThat(bar(DayState.WRAPPED, 400, 100, expected).expected()).isEqualTo("0.00%");
    }

    @Test
    void aDayWithoutAnythingIsEmpty() {
        assertThat(bar(DayState.PLANNED, 0, 0, null)).isEqualTo(new DayBar("0.00%", "0.00%", "0.00%"));
    }

    private static DayBar bar(DayState state, long planned, long recorded, @Nullable Expected expected) {
        return DayBar.of(new UnitBars.Day(
                new UUID(0, 1), 1, LocalDate.of(2026, 3, 2), state, planned, recorded, 0, expected, false));
    }
}
