package rollbook.purchase;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.Membership;
import rollbook.supplier.DeliveredTo;

/** Takes orders of one line through their steps, in the name of somebody of the office. */
public final class TestOrders {
    private final Orders orders;
    private final Receipts receipts;
    private final Membership office;

    public TestOrders(Orders orders, Receipts receipts, Membership office) {
        this.orders = orders;
        this.receipts = receipts;
        this.office = office;
    }

    /** To the office, bought at the catalogue's price. */
    public UUID proposed(UUID item, @Nullable UUID leg, int items, String note) {
        return orders.propose(
                office,
                new NewOrder(
                        DeliveredTo.OFFICE,
                        null,
                        null,
                        note,
                        PurchaseOrder.Source.HAND,
                        "",
                        List.of(NewOrder.Line.ofCatalogue(item, items, null, null, leg))));
    }

    public UUID placed(UUID item, @Nullable UUID leg, int items, LocalDate on, LocalDate expectedOn, String note) {
        UUID order = proposed(item, leg, items, note);
        orders.approve(office, order, get(order).version());
        orders.place(office, order, on, expectedOn, get(order).version());
        return order;
    }

    public UUID placed(UUID item, @Nullable UUID leg, int items, LocalDate on, LocalDate expectedOn) {
        return placed(item, leg, items, on, expectedOn, "");
    }

    /** Returns the receipt. */
    public UUID came(UUID order, int items, LocalDate on) {
        PurchaseOrder before = get(order);
        return receipts.count(office, order, Map.of(before.lines().get(0).id(), items), on, before.version());
    }

    public void takeBack(UUID order, UUID receipt) {
        receipts.takeBack(office, order, receipt, "counted wrong", get(order).version());
    }

    public void cancel(UUID order) {
        orders.cancel(office, order, "not needed", get(order).version());
    }

    /** The last step of that kind. */
    public void takeBack(UUID order, OrderStep.Kind kind) {
        PurchaseOrder before = get(order);
        orders.takeBack(office, order, before.history().last(kind).orElseThrow().number(), before.version());
    }

    public PurchaseOrder get(UUID order) {
        return orders.get(office.productionId(), order);
    }
}
