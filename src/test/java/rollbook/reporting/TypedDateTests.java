package rollbook.reporting;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedDateTests {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 27);

    @ParameterizedTest
    @CsvSource({
        "2026-11-05, 2026-11-05",
        "5.11.2026, 2026-11-05",
        "05/11/2026, 2026-11-05",
        "5 Nov 2026, 2026-11-05",
        "5 november 2026, 2026-11-05",
        "5nov, 2026-11-05",
        "5.11., 2026-11-05",
        "3 Jan, 2027-01-03",
        "3/1, 2027-01-03",
        "30 Jun, 2026-06-30",
        "29 Feb 2024, 2024-02-29",
    })
    void dayStandsBeforeMonthAndAMissingYearIsTheNearest(String typed, LocalDate date) {
        assertThat(TypedDate.read(typed, TODAY)).contains(date);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "A014", "day 11", "31.2.2026", "13 Foo", "2026-13-01", "11", "11/27/2026", "0.0."})
    void whatIsNoDateIsNone(String typed) {
        assertThat(TypedDate.read(typed, TODAY)).isEmpty();
    }
}
