package rollbook.forecast;

import java.math.BigDecimal;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What is recorded and written, as the forecast's inputs need it: each list in one query. */
@Repository
class RecordedRows {
    private final JdbcClient jdbc;

    RecordedRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * A roll.
     *
     * @param minutes null until it is pulled, and where nobody read them off
     * @param sizeBytes as recorded; null until an offload or a manifest tells
     * @param writtenOn legs that a copy was ever made for
     * @param heldOn legs with a copy on an item that is with the production and not in doubt
     */
    record RecordedRoll(
            UUID dayId,
            LocalDate date,
            UUID formatId,
            @Nullable BigDecimal minutes,
            @Nullable Long sizeBytes,
            Set<UUID> writtenOn,
            Set<UUID> heldOn) {}

    /** Bytes of a shooting day's rolls on an item. */
    record Written(UUID itemId, LocalDate date, long bytes) {}

    List<RecordedRoll> rolls(UUID productionId) {
        return jdbc.sql("""
                        select r.day_id, d.date, r.format_id, r.minutes, r.size_bytes,
                               array_agg(c.leg_id) filter (where c.leg_id is not null) as written_on,
                               array_agg(c.leg_id) filter (where c.leg_id is not null
                                                             and i.condition in ('GOOD', 'RETIRED')) as held_on
                        from offload_roll r
                        join schedule_day d on d.id = r.day_id
                        left join offload_copy c on c.roll_id = r.id
                        left join inventory_item i on i.id = c.item_id
                        where r.production_id = ?
                        group by r.id, d.date
                        """)
                .param(productionId)
                .query((row, number) -> new RecordedRoll(
                        row.getObject("day_id", UUID.class),
                        row.getObject("date", LocalDate.class),
                        row.getObject("format_id", UUID.class),
                        row.getBigDecimal("minutes"),
                        row.getObject("size_bytes", Long.class),
                        ids(row, "written_on"),
                        ids(row, "held_on")))
                .list();
    }

    /** What is on the items of legs that come back, by the day it was shot; counted as {@code Copies.usedBytes} does. */
    List<Written> onReturningLegs(UUID productionId) {
        return jdbc.sql("""
                        select c.item_id, d.date, sum(case when c.rendition = 'ENCODED'
                                  then coalesce(r.encoded_bytes, ceil(r.size_bytes * coalesce(l.kept_percent, 100) / 100.0)::bigint)
                                  else r.size_bytes end)::bigint as bytes
                        from offload_copy c
                        join offload_roll r on r.id = c.roll_id
                        join schedule_day d on d.id = r.day_id
                        join inventory_item i on i.id = c.item_id
                        join production_leg pool on pool.id = i.leg_id and pool.returns_after_days is not null
                        left join production_leg l on l.id = c.leg_id
                        where c.production_id = ? and r.size_bytes is not null
                        group by c.item_id, d.date
                        """).param(productionId).query(Written.class).list();
    }

    private static Set<UUID> ids(ResultSet row, String column) throws SQLException {
        Array ids = row.getArray(column);
        return ids == null ? Set.of() : Set.copyOf(List.of((UUID[]) ids.getArray()));
    }
}
