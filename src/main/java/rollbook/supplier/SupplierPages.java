package rollbook.supplier;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.production.Productions;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** Gathers what the pages about suppliers show. */
@Component
class SupplierPages {
    private final Suppliers suppliers;
    private final Contacts contacts;
    private final Catalogue catalogue;
    private final Market market;
    private final Productions productions;
    private final SupplierWords words;
    private final Display display;
    private final Clock clock;

    SupplierPages(
            Suppliers suppliers,
            Contacts contacts,
            Catalogue catalogue,
            Market market,
            Productions productions,
            SupplierWords words,
            Display display,
            Clock clock) {
        this.suppliers = suppliers;
        this.contacts = contacts;
        this.catalogue = catalogue;
        this.market = market;
        this.productions = productions;
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    /** @param usualWorkingDays lead time, by which the list is sorted */
    record Row(UUID id, String name, long items, String leadTime, int usualWorkingDays) {}

    /** What the list may be sorted by; equal ones by name. */
    enum Column {
        SUPPLIER(Comparator.comparing(row -> row.name().toLowerCase(Locale.ROOT))),
        ITEMS(Comparator.comparing(Row::items)),
        LEAD_TIME(Comparator.comparing(Row::usualWorkingDays));

        private final Comparator<Row> ascending;

        Column(Comparator<Row> ascending) {
            this.ascending = ascending;
        }
    }

    /**
     * The suppliers that the address asks for, the sentence first.
     *
     * @param all how many there are
     */
    record AllPage(String sentence, Listing list, int all, Paged<Row> paged) {}

    AllPage all(Membership membership, Map<String, String> address) {
        List<MediaSupplier> all = suppliers.list(membership.productionId());
        List<CatalogueItem> items = catalogue.list(membership.productionId());
        Map<UUID, Punctuality> punctualities = punctualities(membership, all);
        Listing list = Listing.of(membership.path("suppliers"), address);
        String text = list.text("q", display.text("supplier.list.text")).toLowerCase(Locale.ROOT);
        Listing.Order<Column> order = list.order(
                Column.values(),
                new Listing.Order<>(Column.SUPPLIER, false),
                column -> display.text("supplier.column."
                        + column.name().toLowerCase(Locale.ROOT).replace('_', '-')));
        List<Row> rows = all.stream()
                .filter(supplier -> text.isEmpty() || offers(supplier, items, text))
                .map(supplier -> row(supplier, items, punctualities.get(supplier.id())))
                .sorted(order.of(order.column().ascending).thenComparing(Column.SUPPLIER.ascending))
                .toList();
        return new AllPage(words.sentence(all, items), list, all.size(), Paged.of(rows, list.page()));
    }

    /** Whether it is called so, or a model that it has is. */
    private static boolean offers(MediaSupplier supplier, List<CatalogueItem> items, String text) {
        return supplier.name().toLowerCase(Locale.ROOT).contains(text)
                || items.stream()
                        .anyMatch(item -> !item.archived()
                                && item.supplierId().equals(supplier.id())
                                && item.details()
                                        .model()
                                        .toLowerCase(Locale.ROOT)
                                        .contains(text));
    }

    private Row row(MediaSupplier supplier, List<CatalogueItem> items, Punctuality punctuality) {
        return new Row(
                supplier.id(),
                supplier.name(),
                items.stream()
                        .filter(item -> !item.archived() && item.supplierId().equals(supplier.id()))
                        .count(),
                words.leadTime(punctuality.leadTime()),
                punctuality.leadTime().usualWorkingDays());
    }

    /** A catalogue item with what it costs today. */
    record ItemRow(CatalogueItem item, String prices) {}

    /** An order and how it arrived; days are null while something is still to come. */
    record ArrivalRow(Delivery delivery, @Nullable Integer leadWorkingDays, String arrival) {}

    /** @param archived what isn't to be had any more */
    record OnePage(
            MediaSupplier supplier,
            String sentence,
            String stated,
            String country,
            String workingDays,
            String deliveryPrice,
            List<Contact> contacts,
            List<ItemRow> items,
            List<ItemRow> archived,
            List<ArrivalRow> arrivals) {}

    OnePage one(Membership membership, UUID supplierId) {
        MediaSupplier supplier = suppliers.get(membership.productionId(), supplierId);
        Punctuality punctuality = punctualities(membership, List.of(supplier)).get(supplierId);
        List<ItemRow> items = catalogue.list(membership.productionId()).stream()
                .filter(item -> item.supplierId().equals(supplierId))
                .map(item -> new ItemRow(item, words.prices(item.prices(), today(membership), currency(membership))))
                .toList();
        return new OnePage(
                supplier,
                words.leadTime(punctuality.leadTime()),
                words.stated(supplier),
                words.country(supplier.details().country()),
                words.workingDays(supplier),
                display.money(supplier.details().deliveryMinorUnits(), currency(membership)),
                contacts.list(supplier),
                items.stream().filter(row -> !row.item().archived()).toList(),
                items.stream().filter(row -> row.item().archived()).toList(),
                punctuality.arrivals().stream()
                        .map(arrival ->
                                new ArrivalRow(arrival.delivery(), arrival.leadWorkingDays(), words.arrival(arrival)))
                        .toList());
    }

    /** A price in an item's history. */
    record PriceRow(Price price, String text, boolean corrected) {}

    /** @param history newest first */
    record ItemPage(MediaSupplier supplier, CatalogueItem item, String sentence, List<PriceRow> history) {}

    ItemPage item(Membership membership, CatalogueItem item) {
        List<PriceRow> history = item.prices().newestFirst().stream()
                .map(price -> new PriceRow(
                        price,
                        words.price(price, currency(membership)),
                        item.prices().isCorrected(price)))
                .toList();
        String prices = words.prices(item.prices(), today(membership), currency(membership));
        return new ItemPage(
                suppliers.get(membership.productionId(), item.supplierId()),
                item,
                item.archived() ? display.text("supplier.item.archived", prices) : prices,
                history);
    }

    LocalDate today(Membership membership) {
        return LocalDate.ofInstant(clock.instant(), membership.zone());
    }

    private Map<UUID, Punctuality> punctualities(Membership membership, List<MediaSupplier> of) {
        LocalDate today = today(membership);
        return market.punctualities(
                membership.productionId(),
                of,
                market.calendar(productions.get(membership.productionId())),
                today,
                today);
    }

    private static Currency currency(Membership membership) {
        return Currency.getInstance(membership.currency());
    }
}
