package rollbook.shipment;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemJourney;
import rollbook.manifest.Verdict;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The shipments of a production, and what is in them. */
@Repository
public class Shipments implements ItemJourney {
    private static final String SHIPMENTS = """
            select s.id, s.number, s.from_place_id, f.name as from_place_name, s.to_place_id, t.name as to_place_name,
                   t.off_site as to_off_site, s.receiver, s.carrier, s.seals, s.weight_grams, s.note, s.state as decided, s.packed_at,
                   packer.display_name as packed_by_name, s.sent_at, sender.display_name as sent_by_name, s.expected_by, s.dispatch,
                   s.version, n.*
            from shipment_shipment s
            join production_place f on f.id = s.from_place_id
            join production_place t on t.id = s.to_place_id
            join people_person packer on packer.id = s.packed_by
            left join people_person sender on sender.id = s.sent_by
            cross join lateral (
              select count(*)::int as items, count(*) filter (where i.state = 'UNDER_WAY')::int as under_way,
                     count(*) filter (where i.state = 'MISSING')::int as missing,
                     count(*) filter (where i.state = 'ARRIVED')::int as arrived, count(*) filter (where i.state = 'LOST')::int as lost
              from shipment_item i where i.shipment_id = s.id) n
            where s.production_id = :production
            """;

    private static final String ITEMS = """
            select x.shipment_id, x.item_id, i.code, i.kind, i.model, x.state, i.condition, i.card_state, i.place_id,
                   p.name as place_name
            from shipment_item x join inventory_item i on i.id = x.item_id join production_place p on p.id = i.place_id
            join shipment_shipment s on s.id = x.shipment_id
            where s.production_id = :production
            """;

    private final JdbcClient jdbc;

    Shipments(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All, the newest first. */
    public List<Shipment> ofProduction(UUID productionId) {
        return jdbc.sql(SHIPMENTS + " order by s.number desc")
                .param("production", productionId)
                .query(Shipment.class)
                .list();
    }

    /** @throws NotFoundException if this production has no such shipment */
    public Shipment get(UUID productionId, UUID shipmentId) {
        return jdbc.sql(SHIPMENTS + " and s.id = :id")
                .param("production", productionId)
                .param("id", shipmentId)
                .query(Shipment.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /**
     * One of which something is still to arrive.
     *
     * @throws Refusal if nothing is
     */
    Shipment underWay(UUID productionId, UUID shipmentId) {
        Shipment shipment = get(productionId, shipmentId);
        if (!shipment.awaitsReceipt()) {
            throw new Refusal("shipment.refused.not-under-way", shipment.number());
        }
        return shipment;
    }

    /**
     * Reads a shipment and keeps others from changing it until the transaction ends.
     *
     * @throws NotFoundException if this production has no such shipment
     */
    @Transactional(propagation = Propagation.MANDATORY)
    Shipment lock(UUID productionId, UUID shipmentId) {
        jdbc.sql("select id from shipment_shipment where production_id = ? and id = ? for no key update")
                .params(productionId, shipmentId)
                .query(UUID.class)
                .optional()
                .orElseThrow(NotFoundException::new);
        return get(productionId, shipmentId);
    }

    /** @throws Refusal if somebody else changed it since that version */
    @Transactional(propagation = Propagation.MANDATORY)
    Shipment lock(UUID productionId, UUID shipmentId, int version) {
        Shipment shipment = lock(productionId, shipmentId);
        if (shipment.version() != version) {
            throw new Refusal("shipment.refused.changed-meanwhile", shipment.number());
        }
        return shipment;
    }

    /** What is in a shipment, in the order of codes. */
    public List<ShipmentItem> items(UUID productionId, UUID shipmentId) {
        return jdbc.sql(ITEMS + " and x.shipment_id = :shipment order by upper(i.code)")
                .param("production", productionId)
                .param("shipment", shipmentId)
                .query(ShipmentItem.class)
                .list();
    }

    /** What of it is still to arrive, in the order of codes. */
    List<ShipmentItem> open(UUID productionId, UUID shipmentId) {
        return items(productionId, shipmentId).stream()
                .filter(ShipmentItem::isOpen)
                .toList();
    }

    /** The items of all shipments, in the order of their codes. */
    public List<ShipmentItem> items(UUID productionId) {
        return jdbc.sql(ITEMS + " order by x.shipment_id, upper(i.code)")
                .param("production", productionId)
                .query(ShipmentItem.class)
                .list();
    }

    /** What was in a shipment when it was sent last, item by item and roll by roll; empty while it is being packed. */
    public List<SentContent> sent(UUID productionId, UUID shipmentId) {
        return jdbc.sql("""
                        select c.* from shipment_content c
                        join shipment_shipment s on s.id = c.shipment_id and s.dispatch = c.dispatch and s.state = 'SENT'
                        where s.production_id = ? and s.id = ? order by c.position
                        """)
                .params(productionId, shipmentId)
                .query(Shipments::content)
                .list();
    }

    /** What happened, the oldest first. */
    public List<ShipmentAct> acts(UUID productionId, UUID shipmentId) {
        return jdbc.sql("""
                        select a.at, a.act, i.code as item_code, a.expected_by, a.note, a.by_name, a.link_id is not null as by_link
                        from shipment_act a join shipment_shipment s on s.id = a.shipment_id
                        left join inventory_item i on i.id = a.item_id
                        where s.production_id = ? and s.id = ? order by a.id
                        """)
                .params(productionId, shipmentId)
                .query(ShipmentAct.class)
                .list();
    }

    @Override
    public Map<UUID, Journey> of(UUID productionId, Collection<UUID> itemIds) {
        Map<UUID, Journey> journeys = new HashMap<>();
        jdbc.sql("""
                        select x.item_id, i.code, t.name, s.number, s.id, x.state from shipment_item x
                        join shipment_shipment s on s.id = x.shipment_id join production_place t on t.id = s.to_place_id
                        join inventory_item i on i.id = x.item_id
                        where s.production_id = ? and x.item_id = any (?) and x.state in ('UNDER_WAY', 'MISSING')
                        """).param(productionId).param(itemIds.toArray(UUID[]::new)).query(row -> {
            journeys.put(
                    row.getObject("item_id", UUID.class),
                    new Journey(
                            Hold.of(
                                    "shipment.journey." + row.getString("state"),
                                    row.getString("code"),
                                    row.getString("name"),
                                    row.getInt("number")),
                            "shipments/" + row.getString("id")));
        });
        return journeys;
    }

    private static SentContent content(ResultSet row, int number) throws SQLException {
        @Nullable String rendition = row.getString("rendition");
        @Nullable String verdict = row.getString("verdict");
        return new SentContent(
                row.getObject("item_id", UUID.class),
                row.getString("item_code"),
                MediaKind.valueOf(row.getString("item_kind")),
                row.getObject("roll_id", UUID.class),
                row.getString("roll_code"),
                rendition == null ? null : Rendition.valueOf(rendition),
                row.getObject("size_bytes", Long.class),
                verdict == null ? null : Verdict.valueOf(verdict),
                List.of((String[]) row.getArray("manifests").getArray()));
    }
}
