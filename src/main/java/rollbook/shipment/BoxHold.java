package rollbook.shipment;

import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemHold;

/** An item stays while it is packed or on its way. */
@Component
class BoxHold implements ItemHold {
    private final JdbcClient jdbc;

    BoxHold(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Optional<Hold> reasonToKeep(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select s.number from shipment_item x join shipment_shipment s on s.id = x.shipment_id
                        where s.production_id = ? and x.item_id = ? and x.state in ('PACKED', 'UNDER_WAY', 'MISSING')
                        """)
                .params(productionId, itemId)
                .query(Integer.class)
                .optional()
                .map(number -> Hold.of("shipment.hold", number));
    }
}
