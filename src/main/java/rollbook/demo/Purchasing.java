package rollbook.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.purchase.NewOrder;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.purchase.Receipts;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.DeliveredTo;

/** The demo's orders, of what its suppliers offer. */
@Component
@Profile("demo")
class Purchasing {
    static final String SHUTTLE = "shuttle drive";
    static final String TAPE = "tape, 18 TB";
    static final String READER = "card reader, one slot";
    private static final int HIRE_WEEKS = 3;

    private final Orders orders;
    private final Receipts receipts;
    private final Catalogue catalogue;

    Purchasing(Orders orders, Receipts receipts, Catalogue catalogue) {
        this.orders = orders;
        this.receipts = receipts;
        this.catalogue = catalogue;
    }

    /** Some items of a model, for a leg's pool or for none. */
    record Wanted(String model, int items, @Nullable UUID leg, DeliveredTo to, String note) {}

    UUID propose(Membership by, Wanted wanted) {
        CatalogueItem item = catalogue.list(by.productionId()).stream()
                .filter(one -> one.details().model().equals(wanted.model()))
                .findFirst()
                .orElseThrow();
        Integer weeks = item.details().kind() == MediaKind.READER ? HIRE_WEEKS : null;
        return orders.propose(
                by,
                new NewOrder(
                        wanted.to(),
                        null,
                        null,
                        wanted.note(),
                        PurchaseOrder.Source.HAND,
                        "",
                        List.of(NewOrder.Line.ofCatalogue(item.id(), wanted.items(), weeks, null, wanted.leg()))));
    }

    UUID order(Membership office, Wanted wanted, LocalDate on, LocalDate expectedOn) {
        UUID id = propose(office, wanted);
        orders.approve(office, id, version(office, id));
        orders.place(office, id, on, expectedOn, version(office, id));
        return id;
    }

    /** So many of the order's only line. */
    void came(Membership office, UUID id, int items, LocalDate on) {
        PurchaseOrder order = orders.get(office.productionId(), id);
        receipts.count(office, id, Map.of(order.lines().get(0).id(), items), on, order.version());
    }

    void callOff(Membership office, UUID id, String reason) {
        orders.cancel(office, id, reason, version(office, id));
    }

    void decline(Membership office, UUID id, String reason) {
        orders.decline(office, id, reason, version(office, id));
    }

    void close(Membership office, UUID id) {
        orders.close(office, id, version(office, id));
    }

    private int version(Membership by, UUID id) {
        return orders.get(by.productionId(), id).version();
    }
}
