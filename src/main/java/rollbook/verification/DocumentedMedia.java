package rollbook.verification;

import java.util.Collection;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.ItemUse;

/** Media that somebody sent a document about. */
@Component
class DocumentedMedia implements ItemUse {
    private final JdbcClient jdbc;

    DocumentedMedia(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Set<UUID> used(UUID productionId, Collection<UUID> itemIds) {
        return itemIds.isEmpty()
                ? Set.of()
                : Set.copyOf(jdbc.sql("""
                                select said_item_id from verification_document
                                where production_id = :production and said_item_id in (:items)
                                union select said_item_id from verification_delivery
                                where production_id = :production and said_item_id in (:items)
                                union select said_item_id from verification_upload
                                where production_id = :production and said_item_id in (:items)
                                """)
                        .param("production", productionId)
                        .param("items", itemIds)
                        .query(UUID.class)
                        .list());
    }
}
