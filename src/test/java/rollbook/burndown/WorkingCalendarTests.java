package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkingCalendarTests {
    // Easter Sunday is 5 April 2026, so Friday 3 and Monday 6 are holidays.
    private static final WorkingCalendar EASTER = new WorkingCalendar(
            Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY), Set.of(LocalDate.of(2026, 4, 3), LocalDate.of(2026, 4, 6)));

    // Read off a calendar. What comes on a day off counts as of the next working day.
    @ParameterizedTest
    @CsvSource({
        "2026-04-01, 2026-04-01, 0",
        "2026-04-01, 2026-04-02, 1",
        "2026-04-02, 2026-04-04, 1",
        "2026-04-02, 2026-04-07, 1",
        "2026-04-02, 2026-04-09, 3",
        "2026-04-04, 2026-04-08, 2",
        "2026-04-09, 2026-04-02, 0"
    })
    void countsTheWorkingDaysBetweenTwoDates(LocalDate from, LocalDate to, int days) {
        assertThat(EASTER.workingDaysBetween(from, to)).isEqualTo(days);
    }
}
