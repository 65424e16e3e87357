package rollbook.purchase;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.Inventory;
import rollbook.inventory.NewItem;
import rollbook.inventory.Withdrawals;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** What came of orders. Of each receipt all is kept or nothing: the counts, what was wrong, and the items in the book. */
@Service
public class Receipts {
    private final ReceiptRows rows;
    private final Orders orders;
    private final Inventory inventory;
    private final Withdrawals withdrawals;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    Receipts(
            ReceiptRows rows,
            Orders orders,
            Inventory inventory,
            Withdrawals withdrawals,
            AuditTrail trail,
            ApplicationEventPublisher events) {
        this.rows = rows;
        this.orders = orders;
        this.inventory = inventory;
        this.withdrawals = withdrawals;
        this.trail = trail;
        this.events = events;
    }

    /** Of an order that the caller has looked up, in the order of their numbers. */
    List<Receipt> list(PurchaseOrder order) {
        return rows.list(order);
    }

    /** @throws NotFoundException if the order has no such receipt */
    Receipt get(PurchaseOrder order, UUID receiptId) {
        return list(order).stream()
                .filter(receipt -> receipt.id().equals(receiptId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    /**
     * Counts what came in order; nothing is entered in the book.
     *
     * @param itemsByLine how many items came of which line
     * @throws Refusal as {@link #receive}
     */
    @Transactional
    public UUID count(Membership by, UUID orderId, Map<UUID, Integer> itemsByLine, LocalDate cameOn, int version) {
        List<NewReceipt.Line> lines = itemsByLine.entrySet().stream()
                .map(entry -> new NewReceipt.Line(entry.getKey(), entry.getValue(), List.of(), List.of()))
                .toList();
        UUID id = UUID.randomUUID();
        receive(by, orderId, new NewReceipt(id, cameOn, "", null, lines), version);
        return id;
    }

    /**
     * Keeps what came and enters the good items in the book. The same receipt again changes nothing.
     *
     * @param version of the order that the person has seen
     * @throws NotFoundException if this production has no such order, or it no such line
     * @throws Refusal if the order takes no receipts, more came than was left, it came before it was ordered, somebody else
     *     did something with the order meanwhile, or an item can't be entered
     */
    @Transactional
    public void receive(Membership by, UUID orderId, NewReceipt receipt, int version) {
        orders.get(by.productionId(), orderId);
        rows.lock(orderId);
        if (rows.isThere(orderId, receipt.id())) {
            return;
        }
        PurchaseOrder order = begin(by, orderId, version);
        check(order, receipt);
        if (!rows.add(by, orderId, receipt)) {
            throw new Refusal("purchase.refused.changed", order.number());
        }
        receipt.lines().forEach(line -> rows.addLine(receipt.id(), line));
        enter(by, receipt);
        trail.add(by.act("order.received", "order", Integer.toString(order.number()), detail(order, receipt)));
        if (receipt.restExpectedOn() != null) {
            orders.promise(by, orderId, receipt.restExpectedOn(), "", version + 1);
        }
        events.publishEvent(new ItemsReceived(by.productionId(), orderId, receipt.id()));
    }

    private static void check(PurchaseOrder order, NewReceipt receipt) {
        LocalDate orderedOn = order.orderedOn();
        if (orderedOn != null && receipt.cameOn().isBefore(orderedOn)) {
            throw new Refusal("purchase.refused.came-before", order.number());
        }
        if (receipt.lines().stream().mapToInt(NewReceipt.Line::came).sum() == 0) {
            throw new IllegalArgumentException("A receipt of nothing");
        }
        for (NewReceipt.Line came : receipt.lines()) {
            OrderLine line = order.lines().stream()
                    .filter(candidate -> candidate.id().equals(came.lineId()))
                    .findFirst()
                    .orElseThrow(NotFoundException::new);
            if (came.came() > line.left()) {
                throw new Refusal("purchase.refused.more-than-left", line.model(), line.left());
            }
        }
    }

    /** All items at once, so that one record in the trail tells of them and one wrong item keeps all out. */
    private void enter(Membership by, NewReceipt receipt) {
        List<NewItem> items =
                receipt.lines().stream().flatMap(line -> line.items().stream()).toList();
        if (items.isEmpty()) {
            return;
        }
        List<UUID> ids = inventory.registerAll(by, items);
        int from = 0;
        for (NewReceipt.Line line : receipt.lines()) {
            int to = from + line.items().size();
            if (to > from) {
                rows.addItems(receipt.id(), line.lineId(), ids.subList(from, to));
            }
            from = to;
        }
    }

    /**
     * Takes a whole receipt back: nothing of it counts any more, and its items leave the book.
     *
     * @param version of the order that the person has seen
     * @throws NotFoundException if this production has no such order, or it no such receipt
     * @throws Refusal if an item was used since, it was taken back already, the order takes no receipts any more, or
     *     somebody else did something with it meanwhile
     */
    @Transactional
    public void takeBack(Membership by, UUID orderId, UUID receiptId, String reason, int version) {
        PurchaseOrder order = begin(by, orderId, version);
        Receipt receipt = get(order, receiptId);
        if (!receipt.counts()) {
            throw new Refusal("purchase.refused.receipt-taken-back", receipt.number());
        }
        rows.takeBack(by, receiptId, reason);
        withdrawals.strikeOut(by, receipt.items().stream().map(Receipt.Item::id).toList(), reason);
        trail.add(by.act(
                "order.receipt-taken-back",
                "order",
                Integer.toString(order.number()),
                "receipt %d: %s".formatted(receipt.number(), reason)));
    }

    private PurchaseOrder begin(Membership by, UUID orderId, int version) {
        PurchaseOrder order = orders.get(by.productionId(), orderId);
        orders.bump(by, order, version);
        if (!order.takesReceipts()) {
            throw new Refusal("purchase.refused.state", order.number());
        }
        return order;
    }

    private static String detail(PurchaseOrder order, NewReceipt receipt) {
        Map<UUID, String> models = order.lines().stream().collect(Collectors.toMap(OrderLine::id, OrderLine::model));
        return receipt.lines().stream()
                .map(line -> "%d × %s".formatted(line.good(), models.get(line.lineId()))
                        + line.faults().stream()
                                .map(fault -> ", %d %s and %s: %s"
                                        .formatted(fault.items(), fault.kind(), fault.remedy(), fault.words()))
                                .collect(Collectors.joining()))
                .collect(Collectors.joining("; "));
    }
}
