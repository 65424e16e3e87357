package rollbook.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.inventory.ItemDetails;
import rollbook.inventory.NewItem;
import rollbook.inventory.Ownership;
import rollbook.production.Membership;
import rollbook.purchase.Fault;
import rollbook.purchase.NewReceipt;
import rollbook.purchase.OrderLine;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.purchase.Receipts;
import rollbook.supplier.DeliveredTo;

/** Two readers that the demo hired for the second unit: one came in order, one was broken, and the other is late now. */
@Component
@Profile("demo")
class Arrivals {
    private static final String CODE = "READER-4";
    private static final String SERIAL = "RD-2207731";

    private final Purchasing purchasing;
    private final Orders orders;
    private final Receipts receipts;
    private @Nullable UUID readers;

    Arrivals(Purchasing purchasing, Orders orders, Receipts receipts) {
        this.purchasing = purchasing;
        this.orders = orders;
        this.receipts = receipts;
    }

    void orderReaders(Membership office, LocalDate on, LocalDate expectedOn) {
        readers = purchasing.order(
                office,
                new Purchasing.Wanted(Purchasing.READER, 2, null, DeliveredTo.SET, "for the second unit"),
                on,
                expectedOn);
    }

    void oneIsBroken(Membership office, UUID place, LocalDate cameOn, LocalDate restExpectedOn) {
        PurchaseOrder order = orders.get(office.productionId(), Objects.requireNonNull(readers));
        OrderLine line = order.lines().get(0);
        ItemDetails details = new ItemDetails(
                CODE,
                SERIAL,
                line.model(),
                line.capacityBytes(),
                line.readBytesPerSecond(),
                line.writeBytesPerSecond(),
                Ownership.HIRED,
                order.supplierName(),
                line.unitMinorUnits(),
                cameOn.plusWeeks(3),
                null);
        receipts.receive(
                office,
                order.id(),
                new NewReceipt(
                        UUID.randomUUID(),
                        cameOn,
                        "",
                        restExpectedOn,
                        List.of(new NewReceipt.Line(
                                line.id(),
                                0,
                                List.of(new NewItem(line.kind(), details, place, "")),
                                List.of(new Fault(
                                        Fault.Kind.DAMAGED, 1, "the slot’s pins are bent", Fault.Remedy.REPLACED))))),
                order.version());
    }
}
