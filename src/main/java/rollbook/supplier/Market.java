package rollbook.supplier;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.burndown.WorkingCalendar;
import rollbook.production.Production;
import rollbook.production.Productions;

/** What a production can have from whom, at which price and how soon. */
@Component
public class Market {
    /** Public holidays are looked up this far beyond a date: something may still be on its way then. */
    private static final int YEARS_BEYOND = 1;

    private final Suppliers suppliers;
    private final Catalogue catalogue;
    private final Deliveries deliveries;
    private final Productions productions;

    Market(Suppliers suppliers, Catalogue catalogue, Deliveries deliveries, Productions productions) {
        this.suppliers = suppliers;
        this.catalogue = catalogue;
        this.deliveries = deliveries;
        this.productions = productions;
    }

    /** The production's own working days and holidays. */
    public WorkingCalendar calendar(Production production) {
        Set<DayOfWeek> weekend = EnumSet.complementOf(EnumSet.copyOf(production.workingDays()));
        return new WorkingCalendar(
                weekend, productions.holidays(production.id()).keySet());
    }

    /**
     * The terms of the items that are wanted and have a price, by the item.
     *
     * @param calendar the production's own
     * @param last the date until when something may be ordered
     */
    public Map<UUID, SupplyTerms> terms(
            UUID productionId,
            Predicate<CatalogueItem> wanted,
            WorkingCalendar calendar,
            LocalDate today,
            LocalDate last) {
        List<CatalogueItem> items =
                catalogue.list(productionId).stream().filter(wanted).toList();
        Map<UUID, MediaSupplier> sellers = suppliers.list(productionId).stream()
                .filter(supplier ->
                        items.stream().anyMatch(item -> item.supplierId().equals(supplier.id())))
                .collect(Collectors.toMap(MediaSupplier::id, Function.identity()));
        Map<UUID, Punctuality> punctualities =
                punctualities(productionId, List.copyOf(sellers.values()), calendar, today, last);
        Map<UUID, SupplyTerms> terms = new LinkedHashMap<>();
        for (CatalogueItem item : items) {
            item.prices()
                    .on(today)
                    .ifPresent(price -> terms.put(
                            item.id(),
                            new SupplyTerms(
                                    sellers.get(item.supplierId()),
                                    item,
                                    price,
                                    punctualities.get(item.supplierId()))));
        }
        return terms;
    }

    /**
     * How punctual suppliers are, by the supplier.
     *
     * @param calendar the production's own
     */
    public Map<UUID, Punctuality> punctualities(
            UUID productionId, Set<UUID> supplierIds, WorkingCalendar calendar, LocalDate today) {
        List<MediaSupplier> of = suppliers.list(productionId).stream()
                .filter(supplier -> supplierIds.contains(supplier.id()))
                .toList();
        return punctualities(productionId, of, calendar, today, today);
    }

    /** By the supplier. */
    Map<UUID, Punctuality> punctualities(
            UUID productionId, List<MediaSupplier> of, WorkingCalendar calendar, LocalDate today, LocalDate last) {
        Map<UUID, List<Delivery>> delivered =
                deliveries.of(productionId).stream().collect(Collectors.groupingBy(Delivery::supplierId));
        return of.stream()
                .collect(Collectors.toMap(
                        MediaSupplier::id,
                        supplier -> Punctuality.of(
                                supplier,
                                delivered.getOrDefault(supplier.id(), List.of()),
                                calendar,
                                today,
                                last.plusYears(YEARS_BEYOND))));
    }
}
