package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static rollbook.burndown.Played.EVERY_DAY;
import static rollbook.burndown.Played.GB;
import static rollbook.burndown.Played.WEEKDAYS;
import static rollbook.burndown.Played.date;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeadTimeTests {
    private static final LeadTime TWO_TO_FOUR = LeadTime.of(new TreeMap<>(Map.of(2, 0.5, 3, 0.3, 4, 0.2)));

    @ParameterizedTest
    @CsvSource({"0.001, 2", "0.5, 2", "0.501, 3", "0.8, 3", "0.81, 4", "1, 4"})
    void theDaysOfAChanceAreTheFewestWithinWhichItComes(double chance, int days) {
        assertThat(TWO_TO_FOUR.days(chance)).isEqualTo(days);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "0, 5", "1, 2", "3, 4", "5, 8", "5, 20", "10, 30"})
    void whatASupplierSaysHoldsHalfOfTheTimeAndNineTimesOfTen(int median, int nineOfTenWithin) {
        LeadTime leadTime = LeadTime.usually(median, nineOfTenWithin);

        assertThat(leadTime.days(0.5)).isEqualTo(median);
        assertThat(leadTime.days(0.9)).isEqualTo(nineOfTenWithin);
        assertThat(chanceOf(leadTime.chances(), median)).isEqualTo(0.5, within(1e-9));
        assertThat(chanceOf(leadTime.chances(), nineOfTenWithin)).isEqualTo(0.9, within(1e-9));
    }

    // ln(d + 1) is normal with median ln 6 and spread ln(9/6) / 1.281552 = 0.316386: 6 days are within it with
    // Phi(ln(7/6) / 0.316386) = Phi(0.487223) = 0.686950, computed by hand and a table of the normal distribution.
    @Test
    void betweenTheTwoTheDaysAreLogNormal() {
        assertThat(chanceOf(LeadTime.usually(5, 8).chances(), 6)).isEqualTo(0.68695, within(1e-4));
    }

    @Test
    void aSupplierWhoIsAlwaysOnTimeIsCertain() {
        assertThat(LeadTime.usually(4, 4)).isEqualTo(LeadTime.certain(4));
    }

    @Test
    void impossibleLeadTimesAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> LeadTime.usually(5, 4));
        assertThatIllegalArgumentException().isThrownBy(() -> LeadTime.certain(-1));
        assertThatIllegalArgumentException().isThrownBy(() -> LeadTime.of(new TreeMap<>(Map.of(1, 0.5, 2, 0.4))));
    }

    // Ordered on day 1, so it might have come on day 3. On the morning of day 4, days 4 and 5 are left, with chances of
    // 0.3 and 0.2: 3 of 5 and 2 of 5.
    @Test
    void whatHasntComeYetComesOnTheDaysThatAreLeftWithTheirChances() {
        ArrivalDates dates = new ArrivalDates(arrival(date(1), TWO_TO_FOUR, EVERY_DAY), date(4));

        assertThat(dates.by(0.6)).isEqualTo(date(4));
        assertThat(dates.by(0.61)).isEqualTo(date(5));
        assertThat(dates.usual()).isEqualTo(date(4));
        // The dates are days 4, 5 and 6; what comes on day 4 is there for day 5.
        assertThat(dates.usableFrom(new double[] {0.59, 0.61, 0.99}, List.of(date(4), date(5), date(6))))
                .containsExactly(1, 2, 2);
    }

    @ParameterizedTest
    @CsvSource({"4, false", "5, false", "6, true"})
    void anOrderIsOverdueWhenItShouldHaveComeNineTimesOfTen(int today, boolean overdue) {
        assertThat(new ArrivalDates(arrival(date(1), TWO_TO_FOUR, EVERY_DAY), date(today)).overdue())
                .isEqualTo(overdue);
    }

    @Test
    void anOrderWhoseDaysHaveAllPassedIsCountedToday() {
        assertThat(new ArrivalDates(arrival(date(1), TWO_TO_FOUR, EVERY_DAY), date(9)).by(1))
                .isEqualTo(date(9));
    }

    // Friday, 5 June 2026, and three working days: Wednesday.
    @Test
    void onlyWorkingDaysCount() {
        assertThat(new ArrivalDates(arrival(date(5), LeadTime.certain(3), WEEKDAYS), date(5)).usual())
                .isEqualTo(LocalDate.of(2026, 6, 10));
    }

    @Test
    void whatComesAfterTheLastDateIsNeverThere() {
        ArrivalDates dates = new ArrivalDates(arrival(date(1), LeadTime.certain(6), EVERY_DAY), date(1));

        assertThat(dates.usableFrom(new double[] {0.5}, List.of(date(1), date(6))))
                .containsExactly(3);
        assertThat(dates.usableFrom(new double[] {0.5}, List.of(date(1), date(7))))
                .containsExactly(2);
        assertThat(dates.usableFrom(new double[] {0.5}, List.of(date(1), date(8))))
                .containsExactly(1);
    }

    private static Pool.Arrival arrival(LocalDate orderedOn, LeadTime leadTime, WorkingCalendar calendar) {
        return new Pool.Arrival(orderedOn, leadTime, calendar, 1, 1000 * GB);
    }

    private static double chanceOf(SortedMap<Integer, Double> chances, int days) {
        return chances.headMap(days + 1).values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }
}
