package rollbook.hire;

import java.util.Collection;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.ItemUse;

/** The items that an agreement was ever about, or whose hire has ended. */
@Component
class HireUse implements ItemUse {
    private final JdbcClient jdbc;

    HireUse(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Set<UUID> used(UUID productionId, Collection<UUID> itemIds) {
        return Set.copyOf(jdbc.sql("""
                        select r.item_id from hire_rate r join hire_agreement a on a.id = r.agreement_id
                        where a.production_id = :production and r.item_id = any (:items)
                        union select item_id from hire_end where production_id = :production and item_id = any (:items)
                        """)
                .param("production", productionId)
                .param("items", itemIds.toArray(UUID[]::new))
                .query(UUID.class)
                .list());
    }
}
