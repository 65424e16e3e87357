package rollbook.scenario;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What earlier rolls and copies tell of a day to come, each list in one statement. */
@Repository
class DayRows {
    private final JdbcClient jdbc;

    DayRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What a row is about. */
    enum Kind {
        /** How often a camera recorded on a kind of card. */
        CARDS,
        /** The medium that a leg was written to last. */
        MEDIUM,
        /** What a camera recorded on the date: rolls, and minutes of those that were pulled. */
        RECORDED
    }

    /**
     * @param thingId a camera, or a leg
     * @param itemId a card of that kind, or the medium
     */
    record Row(
            Kind kind,
            UUID thingId,
            @Nullable UUID itemId,
            long times,
            @Nullable BigDecimal minutes) {}

    /** What a camera is to record in a format. */
    record Planned(UUID cameraId, String letter, String unitName, UUID formatId, BigDecimal minutes) {}

    /** By unit and camera, then by what is recorded most. */
    List<Planned> planned(UUID productionId, List<UUID> dayIds) {
        return jdbc.sql("""
                        select p.camera_id, c.letter, u.name as unit_name, p.format_id, sum(p.minutes) as minutes
                        from schedule_plan p
                        join schedule_day d on d.id = p.day_id
                        join production_camera c on c.id = p.camera_id
                        join production_unit u on u.id = c.unit_id
                        where d.production_id = :production and d.id = any(:days) and p.minutes > 0
                        group by p.camera_id, c.letter, u.name, u.position, p.format_id
                        order by u.position, c.letter, minutes desc, p.format_id
                        """)
                .param("production", productionId)
                .param("days", dayIds.toArray(UUID[]::new))
                .query(Planned.class)
                .list();
    }

    List<Row> rows(UUID productionId, List<UUID> dayIds) {
        return jdbc.sql("""
                        select 'CARDS' as kind, r.camera_id as thing_id, (array_agg(i.id order by i.code))[1] as item_id,
                               count(*) as times, null::numeric as minutes
                        from offload_roll r join inventory_item i on i.id = r.card_id
                        where r.production_id = :production group by r.camera_id, i.model, i.capacity_bytes
                        union all
                        select 'MEDIUM', leg_id, item_id, 1, null from (
                            select distinct on (leg_id) leg_id, item_id from offload_copy
                            where production_id = :production and leg_id is not null
                            order by leg_id, written_from desc, created_at desc) last
                        union all
                        select 'RECORDED', r.camera_id, null, count(*), coalesce(sum(r.minutes), 0)
                        from offload_roll r
                        where r.production_id = :production and r.day_id = any(:days) group by r.camera_id
                        """)
                .param("production", productionId)
                .param("days", dayIds.toArray(UUID[]::new))
                .query(Row.class)
                .list();
    }
}
