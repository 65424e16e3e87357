package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.burndown.Kept;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.burndown.WorkingCalendar;
import rollbook.learning.Habits;
import rollbook.ordering.Hire;
import rollbook.ordering.Offer;
import rollbook.ordering.PurchasePlan;
import rollbook.ordering.ServiceLevel;
import rollbook.ordering.Supplier;
import rollbook.ordering.SupplierDays;
import rollbook.quantity.Share;

/** A show of thirty days of about 1 TB, one pool, a supplier who works every day. */
class SimulatedForecastTests {
    private static final long TB = 1_000_000_000_000L;
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);
    private static final UUID POOL = new UUID(0, 1);
    private static final Supplier SUPPLIER = new Supplier(
            "shop",
            LeadTime.usually(2, 3),
            new SupplierDays(
                    new WorkingCalendar(Set.<DayOfWeek>of(), Set.of()), LocalTime.of(16, 0), ZoneOffset.UTC, 0),
            1_000);

    private static Offer offer(long itemBytes, @Nullable Hire hire) {
        return new Offer(POOL, "Shuttle", POOL, itemBytes, 1, 50_000, Currency.getInstance("EUR"), hire, SUPPLIER);
    }

    private static StorageForecast forecast(boolean wholeRolls, Offer offer) {
        Pool pool = new Pool(
                POOL,
                "Shuttle",
                wholeRolls,
                TB / 4,
                wholeRolls ? null : 3,
                Kept.WHOLE,
                List.of(new Pool.Item("SHUTTLE-1", 2 * TB, 0, true, null, null)),
                List.of(),
                List.of(),
                0);
        List<ForecastDay> days = IntStream.rangeClosed(1, 30)
                .mapToObj(number -> new ForecastDay(
                        "Main", number, TODAY.plusDays(number + 3), ForecastDay.State.PLANNED, TB, 0, true, null))
                .toList();
        return SimulatedForecast.of(new ForecastInput(
                TODAY,
                Instant.parse("2026-03-02T00:00:00Z"),
                days,
                List.of(new ForecastInput.Leg(pool, Reduction.NONE)),
                List.of(offer),
                List.of(),
                Habits.USUAL,
                Share.percent(100),
                ServiceLevel.USUAL,
                7,
                500));
    }

    @Test
    void anItemThatHoldsNoRollIsNoSupply() {
        LegForecast leg = forecast(true, offer(TB / 5, null)).legs().get(0);

        assertThat(leg.advice()).isNull();
        assertThat(leg.need()).isEqualTo(OrderFlag.NO_SUPPLY);
    }

    @Test
    void hiringIsPlannedWhereItIsCheaperAndSaysWhatItSaves() {
        StorageForecast forecast = forecast(false, offer(2 * TB, new Hire(1_000, 1)));

        PurchasePlan plan = Objects.requireNonNull(forecast.plan());
        assertThat(plan.lines()).isNotEmpty().allMatch(PurchasePlan.Line::hired);
        assertThat(forecast.costWithoutHireMinorUnits()).isGreaterThan(plan.costMinorUnits());
    }

    @Test
    void whatIsDearerToHireIsBoughtAndNothingIsCompared() {
        StorageForecast forecast = forecast(false, offer(2 * TB, new Hire(90_000, 4)));

        assertThat(Objects.requireNonNull(forecast.plan()).lines()).isNotEmpty().noneMatch(PurchasePlan.Line::hired);
        assertThat(forecast.costWithoutHireMinorUnits()).isNull();
    }

    @Test
    void whatWillBeRecordedIsForecastDayByDayAsATotal() {
        RecordingOutlook recording = forecast(false, offer(2 * TB, null)).recording();

        assertThat(recording.points()).hasSize(30);
        assertThat(recording.points().get(9).plannedBytes()).isEqualTo(10 * TB);
        // Before any day is known the median of a day is its plan; that of a total lies above, as factors are skew.
        assertThat((double) recording.points().get(0).totalBytes().p50() / TB).isBetween(0.9, 1.1);
        assertThat((double) recording.points().get(9).totalBytes().p50() / TB).isBetween(9.5, 11.5);
        for (int i = 1; i < 30; i++) {
            assertThat(recording.points().get(i).totalBytes().p10())
                    .isGreaterThan(recording.points().get(i - 1).totalBytes().p10());
        }
    }
}
