package rollbook.report;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.production.MediaKind;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.web.NotFoundException;

/** What reports tell besides proof: days with their plans, and media with what is on them. */
@Repository
class ReportRows {
    /** Bytes that a copy c of a roll r takes, of a leg l: as far as the roll's size is known. */
    private static final String COPY_BYTES = """
            case when c.rendition = 'ENCODED'
                 then coalesce(r.encoded_bytes, ceil(r.size_bytes * coalesce(l.kept_percent, 100) / 100.0)::bigint)
                 else r.size_bytes end
            """;

    private final JdbcClient jdbc;

    ReportRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What a camera was to record in a format. */
    record PlanLine(String camera, UUID formatId, BigDecimal minutes) {}

    /**
     * A medium that holds copies of a day's rolls.
     *
     * @param dayBytes of these
     * @param usedBytes of all copies on it now
     */
    record DayMedium(
            String code,
            MediaKind kind,
            String placeName,
            long dayBytes,
            long usedBytes,
            @Nullable Long capacityBytes) {}

    record DayRows(ShootingDay day, List<PlanLine> plan, List<DayMedium> media) {}

    /**
     * A day, its plan, and the media with copies of its rolls, in one statement.
     *
     * @throws NotFoundException if this production has no such day
     */
    DayRows day(UUID productionId, UUID dayId) {
        List<ShootingDay> days = new ArrayList<>();
        List<PlanLine> plan = new ArrayList<>();
        List<DayMedium> media = new ArrayList<>();
        jdbc.sql("""
                        select d.id, d.unit_id, u.name as unit_name, d.number, d.date, d.state, d.note, d.version, line.*
                        from schedule_day d
                        join production_unit u on u.id = d.unit_id
                        left join (
                          select 'PLAN' as what, k.letter as code, null as kind, null as place_name, p.format_id, p.minutes,
                                 null::bigint as day_bytes, null::bigint as used_bytes, null::bigint as capacity_bytes
                          from schedule_plan p join production_camera k on k.id = p.camera_id where p.day_id = :day
                          union all
                          select 'MEDIUM', i.code, i.kind, place.name, null, null,
                                 (sum(%1$s) filter (where r.day_id = :day))::bigint, sum(%1$s)::bigint, i.capacity_bytes
                          from offload_copy c
                          join offload_roll r on r.id = c.roll_id
                          join inventory_item i on i.id = c.item_id
                          join production_place place on place.id = i.place_id
                          left join production_leg l on l.id = c.leg_id
                          where c.production_id = :production and c.erased_at is null
                            and c.item_id in (select here.item_id from offload_copy here join offload_roll shot on shot.id = here.roll_id
                                              where shot.day_id = :day and here.erased_at is null)
                          group by i.id, place.name
                        ) line on true
                        where d.production_id = :production and d.id = :day
                        order by line.code, line.format_id
                        """.formatted(COPY_BYTES))
                .param("production", productionId)
                .param("day", dayId)
                .query(row -> {
                    if (days.isEmpty()) {
                        days.add(day(row));
                    }
                    if ("PLAN".equals(row.getString("what"))) {
                        plan.add(new PlanLine(
                                row.getString("code"),
                                row.getObject("format_id", UUID.class),
                                row.getBigDecimal("minutes")));
                    } else if (row.getString("what") != null) {
                        media.add(new DayMedium(
                                row.getString("code"),
                                MediaKind.valueOf(row.getString("kind")),
                                row.getString("place_name"),
                                row.getLong("day_bytes"),
                                row.getLong("used_bytes"),
                                row.getObject("capacity_bytes", Long.class)));
                    }
                });
        if (days.isEmpty()) {
            throw new NotFoundException();
        }
        return new DayRows(days.get(0), plan, media);
    }

    private static ShootingDay day(ResultSet row) throws SQLException {
        return new ShootingDay(
                row.getObject("id", UUID.class),
                row.getObject("unit_id", UUID.class),
                row.getString("unit_name"),
                row.getInt("number"),
                row.getObject("date", LocalDate.class),
                DayState.valueOf(row.getString("state")),
                row.getString("note"),
                row.getInt("version"));
    }

    /** A day of the show and what its cameras were to record. */
    record PlannedDay(ShootingDay day, BigDecimal minutes) {}

    /** All days but those cancelled, in the order of their dates. */
    List<PlannedDay> days(UUID productionId) {
        return jdbc.sql("""
                        select d.id, d.unit_id, u.name as unit_name, d.number, d.date, d.state, d.note, d.version,
                               coalesce((select sum(p.minutes) from schedule_plan p where p.day_id = d.id), 0) as minutes
                        from schedule_day d join production_unit u on u.id = d.unit_id
                        where d.production_id = ? and d.state <> 'CANCELLED' order by d.date, u.position, d.number
                        """)
                .param(productionId)
                .query((row, number) -> new PlannedDay(day(row), row.getBigDecimal("minutes")))
                .list();
    }

    /**
     * A medium and where it is.
     *
     * @param cardState null if it is no card
     * @param rolls with a copy on it, which isn't erased
     */
    record Medium(
            UUID id,
            String code,
            MediaKind kind,
            String model,
            String placeName,
            String holder,
            Condition condition,
            @Nullable CardState cardState,
            @Nullable Long capacityBytes,
            long usedBytes,
            int rolls) {

        /** Its condition if that isn't good, else a card's state, else that it is good. */
        Enum<?> state() {
            return condition != Condition.GOOD || cardState == null ? condition : cardState;
        }

        /** Whether it holds files: copies, or what a camera recorded. */
        boolean holdsFiles() {
            return rolls > 0 || cardState != null && cardState != CardState.BLANK;
        }
    }

    /** Everything that holds files, by code. */
    List<Medium> media(UUID productionId) {
        return jdbc.sql("""
                        select i.id, i.code, i.kind, i.model, place.name as place_name, i.holder, i.condition, i.card_state,
                               i.capacity_bytes, coalesce(sum(%s), 0)::bigint as used_bytes, count(distinct c.roll_id)::int as rolls
                        from inventory_item i
                        join production_place place on place.id = i.place_id
                        left join offload_copy c on c.item_id = i.id and c.erased_at is null
                        left join offload_roll r on r.id = c.roll_id
                        left join production_leg l on l.id = c.leg_id
                        where i.production_id = ? and i.kind in ('CARD', 'DRIVE', 'ARRAY', 'TAPE')
                        group by i.id, place.name order by upper(i.code), i.code
                        """.formatted(COPY_BYTES))
                .param(productionId)
                .query(Medium.class)
                .list();
    }
}
