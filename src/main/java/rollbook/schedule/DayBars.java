package rollbook.schedule;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.format.NamedFormat;
import rollbook.quantity.ByteCount;
import rollbook.schedule.DayOutlooks.Outlook;
import rollbook.schedule.RecordedRolls.Recorded;

/** Gathers what was planned, recorded and is expected of each unit's days, in three statements. */
@Component
class DayBars {
    private static final Outlook NOTHING = new Outlook(null, false);

    private final ShootingDays days;
    private final RecordedRolls rolls;
    private final DayOutlooks outlooks;

    DayBars(ShootingDays days, RecordedRolls rolls, DayOutlooks outlooks) {
        this.days = days;
        this.rolls = rolls;
        this.outlooks = outlooks;
    }

    /**
     * By the unit's id; units without a day are left out.
     *
     * @param all days of all units, in the order of their dates
     * @param totals what is planned of each day now
     */
    Map<UUID, UnitBars> of(
            UUID productionId,
            List<ShootingDay> all,
            Map<UUID, DayTotals> totals,
            Map<UUID, NamedFormat> formats,
            LocalDate today) {
        Map<UUID, PlanAtStart> atStart = days.plansAtStart(productionId).stream()
                .collect(Collectors.toMap(PlanAtStart::dayId, Function.identity()));
        Map<UUID, List<Recorded>> recorded =
                rolls.recorded(productionId).stream().collect(Collectors.groupingBy(Recorded::dayId));
        Map<UUID, Outlook> known = outlooks.of(productionId, all);
        Map<UUID, List<ShootingDay>> byUnit = all.stream().collect(Collectors.groupingBy(ShootingDay::unitId));
        return byUnit.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        unit -> new UnitBars(
                                unit.getValue().get(0).unitName(),
                                today,
                                unit.getValue().stream()
                                        .map(day -> day(
                                                day,
                                                planned(day, atStart, totals),
                                                recorded.getOrDefault(day.id(), List.of()),
                                                formats,
                                                known.getOrDefault(day.id(), NOTHING)))
                                        .toList())));
    }

    private static long planned(ShootingDay day, Map<UUID, PlanAtStart> atStart, Map<UUID, DayTotals> totals) {
        PlanAtStart then = atStart.get(day.id());
        return then == null
                ? totals.getOrDefault(day.id(), DayTotals.NONE).bytes().longValueExact()
                : then.bytes();
    }

    private static UnitBars.Day day(
            ShootingDay day, long planned, List<Recorded> rolls, Map<UUID, NamedFormat> formats, Outlook outlook) {
        return new UnitBars.Day(
                day.id(),
                day.number(),
                day.date(),
                day.state(),
                planned,
                rolls.stream().mapToLong(roll -> bytes(roll, formats)).reduce(0, Math::addExact),
                (int) rolls.stream()
                        .filter(roll -> roll.sizeBytes() == null && roll.minutes() == null)
                        .count(),
                outlook.expected(),
                outlook.added());
    }

    /** Measured, or as many as its minutes make in its format; a part of a byte counts as a whole one. */
    private static long bytes(Recorded roll, Map<UUID, NamedFormat> formats) {
        BigDecimal minutes = roll.minutes();
        if (roll.sizeBytes() != null || minutes == null) {
            return roll.sizeBytes() == null ? 0 : roll.sizeBytes();
        }
        return ByteCount.roundedUp(
                        DayTotals.of(minutes, formats.get(roll.formatId())).exactBytes())
                .bytes();
    }
}
