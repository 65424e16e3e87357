package rollbook.shipment;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** What was sent to a place, item by item. */
@Service
public class SentItems {
    private final JdbcClient jdbc;

    SentItems(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All that was sent there and not taken back, in the order in which it was sent; in one statement. */
    public List<SentItem> to(UUID productionId, UUID placeId) {
        return jdbc.sql("""
                        select s.id as shipment_id, s.number, i.item_id, s.carrier, s.sent_at, s.expected_by, i.state,
                               a.at as closed_at, a.by_name as closed_by_name
                        from shipment_shipment s
                        join shipment_item i on i.shipment_id = s.id
                        left join lateral (select act.at, act.by_name from shipment_act act
                                           where act.shipment_id = s.id and act.item_id = i.item_id and act.act = i.state
                                             and act.at >= s.sent_at
                                           order by act.id desc limit 1) a on true
                        where s.production_id = ? and s.to_place_id = ? and s.state = 'SENT'
                        order by s.sent_at, s.number, i.position
                        """).params(productionId, placeId).query(SentItem.class).list();
    }
}
