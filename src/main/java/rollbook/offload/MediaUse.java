package rollbook.offload;

import java.util.Collection;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.ItemUse;

/** Cards that had a roll, readers and adapters of offloads, media that were written to. */
@Component
class MediaUse implements ItemUse {
    private final JdbcClient jdbc;

    MediaUse(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Set<UUID> used(UUID productionId, Collection<UUID> itemIds) {
        return itemIds.isEmpty()
                ? Set.of()
                : Set.copyOf(jdbc.sql("""
                                select card_id from offload_roll
                                where production_id = :production and card_id in (:items)
                                union select reader_id from offload_session
                                where production_id = :production and reader_id in (:items)
                                union select adapter_id from offload_session
                                where production_id = :production and adapter_id in (:items)
                                union select item_id from offload_copy
                                where production_id = :production and item_id in (:items)
                                """)
                        .param("production", productionId)
                        .param("items", itemIds)
                        .query(UUID.class)
                        .list());
    }
}
