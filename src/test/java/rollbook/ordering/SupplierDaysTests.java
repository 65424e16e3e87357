package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.burndown.WorkingCalendar;

class SupplierDaysTests {
    private static final Set<DayOfWeek> WEEKEND = Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private static SupplierDays germany(int deliveryWorkingDays) {
        return new SupplierDays(
                new WorkingCalendar(WEEKEND, PublicHolidays.of("DE", 2026, 2027)),
                LocalTime.of(15, 0),
                BERLIN,
                deliveryWorkingDays);
    }

    // 15:00 in Berlin is 13:00 UTC in summer and 14:00 UTC in winter. 5 June 2026 and 11 December 2026 are Fridays.
    @ParameterizedTest
    @CsvSource({
        "2026-06-05T12:59:59Z, 2026-06-05",
        "2026-06-05T13:00:00Z, 2026-06-08",
        "2026-06-06T09:00:00Z, 2026-06-08",
        "2026-12-11T13:59:59Z, 2026-12-11",
        "2026-12-11T14:00:00Z, 2026-12-14",
        // late in the evening of Thursday in UTC it is Friday there
        "2026-06-04T23:30:00Z, 2026-06-05"
    })
    void anOrderCountsAsOfTheDayUntilItsHour(Instant moment, LocalDate countsAsOf) {
        assertThat(germany(0).countsAsOf(moment)).isEqualTo(countsAsOf);
    }

    @Test
    void theHourIsTheSuppliers() {
        assertThat(germany(0).closesAt(LocalDate.of(2026, 6, 5))).isEqualTo(Instant.parse("2026-06-05T13:00:00Z"));
        assertThat(germany(0).closesAt(LocalDate.of(2026, 12, 11))).isEqualTo(Instant.parse("2026-12-11T14:00:00Z"));
    }

    // Easter Sunday is 5 April 2026, so Friday 3 and Monday 6 are holidays in Germany. From Thursday 2 three working
    // days
    // are Tuesday 7, Wednesday 8, Thursday 9; a day more to the set.
    @Test
    void leadTimeAndDeliveryAreWorkingDays() {
        LocalDate thursday = LocalDate.of(2026, 4, 2);

        assertThat(germany(0).arrival(thursday, 3)).isEqualTo(LocalDate.of(2026, 4, 9));
        assertThat(germany(1).arrival(thursday, 3)).isEqualTo(LocalDate.of(2026, 4, 10));
        assertThat(germany(0).nextOrderDay(thursday)).isEqualTo(LocalDate.of(2026, 4, 7));
    }

    // Dates as public calendars have them, from memory: Christmas on fixed dates, Easter Monday 6 April 2026; 28
    // December
    // 2026 stands in for Boxing Day, a Saturday, in Great Britain; 3 July 2026 for the 4th, a Saturday, in the United
    // States; Bastille Day in France, a Tuesday.
    @ParameterizedTest
    @CsvSource({
        "DE, 2026-04-06, true",
        "DE, 2026-12-25, true",
        "DE, 2026-07-14, false",
        "GB, 2026-12-25, true",
        "GB, 2026-12-28, true",
        "GB, 2026-07-03, false",
        "US, 2026-07-03, true",
        "US, 2026-11-26, true",
        "US, 2026-04-06, false",
        "FR, 2026-07-14, true",
        "FR, 2026-12-28, false"
    })
    void publicHolidaysAreThoseOfTheCountry(String country, LocalDate date, boolean holiday) {
        assertThat(PublicHolidays.of(country, 2026, 2026).contains(date)).isEqualTo(holiday);
    }

    @Test
    void countriesAreNamedByTheirCodes() {
        assertThat(PublicHolidays.countries())
                .contains("DE", "FR", "GB", "US")
                .allMatch(code -> code.matches("[A-Z]{2}"));
        assertThatThrownBy(() -> PublicHolidays.of("XX", 2026, 2026)).isInstanceOf(IllegalArgumentException.class);
    }
}
