package rollbook.shipment;

import java.util.Collection;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.ItemUse;

/** Items that were ever packed or sent. */
@Component
class ShippedMedia implements ItemUse {
    private final JdbcClient jdbc;

    ShippedMedia(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Set<UUID> used(UUID productionId, Collection<UUID> itemIds) {
        return itemIds.isEmpty()
                ? Set.of()
                : Set.copyOf(jdbc.sql("""
                        select x.item_id from shipment_item x join shipment_shipment s on s.id = x.shipment_id
                        where s.production_id = :production and x.item_id in (:items)
                        union
                        select c.item_id from shipment_content c join shipment_shipment s on s.id = c.shipment_id
                        where s.production_id = :production and c.item_id in (:items)
                        """)
                        .param("production", productionId)
                        .param("items", itemIds)
                        .query(UUID.class)
                        .list());
    }
}
