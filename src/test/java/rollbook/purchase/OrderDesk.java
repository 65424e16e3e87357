package rollbook.purchase;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import rollbook.ordering.Hire;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.Contacts;
import rollbook.supplier.DeliveredTo;
import rollbook.supplier.SupplierDetails;
import rollbook.supplier.Suppliers;
import rollbook.testing.TestProduction;

/** A supplier with things to order, and orders placed with it, in a production of a test. */
final class OrderDesk {
    static final int USUAL_WORKING_DAYS = 2;
    static final int SLOW_WORKING_DAYS = 4;

    final LocalDate today;
    final UUID supplier;
    private final Catalogue catalogue;
    private final Orders orders;
    private final Membership office;

    /** Works every day and delivers in 2 working days, 9 times of 10 in 4; a delivery costs 25.00. */
    OrderDesk(ApplicationContext portal, TestProduction production) {
        Suppliers suppliers = portal.getBean(Suppliers.class);
        catalogue = portal.getBean(Catalogue.class);
        orders = portal.getBean(Orders.class);
        office = production.as(Role.OFFICE);
        today = LocalDate.now(office.zone());
        supplier = suppliers.add(
                office,
                new SupplierDetails(
                        "Test supplier",
                        null,
                        EnumSet.allOf(DayOfWeek.class),
                        LocalTime.of(16, 0),
                        2_500,
                        USUAL_WORKING_DAYS,
                        SLOW_WORKING_DAYS,
                        ""));
        portal.getBean(Contacts.class)
                .add(office, supplier, "Orders", "Order desk", "+00 000 000 010", "orders@supplier.example");
    }

    /** A drive of 4 TB for 199.00. */
    UUID drive() {
        UUID item = catalogue.add(
                office,
                supplier,
                new CatalogueDetails(MediaKind.DRIVE, "test drive", 4_000_000_000_000L, 500_000_000L, 480_000_000L, 1));
        catalogue.price(office, item, new Catalogue.NewPrice(today.minusDays(60), 19_900L, null), 0);
        return item;
    }

    /** A reader for hire at 60.00 a week. */
    UUID reader() {
        UUID item = catalogue.add(
                office, supplier, new CatalogueDetails(MediaKind.READER, "test reader", null, null, null, 1));
        catalogue.price(office, item, new Catalogue.NewPrice(today.minusDays(60), null, new Hire(6_000, 1)), 0);
        return item;
    }

    NewOrder.Line line(UUID item, int items, @Nullable Integer hireWeeks, @Nullable UUID leg) {
        return NewOrder.Line.ofCatalogue(item, items, hireWeeks, null, leg);
    }

    /** Proposed and no more. */
    PurchaseOrder proposed(NewOrder.Line... lines) {
        UUID id = orders.propose(
                office,
                new NewOrder(
                        DeliveredTo.SET,
                        null,
                        null,
                        "Ring before noon.",
                        PurchaseOrder.Source.HAND,
                        "",
                        Arrays.asList(lines)));
        return orders.get(office.productionId(), id);
    }

    /** Ordered ten days ago and expected so many days from now. */
    PurchaseOrder placed(int expectedInDays, NewOrder.Line... lines) {
        PurchaseOrder order = proposed(lines);
        orders.approve(office, order.id(), order.version());
        orders.place(office, order.id(), today.minusDays(10), today.plusDays(expectedInDays), order.version() + 1);
        return orders.get(office.productionId(), order.id());
    }
}
