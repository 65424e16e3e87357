package rollbook.shipment;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.CardState;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.manifest.Verdict;
import rollbook.production.Membership;
import rollbook.production.Rendition;
import rollbook.verification.MediaContents;
import rollbook.verification.RollCopies;
import rollbook.web.Display;
import rollbook.web.Refusal;

/**
 * Sends what is packed. From then on the carrier has the items, and what is in the shipment is on record for good. The
 * place of each stays where it came from until somebody confirms that it has arrived, so that a copy counts at a place
 * only once it is there.
 */
@Service
public class Sending {
    /** After which a hand-over that nobody confirmed is late. */
    static final Duration HAND_OVER = Duration.ofDays(1);

    private final JdbcClient jdbc;
    private final Shipments shipments;
    private final Packing packing;
    private final ShipmentRecord record;
    private final MediaItems items;
    private final Custody custody;
    private final MediaContents contents;
    private final AuditTrail trail;
    private final Display display;
    private final Clock clock;

    Sending(
            JdbcClient jdbc,
            Shipments shipments,
            Packing packing,
            ShipmentRecord record,
            MediaItems items,
            Custody custody,
            MediaContents contents,
            AuditTrail trail,
            Display display,
            Clock clock) {
        this.jdbc = jdbc;
        this.shipments = shipments;
        this.packing = packing;
        this.record = record;
        this.items = items;
        this.custody = custody;
        this.contents = contents;
        this.trail = trail;
        this.display = display;
        this.clock = clock;
    }

    /**
     * @param expectedBy when it should have arrived
     * @throws Refusal if it was changed meanwhile or is empty, an item isn't where it is sent from, or it is at work
     */
    @Transactional
    public void send(Membership by, UUID shipmentId, Instant expectedBy, int version) {
        Shipment shipment = Packing.requirePacking(shipments.lock(by.productionId(), shipmentId, version));
        List<ShipmentItem> packed = shipments.items(by.productionId(), shipmentId);
        if (packed.isEmpty()) {
            throw new Refusal("shipment.refused.empty", shipment.number());
        }
        List<MediaItem> leaving = packed.stream()
                .map(item -> items.lock(by.productionId(), item.itemId()))
                .toList();
        leaving.forEach(item -> check(shipment, item));
        int dispatch = shipment.dispatch() + 1;
        jdbc.sql("""
                        update shipment_shipment set state = 'SENT', sent_at = ?, sent_by = ?, expected_by = ?, dispatch = ?,
                            version = version + 1 where id = ?
                        """)
                .params(
                        Timestamp.from(clock.instant()),
                        by.personId(),
                        Timestamp.from(expectedBy),
                        dispatch,
                        shipmentId)
                .update();
        freeze(by, shipment, dispatch, packed);
        String holder = shipment.isHandOver() ? by.personName() : shipment.carrier();
        String note = display.text("shipment.custody.sent", shipment.toPlaceName(), shipment.number());
        for (MediaItem item : leaving) {
            jdbc.sql(
                            "update shipment_item set state = 'UNDER_WAY', holder_before = ? where shipment_id = ? and item_id = ?")
                    .params(item.holder(), shipmentId, item.id())
                    .update();
            custody.passOn(by.signatory(), item.id(), item.placeId(), holder, note);
        }
        record.ofShipment(by.signatory(), shipmentId, ShipmentAct.Kind.SENT, null, "");
        String codes = leaving.stream().map(MediaItem::code).collect(Collectors.joining(", "));
        trail.add(by.act("shipment.sent", "shipment", String.valueOf(shipment.number()), codes));
    }

    /** Packs and sends in one, without a carrier: from hand to hand. */
    @Transactional
    public UUID handOver(Membership by, ShipmentDetails details, List<MediaItem> handed) {
        UUID id = packing.pack(by, details, handed);
        send(by, id, clock.instant().plus(HAND_OVER), 0);
        return id;
    }

    /**
     * Says that it wasn't sent after all: the items are with whom they were, and it is being packed again.
     *
     * @throws Refusal if it was changed meanwhile, or anything has happened since
     */
    @Transactional
    public void takeBack(Membership by, UUID shipmentId, int version) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId, version);
        if (!shipment.mayBeTakenBack()) {
            throw new Refusal("shipment.refused.not-taken-back", shipment.number());
        }
        String note = display.text("shipment.custody.taken-back", shipment.number());
        for (ShipmentItem packed : shipments.items(by.productionId(), shipmentId)) {
            MediaItem item = items.lock(by.productionId(), packed.itemId());
            String holder = jdbc.sql("""
                            update shipment_item set state = 'PACKED' where shipment_id = ? and item_id = ? returning holder_before
                            """)
                    .params(shipmentId, item.id())
                    .query(String.class)
                    .single();
            custody.passOn(by.signatory(), item.id(), item.placeId(), holder, note);
        }
        jdbc.sql("""
                        update shipment_shipment set state = 'PACKING', sent_at = null, sent_by = null, version = version + 1
                        where id = ?
                        """).param(shipmentId).update();
        jdbc.sql("""
                        update shipment_link set revoked_at = ? where shipment_id = ? and revoked_at is null and used_at is null
                        """).params(Timestamp.from(clock.instant()), shipmentId).update();
        record.ofShipment(by.signatory(), shipmentId, ShipmentAct.Kind.TAKEN_BACK, null, "");
        trail.add(by.act("shipment.taken-back", "shipment", String.valueOf(shipment.number()), ""));
    }

    /** Notes another time by which it should arrive, as the carrier says it now. */
    @Transactional
    public void expectAnew(Membership by, UUID shipmentId, Instant expectedBy, String note, int version) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId, version);
        if (!shipment.awaitsReceipt()) {
            throw new Refusal("shipment.refused.not-under-way", shipment.number());
        }
        jdbc.sql("update shipment_shipment set expected_by = ?, version = version + 1 where id = ?")
                .params(Timestamp.from(expectedBy), shipmentId)
                .update();
        record.ofShipment(by.signatory(), shipmentId, ShipmentAct.Kind.EXPECTED_ANEW, expectedBy, note);
        trail.add(by.act(
                "shipment.expected-anew",
                "shipment",
                String.valueOf(shipment.number()),
                display.moment(expectedBy, by.zone())));
    }

    private static void check(Shipment shipment, MediaItem item) {
        if (!item.placeId().equals(shipment.fromPlaceId())) {
            throw new Refusal("shipment.refused.elsewhere", item.code(), item.placeName(), shipment.fromPlaceName());
        }
        if (item.cardState() == CardState.IN_CAMERA || item.cardState() == CardState.COPYING) {
            throw new Refusal(
                    "shipment.refused.at-work",
                    item.code(),
                    new DefaultMessageSourceResolvable("web.card-state." + item.cardState()));
        }
    }

    private void freeze(Membership by, Shipment shipment, int dispatch, List<ShipmentItem> packed) {
        List<RollCopies> rolls = contents.rollsOn(
                by.productionId(), packed.stream().map(ShipmentItem::itemId).toList());
        int position = 0;
        for (ShipmentItem item : packed) {
            for (SentContent content : SentContent.of(item, rolls)) {
                insert(shipment.id(), dispatch, ++position, content);
            }
        }
    }

    private void insert(UUID shipmentId, int dispatch, int position, SentContent content) {
        @Nullable Rendition rendition = content.rendition();
        @Nullable Verdict verdict = content.verdict();
        jdbc.sql("""
                        insert into shipment_content (shipment_id, dispatch, position, item_id, item_code, item_kind, roll_id, roll_code,
                            rendition, size_bytes, verdict, manifests)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(shipmentId)
                .param(dispatch)
                .param(position)
                .param(content.itemId())
                .param(content.itemCode())
                .param(content.itemKind().name())
                .param(content.rollId())
                .param(content.rollCode())
                .param(rendition == null ? null : rendition.name())
                .param(content.sizeBytes())
                .param(verdict == null ? null : verdict.name())
                .param(content.manifests().toArray(String[]::new))
                .update();
    }
}
