package rollbook.offload;

import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemHold;

/** Nothing leaves while an offload runs through it. */
@Component
class SessionHold implements ItemHold {
    private final JdbcClient jdbc;

    SessionHold(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Optional<Hold> reasonToKeep(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select r.code from offload_session s join offload_roll r on r.id = s.roll_id
                        where s.production_id = :production and s.outcome = 'RUNNING'
                          and (:item in (s.reader_id, s.adapter_id, r.card_id)
                            or exists (select 1 from offload_destination d join offload_copy c on c.id = d.copy_id
                                       where d.session_id = s.id and c.item_id = :item))
                        order by s.started_at limit 1
                        """)
                .param("production", productionId)
                .param("item", itemId)
                .query(String.class)
                .optional()
                .map(roll -> Hold.of("offload.hold.running", roll));
    }
}
