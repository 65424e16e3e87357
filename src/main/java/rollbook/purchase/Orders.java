package rollbook.purchase;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.purchase.OrderStep.Kind;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.Suppliers;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * The orders of a production and what is done with them. Each act is given the version of the order that the person has
 * seen: of two people at once the second is refused.
 */
@Service
public class Orders {
    private final OrderRows rows;
    private final OrderStore store;
    private final OrderLines lines;
    private final Limits limits;
    private final Suppliers suppliers;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Orders(
            OrderRows rows,
            OrderStore store,
            OrderLines lines,
            Limits limits,
            Suppliers suppliers,
            AuditTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.rows = rows;
        this.store = store;
        this.lines = lines;
        this.limits = limits;
        this.suppliers = suppliers;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /** All, in the order of their numbers. */
    public List<PurchaseOrder> list(UUID productionId) {
        return rows.list(productionId);
    }

    /** @throws NotFoundException if this production has no such order */
    public PurchaseOrder get(UUID productionId, UUID orderId) {
        return rows.find(productionId, orderId).orElseThrow(NotFoundException::new);
    }

    /** Those of which something is still to come, by the date on which it is expected. */
    public List<PurchaseOrder> expected(UUID productionId) {
        return rows.list(productionId).stream()
                .filter(PurchaseOrder::isAwaited)
                .sorted(Comparator.comparing(PurchaseOrder::expectedOn).thenComparing(PurchaseOrder::number))
                .toList();
    }

    /**
     * Proposes an order, at the catalogue's prices of today where none are given.
     *
     * @throws NotFoundException if an item or a leg isn't there
     * @throws Refusal if the lines are of several suppliers
     */
    @Transactional
    public UUID propose(Membership by, NewOrder order) {
        Map<UUID, CatalogueItem> items = lines.items(by.productionId(), order.lines());
        UUID supplierId = OrderLines.supplier(order.lines(), items);
        UUID id = store.add(by, supplierId, order, delivery(by, supplierId, order));
        lines.write(by.productionId(), id, order.lines(), items, today(by));
        PurchaseOrder proposed = get(by.productionId(), id);
        told(by, proposed, "order.proposed", detail(proposed));
        events.publishEvent(new OrderChanged(by.productionId()));
        return id;
    }

    private long delivery(Membership by, @Nullable UUID supplierId, NewOrder order) {
        if (order.deliveryMinorUnits() != null) {
            return order.deliveryMinorUnits();
        }
        return supplierId == null
                ? 0
                : suppliers.get(by.productionId(), supplierId).details().deliveryMinorUnits();
    }

    /**
     * Changes a proposed order; where it came from stays.
     *
     * @throws Refusal if it isn't proposed any more, or somebody else did something with it meanwhile
     */
    @Transactional
    public void change(Membership by, UUID orderId, NewOrder changed, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.PROPOSED);
        Map<UUID, CatalogueItem> items = lines.items(by.productionId(), changed.lines());
        UUID supplierId = OrderLines.supplier(changed.lines(), items);
        store.change(orderId, supplierId, changed, delivery(by, supplierId, changed));
        lines.write(by.productionId(), orderId, changed.lines(), items, today(by));
        addStep(by, order, Kind.CHANGED, "");
        told(by, order, "order.changed", detail(get(by.productionId(), orderId)));
    }

    /**
     * Approves a proposed order.
     *
     * @throws Refusal if something of it isn't known, the person may not approve that much, it isn't proposed any more, or
     *     somebody else did something with it meanwhile
     */
    @Transactional
    public void approve(Membership by, UUID orderId, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.PROPOSED);
        Long total = order.totalMinorUnits();
        if (!order.isComplete() || total == null) {
            throw new Refusal("purchase.refused.incomplete", order.number());
        }
        if (!limits.of(by.productionId()).allow(by, total)) {
            throw new Refusal("purchase.refused.over-limit", order.number());
        }
        addStep(by, order, Kind.APPROVED, "");
        told(by, order, "order.approved", "%d in the smallest unit of the currency".formatted(total));
    }

    /** @throws Refusal if it isn't proposed any more, or somebody else did something with it meanwhile */
    @Transactional
    public void decline(Membership by, UUID orderId, String reason, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.PROPOSED);
        addStep(by, order, Kind.DECLINED, reason);
        told(by, order, "order.declined", reason);
    }

    /**
     * Records that an approved order was placed with its supplier; the forecast counts on it from then on.
     *
     * @param expectedOn as the supplier says, not before it was ordered
     * @throws Refusal if it isn't approved, or somebody else did something with it meanwhile
     */
    @Transactional
    public void place(Membership by, UUID orderId, LocalDate orderedOn, LocalDate expectedOn, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.APPROVED);
        store.addStep(by, order, new OrderStore.Step(Kind.PLACED, orderedOn, expectedOn, "", null));
        told(by, order, "order.placed", "on %s, expected on %s".formatted(orderedOn, expectedOn));
        events.publishEvent(new OrderPlaced(
                by,
                orderId,
                order.lines().stream()
                        .map(OrderLine::legId)
                        .filter(Objects::nonNull)
                        .collect(Collectors.toSet())));
    }

    /**
     * Records that the supplier now says another date.
     *
     * @param words what the supplier says; may be empty
     * @throws Refusal if nothing is still to come, or somebody else did something with it meanwhile
     */
    @Transactional
    public void promise(Membership by, UUID orderId, LocalDate expectedOn, String words, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.PLACED, State.PART_ARRIVED);
        store.addStep(by, order, new OrderStore.Step(Kind.PROMISED, null, expectedOn, words, null));
        told(
                by,
                order,
                "order.promised",
                "for %s %s".formatted(expectedOn, words).strip());
    }

    /**
     * Calls off what hasn't come: all of it before anything did.
     *
     * @throws Refusal if nothing is still to come, it is ordered and the person isn't of the office, or somebody else did
     *     something with it meanwhile
     */
    @Transactional
    public void cancel(Membership by, UUID orderId, String reason, int version) {
        PurchaseOrder order =
                begin(by, orderId, version, State.PROPOSED, State.APPROVED, State.PLACED, State.PART_ARRIVED);
        if (order.state() != State.PROPOSED && !by.mayKeepBooks()) {
            throw new Refusal("purchase.refused.office-cancels", order.number());
        }
        addStep(by, order, Kind.CANCELLED, reason);
        told(by, order, "order.cancelled", reason);
    }

    /** @throws Refusal if something is still to come, or somebody else did something with it meanwhile */
    @Transactional
    public void close(Membership by, UUID orderId, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.ARRIVED);
        addStep(by, order, Kind.CLOSED, "");
        told(by, order, "order.closed", "");
    }

    /**
     * Takes back a step on which no later one rests: whoever took it may, and the office. It stays on record.
     *
     * @param number of the step
     * @throws Refusal if that isn't so, or somebody else did something with it meanwhile
     */
    @Transactional
    public void takeBack(Membership by, UUID orderId, int number, int version) {
        PurchaseOrder order = begin(by, orderId, version, State.values());
        OrderStep step = order.revocable().stream()
                .filter(one -> one.number() == number)
                .findFirst()
                .orElseThrow(() -> new Refusal("purchase.refused.rests-on-it", order.number()));
        if (!step.mayBeTakenBackBy(by)) {
            throw new Refusal("purchase.refused.not-yours", order.number());
        }
        store.addStep(by, order, new OrderStore.Step(Kind.TAKEN_BACK, null, null, "", number));
        told(by, order, "order.step-taken-back", step.kind().name().toLowerCase(Locale.ROOT));
    }

    /**
     * Takes the order's next version, and holds it until the transaction ends.
     *
     * @throws Refusal if it isn't the one that the person has seen
     */
    @Transactional(propagation = Propagation.MANDATORY)
    void bump(Membership by, PurchaseOrder order, int version) {
        if (order.version() != version || !store.bump(order)) {
            throw new Refusal("purchase.refused.changed", order.number());
        }
        events.publishEvent(new OrderChanged(by.productionId()));
    }

    /** The order as the person has seen it. */
    private PurchaseOrder begin(Membership by, UUID orderId, int version, State... allowed) {
        PurchaseOrder order = get(by.productionId(), orderId);
        bump(by, order, version);
        if (!List.of(allowed).contains(order.state())) {
            throw new Refusal("purchase.refused.state", order.number());
        }
        return order;
    }

    private void addStep(Membership by, PurchaseOrder order, Kind kind, String reason) {
        store.addStep(by, order, new OrderStore.Step(kind, null, null, reason, null));
    }

    private void told(Membership by, PurchaseOrder order, String action, String detail) {
        trail.add(by.act(action, "order", Integer.toString(order.number()), detail));
    }

    private static String detail(PurchaseOrder order) {
        return order.lines().stream()
                .map(line -> "%d × %s".formatted(line.items(), line.model()))
                .collect(Collectors.joining(", "));
    }

    private LocalDate today(Membership by) {
        return LocalDate.ofInstant(clock.instant(), by.zone());
    }
}
