package rollbook.supplier;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.burndown.LeadTime;
import rollbook.burndown.WorkingCalendar;

/** June 2026 begins on a Monday; figures are read off the calendar. */
class PunctualityTests {
    private static final WorkingCalendar WEEKDAYS =
            new WorkingCalendar(Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY), Set.of());
    private static final LocalDate TODAY = june(19);

    private static LocalDate june(int day) {
        return LocalDate.of(2026, 6, day);
    }

    private static MediaSupplier supplier(@Nullable String country, DayOfWeek... workingDays) {
        return new MediaSupplier(
                new UUID(0, 1),
                new SupplierDetails(
                        "shop", country, Set.copyOf(Arrays.asList(workingDays)), LocalTime.of(16, 0), 0, 2, 4, ""),
                0);
    }

    private static Delivery delivery(int orderedOn, int expectedOn, @Nullable Integer completeOn, int way) {
        return new Delivery(
                new UUID(1, orderedOn),
                new UUID(0, 1),
                "SHUTTLE",
                4,
                completeOn == null ? 1 : 4,
                june(orderedOn),
                june(expectedOn),
                completeOn == null ? null : june(completeOn),
                way);
    }

    private static Punctuality of(MediaSupplier supplier, Delivery... deliveries) {
        return Punctuality.of(supplier, List.of(deliveries), WEEKDAYS, TODAY, TODAY);
    }

    @Test
    void whatCameTeachesInTheSuppliersWorkingDaysWithoutTheWay() {
        Punctuality punctuality = of(
                supplier(null),
                delivery(1, 3, 3, 0),
                // Friday to Tuesday: two working days, one of them the way to the set
                delivery(5, 8, 9, 1),
                delivery(8, 12, 11, 0));

        assertThat(punctuality.arrivals())
                .extracting(Punctuality.Arrival::leadWorkingDays)
                .containsExactly(2, 1, 3);
        assertThat(punctuality.arrivals())
                .extracting(Punctuality.Arrival::lateWorkingDays)
                .containsExactly(0, 1, -1);
        assertThat(punctuality.leadTime().stated()).isEqualTo(LeadTime.usually(2, 4));
        assertThat(punctuality.leadTime().deliveredAfter()).containsExactly(1, 2, 3);
    }

    @Test
    void whatIsStillToComeTeachesNothingYetButIsLate() {
        Punctuality punctuality = of(supplier(null), delivery(8, 12, null, 0), delivery(15, 22, null, 0));

        assertThat(punctuality.leadTime().deliveredAfter()).isEmpty();
        assertThat(punctuality.arrivals())
                .extracting(Punctuality.Arrival::leadWorkingDays)
                .containsOnlyNulls();
        // Friday 12 to Friday 19 are five working days.
        assertThat(punctuality.arrivals())
                .extracting(Punctuality.Arrival::lateWorkingDays)
                .containsExactly(5, 0);
    }

    @Test
    void whatCameOnTheDayOfTheOrderTookNoTime() {
        assertThat(of(supplier(null), delivery(8, 8, 8, 1)).leadTime().deliveredAfter())
                .containsExactly(0);
    }

    // Corpus Christi, 4 June 2026, and Portugal Day, 10 June, are public holidays there (Código do Trabalho, article
    // 234).
    @Test
    void theDaysAreThoseOfTheSuppliersCountryAndWeek() {
        assertThat(of(supplier("PT"), delivery(3, 5, 11, 0)).leadTime().deliveredAfter())
                .containsExactly(4);
        assertThat(of(supplier(null, DayOfWeek.MONDAY, DayOfWeek.THURSDAY), delivery(1, 5, 11, 0))
                        .leadTime()
                        .deliveredAfter())
                .containsExactly(3);
    }
}
