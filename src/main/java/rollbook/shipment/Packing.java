package rollbook.shipment;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.production.Places;
import rollbook.web.Refusal;

/** Puts items into a shipment and takes them out again, until it is sent. Nothing is in two shipments at once. */
@Service
public class Packing {
    private final JdbcClient jdbc;
    private final Shipments shipments;
    private final MediaItems items;
    private final Places places;
    private final AuditTrail trail;
    private final Clock clock;

    Packing(JdbcClient jdbc, Shipments shipments, MediaItems items, Places places, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.shipments = shipments;
        this.items = items;
        this.places = places;
        this.trail = trail;
        this.clock = clock;
    }

    /** @throws Refusal if an item is in another shipment or not with the production */
    @Transactional
    public UUID pack(Membership by, ShipmentDetails details, List<MediaItem> packed) {
        checkPlaces(by, details);
        // One after the other, so that no two get the same number.
        jdbc.sql("select id from production_production where id = ? for no key update")
                .param(by.productionId())
                .query(UUID.class)
                .single();
        UUID id = UUID.randomUUID();
        int number = jdbc.sql("""
                        insert into shipment_shipment (id, production_id, number, from_place_id, to_place_id, receiver, carrier, seals,
                            weight_grams, note, expected_by, state, packed_at, packed_by)
                        select :id, :production, coalesce(max(number), 0) + 1, :from, :to, :receiver, :carrier, :seals,
                            :weight, :note, :expected, 'PACKING', :now, :person
                        from shipment_shipment where production_id = :production returning number
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("from", details.fromPlaceId())
                .param("to", details.toPlaceId())
                .param("receiver", details.receiver())
                .param("carrier", details.carrier())
                .param("seals", details.seals())
                .param("weight", details.weightGrams())
                .param("note", details.note())
                .param("expected", timestamp(details.expectedBy()))
                .param("now", Timestamp.from(clock.instant()))
                .param("person", by.personId())
                .query(Integer.class)
                .single();
        keep(by, packed.stream().map(MediaItem::id));
        fill(id, by, packed);
        trail.add(by.act("shipment.packed", "shipment", String.valueOf(number), codes(packed)));
        return id;
    }

    /**
     * Packs it anew: what is said of it, and what is in it.
     *
     * @throws Refusal if it was sent or changed meanwhile, or an item is in another shipment or not with the production
     */
    @Transactional
    public void change(Membership by, UUID shipmentId, ShipmentDetails details, List<MediaItem> packed, int version) {
        Shipment shipment = requirePacking(shipments.lock(by.productionId(), shipmentId, version));
        checkPlaces(by, details);
        jdbc.sql("""
                        update shipment_shipment set from_place_id = :from, to_place_id = :to, receiver = :receiver, carrier = :carrier,
                            seals = :seals, weight_grams = :weight, note = :note, expected_by = :expected, version = version + 1
                        where id = :id
                        """)
                .param("from", details.fromPlaceId())
                .param("to", details.toPlaceId())
                .param("receiver", details.receiver())
                .param("carrier", details.carrier())
                .param("seals", details.seals())
                .param("weight", details.weightGrams())
                .param("note", details.note())
                .param("expected", timestamp(details.expectedBy()))
                .param("id", shipmentId)
                .update();
        keep(
                by,
                Stream.concat(
                        shipments.items(by.productionId(), shipmentId).stream().map(ShipmentItem::itemId),
                        packed.stream().map(MediaItem::id)));
        jdbc.sql("delete from shipment_item where shipment_id = ?")
                .param(shipmentId)
                .update();
        fill(shipmentId, by, packed);
        trail.add(by.act("shipment.changed", "shipment", String.valueOf(shipment.number()), codes(packed)));
    }

    /** Gives up what was being packed; its number isn't used again. */
    @Transactional
    public void discard(Membership by, UUID shipmentId, int version) {
        Shipment shipment = requirePacking(shipments.lock(by.productionId(), shipmentId, version));
        jdbc.sql("delete from shipment_item where shipment_id = ?")
                .param(shipmentId)
                .update();
        jdbc.sql("update shipment_shipment set state = 'DISCARDED', version = version + 1 where id = ?")
                .param(shipmentId)
                .update();
        trail.add(by.act("shipment.discarded", "shipment", String.valueOf(shipment.number()), ""));
    }

    static Shipment requirePacking(Shipment shipment) {
        if (!shipment.isPacking()) {
            throw new Refusal("shipment.refused.not-packing", shipment.number());
        }
        return shipment;
    }

    private void checkPlaces(Membership by, ShipmentDetails details) {
        places.get(by.productionId(), details.fromPlaceId());
        places.get(by.productionId(), details.toPlaceId());
    }

    /** Keeps items as they are until the transaction ends, in one order: who loses one does so before or after. */
    private void keep(Membership by, Stream<UUID> ids) {
        ids.distinct().sorted().forEach(id -> {
            MediaItem item = items.keep(by.productionId(), id);
            if (item.condition() != Condition.GOOD && item.condition() != Condition.QUARANTINED) {
                throw new Refusal("shipment.refused.not-here", item.code());
            }
        });
    }

    private void fill(UUID shipmentId, Membership by, List<MediaItem> packed) {
        for (int position = 0; position < packed.size(); position++) {
            MediaItem item = packed.get(position);
            int added = jdbc.sql("""
                            insert into shipment_item (shipment_id, item_id, position, state) values (?, ?, ?, 'PACKED')
                            on conflict do nothing
                            """).params(shipmentId, item.id(), position).update();
            if (added == 0) {
                throw new Refusal("shipment.refused.in-another", item.code(), numberOfBox(by, item));
            }
        }
    }

    private int numberOfBox(Membership by, MediaItem item) {
        return jdbc.sql("""
                        select s.number from shipment_item x join shipment_shipment s on s.id = x.shipment_id
                        where s.production_id = ? and x.item_id = ? and x.state in ('PACKED', 'UNDER_WAY', 'MISSING')
                        """)
                .params(by.productionId(), item.id())
                .query(Integer.class)
                .optional()
                .orElse(0);
    }

    private static @Nullable Timestamp timestamp(@Nullable Instant instant) {
        return instant == null ? null : Timestamp.from(instant);
    }

    private static String codes(List<MediaItem> packed) {
        return packed.stream().map(MediaItem::code).collect(Collectors.joining(", "));
    }
}
