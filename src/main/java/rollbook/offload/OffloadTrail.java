package rollbook.offload;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemTrail;

/** What was recorded on an item, read from it and copied onto it; copies are told day by day, for a medium may hold hundreds. */
@Component
class OffloadTrail implements ItemTrail {
    private final JdbcClient jdbc;

    OffloadTrail(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Happening> of(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select r.loaded_at as at, 'loaded' as kind, r.code as code, c.letter as detail, 1 as rolls
                        from offload_roll r join production_camera c on c.id = r.camera_id
                        where r.production_id = :production and r.card_id = :item
                        union all
                        select r.pulled_at, 'pulled', r.code, c.letter, 1
                        from offload_roll r join production_camera c on c.id = r.camera_id
                        where r.production_id = :production and r.card_id = :item and r.pulled_at is not null
                        union all
                        select s.started_at, 'read', r.code, reader.code, 1
                        from offload_session s join offload_roll r on r.id = s.roll_id join inventory_item reader on reader.id = s.reader_id
                        where s.production_id = :production and r.card_id = :item
                        union all
                        select min(s.started_at), 'written', min(r.code), max(r.code), count(distinct r.id)::int
                        from offload_destination t join offload_session s on s.id = t.session_id
                        join offload_copy k on k.id = t.copy_id join offload_roll r on r.id = k.roll_id
                        where k.production_id = :production and k.item_id = :item
                        group by r.day_id
                        order by at
                        """)
                .param("production", productionId)
                .param("item", itemId)
                .query((row, number) -> new Happening(
                        row.getTimestamp("at").toInstant(),
                        "offload.trail." + row.getString("kind"),
                        Hold.of(
                                "offload.trail.says." + row.getString("kind"),
                                row.getString("code"),
                                row.getString("detail"),
                                row.getInt("rolls"))))
                .list();
    }
}
