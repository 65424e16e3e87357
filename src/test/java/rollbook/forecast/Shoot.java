package rollbook.forecast;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

/** Makes forecast inputs for tests. Days follow each other from Monday, 1 June 2026; bytes are given in GB. */
final class Shoot {
    static final long GB = 1_000_000_000L;
    static final LocalDate DAY_1 = LocalDate.of(2026, 6, 1);
    static final WorkingCalendar EVERY_DAY = new WorkingCalendar(Set.of(), Set.of());
    static final WorkingCalendar WEEKDAYS = new WorkingCalendar(Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY), Set.of());
    static final UUID LEG = new UUID(0, 1);
    static final Currency EURO = Currency.getInstance("EUR");

    private Shoot() {}

    static ForecastDay planned(int number, long plannedGb) {
        return day(number, ForecastDay.State.PLANNED, plannedGb, 0);
    }

    static ForecastDay wrapped(int number, long plannedGb, long actualGb) {
        return day(number, ForecastDay.State.WRAPPED, plannedGb, actualGb);
    }

    static ForecastDay shooting(int number, long plannedGb, long actualGb) {
        return day(number, ForecastDay.State.SHOOTING, plannedGb, actualGb);
    }

    static ForecastDay day(int number, ForecastDay.State state, long plannedGb, long actualGb) {
        return new ForecastDay("main", number, date(number), state, plannedGb * GB, actualGb * GB);
    }

    static LocalDate date(int dayNumber) {
        return DAY_1.plusDays(dayNumber - 1);
    }

    /** Planned days, numbered from first to last. */
    static List<ForecastDay> plan(int first, int last, long plannedGb) {
        List<ForecastDay> days = new ArrayList<>();
        for (int number = first; number <= last; number++) {
            days.add(planned(number, plannedGb));
        }
        return days;
    }

    static ForecastLeg.Item item(long capacityGb, long usedGb) {
        return new ForecastLeg.Item("DRIVE-01", capacityGb * GB, usedGb * GB, true, null, null);
    }

    static ForecastLeg keptLeg(ForecastLeg.Item... items) {
        return leg(null, Share.WHOLE, List.of(items), List.of(), null);
    }

    static ForecastLeg leg(
            @Nullable Integer returnAfterDays,
            Share kept,
            List<ForecastLeg.Item> items,
            List<ForecastLeg.Arrival> arrivals,
            @Nullable Supply supply) {
        return new ForecastLeg(LEG, "SHUTTLE", returnAfterDays, kept, null, items, arrivals, List.of(), 0, supply);
    }

    static Supply supply(long itemGb, int packSize, int leadTimeWorkingDays, int safetyWorkingDays) {
        return new Supply(itemGb * GB, packSize, leadTimeWorkingDays, safetyWorkingDays, 18_050, EURO);
    }

    static StorageForecast forecast(int todayIsDay, List<ForecastDay> days, ForecastLeg... legs) {
        return forecast(date(todayIsDay), days, Share.WHOLE, EVERY_DAY, legs);
    }

    static StorageForecast forecast(
            LocalDate today, List<ForecastDay> days, Share fillLevel, WorkingCalendar calendar, ForecastLeg... legs) {
        return SimpleRatioForecast.of(new ForecastInput(today, days, List.of(legs), fillLevel, calendar));
    }

    static LegForecast only(StorageForecast forecast) {
        return forecast.legs().get(0);
    }
}
