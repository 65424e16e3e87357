package rollbook.shipment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.production.Signatory;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Confirms item by item what arrived. Only from then on an item is at its new place. */
@Service
public class Arrivals {
    private final JdbcClient jdbc;
    private final Shipments shipments;
    private final ShipmentRecord record;
    private final MediaItems items;
    private final Custody custody;
    private final AuditTrail trail;
    private final Display display;

    Arrivals(
            JdbcClient jdbc,
            Shipments shipments,
            ShipmentRecord record,
            MediaItems items,
            Custody custody,
            AuditTrail trail,
            Display display) {
        this.jdbc = jdbc;
        this.shipments = shipments;
        this.record = record;
        this.items = items;
        this.custody = custody;
        this.trail = trail;
        this.display = display;
    }

    /**
     * Confirms for a signed-in receiver. What somebody else confirmed meanwhile is left as it is.
     *
     * @throws Refusal if nothing of it is under way any more
     */
    @Transactional
    public void confirm(Membership by, UUID shipmentId, List<Arrival> arrivals) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId);
        if (!shipment.awaitsReceipt()) {
            throw new Refusal("shipment.refused.not-under-way", shipment.number());
        }
        confirm(by.signatory(), null, shipment, arrivals);
    }

    /**
     * @param linkId by which it is signed for, null if by an account
     * @param shipment whose lock is held
     */
    @Transactional(propagation = Propagation.MANDATORY)
    void confirm(Signatory by, @Nullable UUID linkId, Shipment shipment, List<Arrival> arrivals) {
        Map<UUID, ShipmentItem> inside = shipments.items(by.productionId(), shipment.id()).stream()
                .collect(Collectors.toMap(ShipmentItem::itemId, Function.identity()));
        List<String> came = new ArrayList<>();
        List<String> missed = new ArrayList<>();
        List<Arrival> inOrder = arrivals.stream()
                .filter(arrival -> inside.containsKey(arrival.itemId()))
                .sorted(Comparator.comparing(
                        arrival -> inside.get(arrival.itemId()).code()))
                .toList();
        for (Arrival arrival : inOrder) {
            MediaItem item = items.lock(by.productionId(), arrival.itemId());
            if (move(shipment, arrival)) {
                record.ofItem(by, linkId, shipment.id(), arrival.outcome().act(), item.id(), arrival.note());
                if (arrival.outcome() == Arrival.Outcome.MISSING) {
                    missed.add(item.code());
                } else {
                    arrive(by, linkId, shipment, item, arrival);
                    came.add(item.code());
                }
            }
        }
        tell(by, shipment, "shipment.arrived", came);
        tell(by, shipment, "shipment.missed", missed);
        bump(shipment);
    }

    /** Whether it changes anything: an item that arrived or is lost by now stays so, one that is missed already too. */
    private boolean move(Shipment shipment, Arrival arrival) {
        return jdbc.sql("""
                        update shipment_item set state = :to where shipment_id = :shipment and item_id = :item
                          and state in ('UNDER_WAY', 'MISSING') and state <> :to
                        """)
                        .param("to", arrival.outcome().state().name())
                        .param("shipment", shipment.id())
                        .param("item", arrival.itemId())
                        .update()
                > 0;
    }

    private void arrive(Signatory by, @Nullable UUID linkId, Shipment shipment, MediaItem item, Arrival arrival) {
        String holder = !shipment.receiver().isEmpty() ? shipment.receiver() : linkId == null ? "" : by.name();
        custody.passOn(
                by,
                item.id(),
                shipment.toPlaceId(),
                holder,
                note("shipment.custody.arrived", shipment, arrival.note()));
        if (arrival.outcome() == Arrival.Outcome.SEAL_DAMAGED && item.condition() == Condition.GOOD) {
            custody.quarantine(by, item.id(), note("shipment.custody.seal", shipment, arrival.note()));
        }
    }

    /**
     * Says that an item that was confirmed hasn't arrived after all. It is missing then, and where it came from.
     *
     * @throws Refusal if it has gone on since, or was sent again
     */
    @Transactional
    public void takeBack(Membership by, UUID shipmentId, UUID itemId, String reason) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId);
        ShipmentItem packed = shipments.items(by.productionId(), shipmentId).stream()
                .filter(inside -> inside.itemId().equals(itemId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        MediaItem item = items.lock(by.productionId(), itemId);
        boolean stays = packed.state() == ShipmentItem.State.ARRIVED
                && item.placeId().equals(shipment.toPlaceId())
                && isLatestOf(by, shipment, itemId);
        if (!stays) {
            throw new Refusal("shipment.refused.gone-on", item.code());
        }
        jdbc.sql("update shipment_item set state = 'MISSING' where shipment_id = ? and item_id = ?")
                .params(shipmentId, itemId)
                .update();
        record.ofItem(by.signatory(), null, shipmentId, ShipmentAct.Kind.MISSING, itemId, reason);
        custody.passOn(
                by.signatory(),
                itemId,
                shipment.fromPlaceId(),
                shipment.carrier(),
                note("shipment.custody.not-arrived", shipment, reason));
        tell(by.signatory(), shipment, "shipment.missed", List.of(item.code()));
        bump(shipment);
    }

    private boolean isLatestOf(Membership by, Shipment shipment, UUID itemId) {
        return jdbc.sql("""
                        select coalesce(max(s.number), 0) from shipment_item x join shipment_shipment s on s.id = x.shipment_id
                        where s.production_id = ? and x.item_id = ?
                        """)
                        .params(by.productionId(), itemId)
                        .query(Integer.class)
                        .single()
                == shipment.number();
    }

    private String note(String key, Shipment shipment, String note) {
        String says = display.text(key, shipment.number());
        return note.isEmpty() ? says : says + " " + note;
    }

    private void tell(Signatory by, Shipment shipment, String action, List<String> codes) {
        if (!codes.isEmpty()) {
            trail.add(by.act(action, "shipment", String.valueOf(shipment.number()), String.join(", ", codes)));
        }
    }

    private void bump(Shipment shipment) {
        jdbc.sql("update shipment_shipment set version = version + 1 where id = ?")
                .param(shipment.id())
                .update();
    }
}
