package rollbook.forecast;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.WorkingCalendar;
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.learning.Habits;
import rollbook.learning.ShotDay;
import rollbook.ordering.Offer;
import rollbook.ordering.ServiceLevel;
import rollbook.production.CameraUnits;
import rollbook.production.Production;
import rollbook.production.Productions;
import rollbook.production.Unit;
import rollbook.purchase.OrderLine;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.quantity.Share;
import rollbook.schedule.PlannedMinutes;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.supplier.Market;
import rollbook.supplier.SupplyTerms;

/** Gathers what a production's forecast is made from, in a fixed number of queries. */
@Component
class ForecastInputs {
    private static final int SECONDS_PER_MINUTE = 60;
    private static final double PER_CENT = 100;

    private final Productions productions;
    private final CameraUnits units;
    private final ShootingDays days;
    private final RecordingFormats formats;
    private final RecordedRows rows;
    private final LegPools pools;
    private final Supplies supplies;
    private final Market market;
    private final Orders orders;
    private final Clock clock;

    ForecastInputs(
            Productions productions,
            CameraUnits units,
            ShootingDays days,
            RecordingFormats formats,
            RecordedRows rows,
            LegPools pools,
            Supplies supplies,
            Market market,
            Orders orders,
            Clock clock) {
        this.productions = productions;
        this.units = units;
        this.days = days;
        this.formats = formats;
        this.rows = rows;
        this.pools = pools;
        this.supplies = supplies;
        this.market = market;
        this.orders = orders;
        this.clock = clock;
    }

    ForecastInput gather(UUID productionId) {
        Production production = productions.get(productionId);
        Instant now = clock.instant();
        LocalDate today = LocalDate.ofInstant(now, production.zone());
        Map<UUID, DataRate> rates = rates(productionId);
        List<RecordedBytes> rolls = rows.rolls(productionId).stream()
                .map(roll -> new RecordedBytes(roll, bytes(roll, rates)))
                .toList();
        List<ForecastDay> days = days(productionId, rates, rolls);
        WorkingCalendar calendar = market.calendar(production);
        Assumptions assumptions = supplies.assumptions(productionId);
        List<PurchaseOrder> awaited = orders.expected(productionId);
        Collection<LegSupply> chosen = supplies.byLeg(productionId).values();
        Map<UUID, SupplyTerms> terms = terms(productionId, chosen, awaited, calendar, today, days);
        Map<UUID, SuppliedLeg> supplied = supplied(chosen, terms);
        List<ForecastInput.Leg> legs =
                pools.legs(production, today, rolls, new PoolArrivals(awaited, terms, supplied, calendar));
        List<Offer> offers = new Offers(production, supplied).of(legs);
        return new ForecastInput(
                today,
                Offers.asOf(now, today, production.zone(), offers),
                days,
                legs,
                offers,
                offers.stream()
                        .map(offer -> OfferSource.of(supplied.get(offer.id())))
                        .toList(),
                Habits.USUAL,
                Share.percent(assumptions.fillPercent()),
                new ServiceLevel(assumptions.serviceLevelPercent() / PER_CENT),
                seed(productionId),
                ForecastInput.USUAL_REPLICATES);
    }

    /** Always the same for a production: then a forecast differs from the one before by its inputs and not by chance. */
    private static long seed(UUID productionId) {
        return productionId.getMostSignificantBits() ^ productionId.getLeastSignificantBits();
    }

    private Map<UUID, DataRate> rates(UUID productionId) {
        return formats.list(productionId).stream()
                .collect(Collectors.toMap(
                        NamedFormat::id, format -> format.format().dataRate()));
    }

    /**
     * A roll with its bytes as recorded: measured, or as many as its minutes make in its format.
     *
     * @param bytes null while nothing tells them
     */
    record RecordedBytes(
            RecordedRows.RecordedRoll roll, @Nullable Long bytes) {
        long bytesOrNone() {
            return bytes == null ? 0 : bytes;
        }
    }

    private static @Nullable Long bytes(RecordedRows.RecordedRoll roll, Map<UUID, DataRate> rates) {
        if (roll.sizeBytes() != null) {
            return roll.sizeBytes();
        }
        return roll.minutes() == null ? null : bytes(roll.minutes(), roll.formatId(), rates);
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
        Map<UUID, DayPlan> plans = plans(productionId, rates);
        Map<UUID, List<RecordedBytes>> recorded =
                rolls.stream().collect(Collectors.groupingBy(roll -> roll.roll().dayId()));
        List<UUID> unitIds = units.units(productionId).stream().map(Unit::id).toList();
        return days.list(productionId).stream()
                .sorted(Comparator.comparing(ShootingDay::date).thenComparing(day -> unitIds.indexOf(day.unitId())))
                .map(day -> day(
                        day, plans.getOrDefault(day.id(), DayPlan.NONE), recorded.getOrDefault(day.id(), List.of())))
                .toList();
    }

    private record DayPlan(BigDecimal minutes, long bytes) {
        static final DayPlan NONE = new DayPlan(BigDecimal.ZERO, 0);

        DayPlan plus(DayPlan other) {
            return new DayPlan(minutes.add(other.minutes), Math.addExact(bytes, other.bytes));
        }
    }

    /** Of a day that began, the plan as it was then: what is learned from it mustn't know what was changed afterwards. */
    private Map<UUID, DayPlan> plans(UUID productionId, Map<UUID, DataRate> rates) {
        Map<UUID, DayPlan> plans = days.plannedMinutes(productionId).stream()
                .collect(Collectors.toMap(
                        PlannedMinutes::dayId,
                        plan -> new DayPlan(plan.minutes(), bytes(plan.minutes(), plan.formatId(), rates)),
                        DayPlan::plus));
        days.plansAtStart(productionId)
                .forEach(start -> plans.put(start.dayId(), new DayPlan(start.minutes(), start.bytes())));
        return plans;
    }

    private static ForecastDay day(ShootingDay day, DayPlan plan, List<RecordedBytes> rolls) {
        boolean minutesKnown = rolls.stream().allMatch(roll -> roll.roll().minutes() != null);
        return new ForecastDay(
                day.unitName(),
                day.number(),
                day.date(),
                ForecastDay.State.valueOf(day.state().name()),
                plan.bytes(),
                rolls.stream().mapToLong(RecordedBytes::bytesOrNone).reduce(0, Math::addExact),
                rolls.stream().allMatch(roll -> roll.bytes() != null),
                minutesKnown ? new ShotDay.Minutes(plan.minutes().doubleValue(), minutes(rolls)) : null);
    }

    private static double minutes(List<RecordedBytes> rolls) {
        return rolls.stream()
                .map(roll -> roll.roll().minutes())
                .filter(Objects::nonNull)
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .doubleValue();
    }

    /** Of all that pools are filled up with and that is on order, by the item of a catalogue. */
    private Map<UUID, SupplyTerms> terms(
            UUID productionId,
            Collection<LegSupply> chosen,
            List<PurchaseOrder> awaited,
            WorkingCalendar calendar,
            LocalDate today,
            List<ForecastDay> days) {
        LocalDate last = days.stream()
                .map(ForecastDay::date)
                .filter(date -> date.isAfter(today))
                .max(Comparator.naturalOrder())
                .orElse(today);
        Set<UUID> items = Stream.concat(
                        chosen.stream().map(LegSupply::itemId),
                        awaited.stream()
                                .flatMap(order -> order.lines().stream())
                                .map(OrderLine::catalogueItemId)
                                .filter(Objects::nonNull))
                .collect(Collectors.toSet());
        return market.terms(productionId, item -> items.contains(item.id()), calendar, today, last);
    }

    /** By the leg; those without a supply, or with one that can't be ordered now, are left out. */
    private static Map<UUID, SuppliedLeg> supplied(Collection<LegSupply> chosen, Map<UUID, SupplyTerms> terms) {
        return chosen.stream()
                .filter(supply -> terms.containsKey(supply.itemId())
                        && terms.get(supply.itemId()).fillsPools())
                .map(supply -> new SuppliedLeg(supply, terms.get(supply.itemId())))
                .collect(Collectors.toMap(leg -> leg.supply().legId(), Function.identity()));
    }
}
