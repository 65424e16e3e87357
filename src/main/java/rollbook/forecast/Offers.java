package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.burndown.LeadTime;
import rollbook.burndown.WorkingCalendar;
import rollbook.ordering.Hire;
import rollbook.ordering.Offer;
import rollbook.ordering.PublicHolidays;
import rollbook.ordering.Supplier;
import rollbook.ordering.SupplierDays;
import rollbook.production.Production;

/** What can be ordered for the pools, from how a production says more can be had. */
final class Offers {
    /** Public holidays are looked up this far beyond the last shooting day: something may still be on its way then. */
    private static final int YEARS_BEYOND = 1;

    private final Production production;
    private final LocalDate today;
    private final LocalDate lastDay;
    private final WorkingCalendar calendar;
    private final Map<UUID, LegSupply> supplied;

    /** @param calendar the production's own working days and holidays */
    Offers(
            Production production,
            LocalDate today,
            List<ForecastDay> days,
            WorkingCalendar calendar,
            Map<UUID, LegSupply> supplied) {
        this.production = production;
        this.today = today;
        this.lastDay = days.stream()
                .map(ForecastDay::date)
                .filter(date -> date.isAfter(today))
                .max(Comparator.naturalOrder())
                .orElse(today);
        this.calendar = calendar;
        this.supplied = supplied;
    }

    /** In the order of the legs; those without a supply have none. */
    List<Offer> of(List<ForecastInput.Leg> legs) {
        return legs.stream()
                .filter(leg -> supplied.containsKey(leg.id()))
                .map(leg -> offer(leg, supplied.get(leg.id())))
                .toList();
    }

    private Offer offer(ForecastInput.Leg leg, LegSupply supply) {
        LegSupply.Source source = supply.source();
        LegSupply.HireTerms hire = supply.hire();
        return new Offer(
                leg.id(),
                leg.pool().name(),
                leg.id(),
                supply.itemCapacityBytes(),
                supply.packSize(),
                supply.itemPriceMinorUnits(),
                Currency.getInstance(production.currency()),
                // What is kept for good can't go back to whoever hires it out.
                hire == null || !leg.pool().comesBack() ? null : new Hire(hire.weekMinorUnits(), hire.minimumWeeks()),
                new Supplier(
                        source.name().isEmpty() ? leg.pool().name() : source.name(),
                        LeadTime.usually(source.leadTimeWorkingDays(), source.slowLeadTimeWorkingDays()),
                        new SupplierDays(
                                calendar(source),
                                source.orderCutOff(),
                                production.zone(),
                                source.deliveredTo().furtherWorkingDays),
                        source.deliveryMinorUnits()));
    }

    private WorkingCalendar calendar(LegSupply.Source source) {
        return source.country() == null
                ? calendar
                : new WorkingCalendar(
                        calendar.weekend(),
                        PublicHolidays.of(source.country(), today.getYear(), lastDay.getYear() + YEARS_BEYOND));
    }

    /**
     * The last moment up to now at which a supplier stopped taking the day's orders, or the beginning of the day: until
     * the next one every forecast of the day says the same.
     */
    static Instant asOf(Instant now, LocalDate today, ZoneId zone, List<Offer> offers) {
        return offers.stream()
                .map(offer -> offer.supplier().days().closesAt(today))
                .filter(closed -> !closed.isAfter(now))
                .max(Comparator.naturalOrder())
                .orElse(today.atStartOfDay(zone).toInstant());
    }
}
