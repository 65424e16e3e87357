package rollbook.shipment;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** What went to a place and is on its way from there, item by item. */
@Service
public class SentItems {
    private final JdbcClient jdbc;

    SentItems(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * All that was sent to the place and not taken back, and what is being packed there or on its way from there; in the
     * order in which it was sent, in one statement. Without what only goes from hand to hand there.
     */
    public List<SentItem> ofPlace(UUID productionId, UUID placeId) {
        return jdbc.sql("""
                        select s.id as shipment_id, s.number, i.item_id, s.to_place_id, p.name as to_place_name, s.carrier,
                               coalesce(s.sent_at, s.packed_at) as sent_at, s.expected_by, i.state,
                               a.at as closed_at, a.by_name as closed_by_name
                        from shipment_shipment s
                        join shipment_item i on i.shipment_id = s.id
                        join production_place p on p.id = s.to_place_id
                        left join lateral (select act.at, act.by_name from shipment_act act
                                           where act.shipment_id = s.id and act.item_id = i.item_id and act.act = i.state
                                             and act.at >= s.sent_at
                                           order by act.id desc limit 1) a on true
                        where s.production_id = :production and s.from_place_id <> s.to_place_id
                          and (s.to_place_id = :place and s.state = 'SENT'
                               or s.from_place_id = :place and i.state in ('PACKED', 'UNDER_WAY', 'MISSING'))
                        order by s.sent_at nulls last, s.number, i.position
                        """)
                .param("production", productionId)
                .param("place", placeId)
                .query(SentItem.class)
                .list();
    }
}
