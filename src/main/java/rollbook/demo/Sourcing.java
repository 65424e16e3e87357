package rollbook.demo;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.cost.Budgets;
import rollbook.forecast.LegSupply;
import rollbook.forecast.Supplies;
import rollbook.ordering.Hire;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.Contacts;
import rollbook.supplier.DeliveredTo;
import rollbook.supplier.SupplierDetails;
import rollbook.supplier.Suppliers;

/** Who the demo's media comes from, what that costs, and the orders of the weeks before the shoot. All invented. */
@Component
@Profile("demo")
class Sourcing {
    private static final long MB = 1_000_000L;
    private static final int TAPES_ORDERED = 10;
    private static final long BUDGET_CENTS = 7_500_000;

    private final Suppliers suppliers;
    private final Contacts contacts;
    private final Catalogue catalogue;
    private final Supplies supplies;
    private final Purchasing purchasing;
    private final Budgets budgets;

    Sourcing(
            Suppliers suppliers,
            Contacts contacts,
            Catalogue catalogue,
            Supplies supplies,
            Purchasing purchasing,
            Budgets budgets) {
        this.suppliers = suppliers;
        this.contacts = contacts;
        this.catalogue = catalogue;
        this.supplies = supplies;
        this.purchasing = purchasing;
        this.budgets = budgets;
    }

    void source(Membership office, Map<String, UUID> legs, StoryDates dates) {
        LocalDate today = LocalDate.ofInstant(dates.daysBefore(20), dates.zone());
        Catalog catalog = new Catalog(office, today);
        UUID shop = catalog.supplier("Media supplier", 2, 3, 2_500, "The order number goes on every bill.");
        contacts.add(office, shop, "Orders", "Order desk", "+00 000 000 010", "orders@media-supplier.example");
        contacts.add(office, shop, "Bills", "", "", "bills@media-supplier.example");
        UUID shuttle = catalog.item(
                shop,
                new CatalogueDetails(MediaKind.DRIVE, Purchasing.SHUTTLE, Stock.SHUTTLE_BYTES, 520 * MB, 480 * MB, 2));
        catalog.price(shuttle, -60, (long) Stock.SHUTTLE_PRICE_CENTS, new Hire(4_500, 1), 0);
        UUID tape = catalog.item(
                shop, new CatalogueDetails(MediaKind.TAPE, Purchasing.TAPE, Stock.TAPE_BYTES, 380 * MB, 380 * MB, 5));
        catalog.price(tape, -60, 8_900L, null, 0);
        catalog.price(tape, -5, (long) Stock.TAPE_PRICE_CENTS, null, 1);

        UUID maker = catalog.supplier("Array supplier", 8, 12, 19_000, "");
        UUID array = catalog.item(
                maker,
                new CatalogueDetails(
                        MediaKind.ARRAY,
                        "disk array, two spare disks",
                        Stock.ARRAY_BYTES,
                        1_000 * MB,
                        Stock.ARRAY_BYTES_PER_SECOND,
                        1));
        catalog.price(array, -60, (long) Stock.ARRAY_PRICE_CENTS, null, 0);

        UUID rental = catalog.supplier("Camera rental house", 1, 2, 0, "Returns on weekdays until noon.");
        contacts.add(office, rental, "Returns", "Return desk", "+00 000 000 020", "returns@rental-house.example");
        UUID card = catalog.item(
                rental,
                new CatalogueDetails(MediaKind.CARD, "camera card, 2 TB", 2 * Stock.TB, 1_400 * MB, 1_200 * MB, 1));
        catalog.price(card, -60, null, new Hire(24_000, 1), 0);
        UUID reader = catalog.item(
                rental, new CatalogueDetails(MediaKind.READER, Purchasing.READER, null, 1_000 * MB, null, 1));
        catalog.price(reader, -60, null, new Hire(6_000, 1), 0);

        supplies.change(office, supply(legs.get(Stock.SHUTTLE), shuttle, DeliveredTo.SET));
        supplies.change(office, supply(legs.get(Stock.ARRAY), array, DeliveredTo.OFFICE));
        supplies.change(office, supply(legs.get(Stock.TAPE), tape, DeliveredTo.OFFICE));
        budgets.set(office, BUDGET_CENTS, "Agreed with the producer before the shoot.", 0);
        LocalDate ordered = StoryDates.plusWorkingDays(today, 0);
        UUID drives = purchasing.order(
                office,
                new Purchasing.Wanted(
                        Purchasing.SHUTTLE, Stock.SHUTTLES - 1, legs.get(Stock.SHUTTLE), DeliveredTo.SET, ""),
                ordered,
                StoryDates.plusWorkingDays(ordered, 3));
        purchasing.came(office, drives, Stock.SHUTTLES - 1, StoryDates.plusWorkingDays(ordered, 4));
        purchasing.close(office, drives);
        UUID tapes = purchasing.order(
                office,
                new Purchasing.Wanted(
                        Purchasing.TAPE, TAPES_ORDERED, legs.get(Stock.TAPE), DeliveredTo.OFFICE, "Two packs."),
                ordered,
                StoryDates.plusWorkingDays(ordered, 2));
        purchasing.came(office, tapes, Stock.TAPES, StoryDates.plusWorkingDays(ordered, 2));
        purchasing.callOff(office, tapes, "Two were cracked. The supplier takes them back.");
    }

    private static LegSupply supply(UUID leg, UUID item, DeliveredTo to) {
        return new LegSupply(leg, item, to, LegSupply.NOT_KEPT);
    }

    /** What the office enters on a day. */
    private final class Catalog {
        private final Membership office;
        private final LocalDate today;

        Catalog(Membership office, LocalDate today) {
            this.office = office;
            this.today = today;
        }

        UUID supplier(String name, int usual, int slow, long deliveryCents, String note) {
            return suppliers.add(
                    office,
                    new SupplierDetails(name, null, Set.of(), LocalTime.of(15, 0), deliveryCents, usual, slow, note));
        }

        UUID item(UUID supplier, CatalogueDetails details) {
            return catalogue.add(office, supplier, details);
        }

        void price(UUID item, int daysFromToday, @Nullable Long cents, @Nullable Hire hire, int afterPrice) {
            catalogue.price(
                    office, item, new Catalogue.NewPrice(today.plusDays(daysFromToday), cents, hire), afterPrice);
        }
    }
}
