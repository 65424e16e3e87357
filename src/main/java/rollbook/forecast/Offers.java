package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.ordering.Offer;
import rollbook.ordering.Supplier;
import rollbook.ordering.SupplierDays;
import rollbook.production.Production;
import rollbook.supplier.MediaSupplier;

/** What can be ordered for the pools, from what each leg is supplied with. */
final class Offers {
    private final Production production;
    private final Map<UUID, SuppliedLeg> supplied;

    Offers(Production production, Map<UUID, SuppliedLeg> supplied) {
        this.production = production;
        this.supplied = supplied;
    }

    /** In the order of the legs; those without a supply have none. */
    List<Offer> of(List<ForecastInput.Leg> legs) {
        return legs.stream()
                .filter(leg -> supplied.containsKey(leg.id()))
                .map(leg -> offer(leg, supplied.get(leg.id())))
                .toList();
    }

    private Offer offer(ForecastInput.Leg leg, SuppliedLeg source) {
        MediaSupplier supplier = source.terms().supplier();
        return new Offer(
                leg.id(),
                leg.pool().name(),
                leg.id(),
                source.itemCapacityBytes(),
                source.details().packSize(),
                source.itemPriceMinorUnits(),
                Currency.getInstance(production.currency()),
                // What is kept for good can't go back to whoever hires it out.
                leg.pool().comesBack() ? source.terms().price().hire() : null,
                new Supplier(
                        supplier.name(),
                        source.leadTime().leadTime(),
                        new SupplierDays(
                                source.terms().punctuality().calendar(),
                                supplier.details().orderCutOff(),
                                production.zone(),
                                source.supply().deliveredTo().furtherWorkingDays()),
                        supplier.details().deliveryMinorUnits()));
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
