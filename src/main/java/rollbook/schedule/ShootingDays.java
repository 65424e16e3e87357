package rollbook.schedule;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import rollbook.web.NotFoundException;

/** The shooting days of a production, to look up. */
@Service
public class ShootingDays {
    private static final String DAYS = """
            select d.id, d.unit_id, u.name as unit_name, d.number, d.date, d.state, d.note, d.version
            from schedule_day d join production_unit u on u.id = d.unit_id
            where d.production_id = :production
            """;

    private static final String PLANS = """
            select p.day_id, p.camera_id, p.format_id, p.minutes
            from schedule_plan p join schedule_day d on d.id = p.day_id join production_camera c on c.id = p.camera_id
            where d.production_id = :production
            """;

    private final JdbcClient jdbc;

    ShootingDays(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All days of all units, in the order of their dates. */
    public List<ShootingDay> list(UUID productionId) {
        return jdbc.sql(DAYS + " order by d.date, u.position")
                .param("production", productionId)
                .query(ShootingDay.class)
                .list();
    }

    List<ShootingDay> ofUnit(UUID productionId, UUID unitId) {
        return jdbc.sql(DAYS + " and d.unit_id = :unit order by d.date")
                .param("production", productionId)
                .param("unit", unitId)
                .query(ShootingDay.class)
                .list();
    }

    /** @throws NotFoundException if this production has no such day */
    public ShootingDay get(UUID productionId, UUID dayId) {
        return jdbc.sql(DAYS + " and d.id = :id")
                .param("production", productionId)
                .param("id", dayId)
                .query(ShootingDay.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** What is planned of all days, cancelled ones too, in the order of dates and camera letters. */
    public List<PlannedMinutes> plannedMinutes(UUID productionId) {
        return jdbc.sql(PLANS + " order by d.date, c.letter, p.format_id")
                .param("production", productionId)
                .query(PlannedMinutes.class)
                .list();
    }

    /** The plans of the days that began to be shot, as they were then; without those that began before it was kept. */
    public List<PlanAtStart> plansAtStart(UUID productionId) {
        return jdbc.sql("""
                        select distinct on (day_id) day_id, planned_minutes as minutes, planned_bytes as bytes
                        from schedule_start where production_id = ? order by day_id, id desc
                        """).param(productionId).query(PlanAtStart.class).list();
    }

    List<PlannedMinutes> plannedMinutes(UUID productionId, UUID dayId) {
        return jdbc.sql(PLANS + " and d.id = :day order by c.letter, p.format_id")
                .param("production", productionId)
                .param("day", dayId)
                .query(PlannedMinutes.class)
                .list();
    }

    /** What is planned of the unit's last day that has a plan; the next day is likely to be like it. */
    List<PlannedMinutes> latestPlan(UUID productionId, UUID unitId) {
        return jdbc.sql(PLANS + """
                         and d.id = (select l.id from schedule_day l
                             where l.unit_id = :unit and exists (select 1 from schedule_plan x where x.day_id = l.id)
                             order by l.date desc limit 1)
                        order by c.letter, p.format_id
                        """)
                .param("production", productionId)
                .param("unit", unitId)
                .query(PlannedMinutes.class)
                .list();
    }
}
