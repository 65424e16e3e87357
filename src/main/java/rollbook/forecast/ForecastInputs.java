package rollbook.forecast;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.burndown.WorkingCalendar;
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.production.CameraUnits;
import rollbook.production.Production;
import rollbook.production.Productions;
import rollbook.production.Unit;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.quantity.Share;
import rollbook.schedule.PlannedMinutes;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;

/** Gathers what a production's forecast is made from, in a fixed number of queries. */
@Component
class ForecastInputs {
    private static final int SECONDS_PER_MINUTE = 60;

    private final Productions productions;
    private final CameraUnits units;
    private final ShootingDays days;
    private final RecordingFormats formats;
    private final RecordedRows rows;
    private final LegPools pools;
    private final Supplies supplies;
    private final Clock clock;

    ForecastInputs(
            Productions productions,
            CameraUnits units,
            ShootingDays days,
            RecordingFormats formats,
            RecordedRows rows,
            LegPools pools,
            Supplies supplies,
            Clock clock) {
        this.productions = productions;
        this.units = units;
        this.days = days;
        this.formats = formats;
        this.rows = rows;
        this.pools = pools;
        this.supplies = supplies;
        this.clock = clock;
    }

    ForecastInput gather(UUID productionId) {
        Production production = productions.get(productionId);
        LocalDate today = LocalDate.ofInstant(clock.instant(), production.zone());
        Map<UUID, DataRate> rates = rates(productionId);
        List<RecordedBytes> rolls = rows.rolls(productionId).stream()
                .map(roll -> new RecordedBytes(roll, bytes(roll, rates)))
                .toList();
        return new ForecastInput(
                today,
                days(productionId, rates, rolls),
                pools.legs(production, today, rolls),
                Share.percent(supplies.fillLevel(productionId).percent()),
                calendar(production));
    }

    private Map<UUID, DataRate> rates(UUID productionId) {
        return formats.list(productionId).stream()
                .collect(Collectors.toMap(
                        NamedFormat::id, format -> format.format().dataRate()));
    }

    /** A roll with its bytes as recorded: measured, or as many as its minutes make in its format. */
    record RecordedBytes(RecordedRows.RecordedRoll roll, long bytes) {}

    private static long bytes(RecordedRows.RecordedRoll roll, Map<UUID, DataRate> rates) {
        if (roll.sizeBytes() != null) {
            return roll.sizeBytes();
        }
        return roll.minutes() == null ? 0 : bytes(roll.minutes(), roll.formatId(), rates);
    }

    /** A format that isn't known by its rate would silently count as nothing, so it is an error. */
    private static long bytes(BigDecimal minutes, UUID formatId, Map<UUID, DataRate> rates) {
        DataRate rate = rates.get(formatId);
        if (rate == null) {
            throw new IllegalStateException("No rate for recording format " + formatId);
        }
        return ByteCount.roundedUp(rate.bytesIn(Fraction.of(minutes).times(SECONDS_PER_MINUTE)))
                .bytes();
    }

    private List<ForecastDay> days(UUID productionId, Map<UUID, DataRate> rates, List<RecordedBytes> rolls) {
        Map<UUID, Long> planned = days.plannedMinutes(productionId).stream()
                .collect(Collectors.toMap(
                        PlannedMinutes::dayId, plan -> bytes(plan.minutes(), plan.formatId(), rates), Math::addExact));
        Map<UUID, Long> recorded = rolls.stream()
                .collect(Collectors.toMap(roll -> roll.roll().dayId(), RecordedBytes::bytes, Math::addExact));
        List<UUID> unitIds = units.units(productionId).stream().map(Unit::id).toList();
        return days.list(productionId).stream()
                .sorted(Comparator.comparing(ShootingDay::date).thenComparing(day -> unitIds.indexOf(day.unitId())))
                .map(day -> new ForecastDay(
                        day.unitName(),
                        day.number(),
                        day.date(),
                        ForecastDay.State.valueOf(day.state().name()),
                        planned.getOrDefault(day.id(), 0L),
                        recorded.getOrDefault(day.id(), 0L)))
                .toList();
    }

    private WorkingCalendar calendar(Production production) {
        Set<DayOfWeek> weekend = EnumSet.complementOf(EnumSet.copyOf(production.workingDays()));
        return new WorkingCalendar(
                weekend, productions.holidays(production.id()).keySet());
    }
}
