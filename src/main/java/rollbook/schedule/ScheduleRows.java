package rollbook.schedule;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.web.NotFoundException;
import tools.jackson.databind.json.JsonMapper;

/** Writes days and plans, however many, in one statement each. */
@Repository
class ScheduleRows {
    private final JdbcClient jdbc;

    ScheduleRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<UUID> insert(UUID productionId, NewSchedule schedule, String note) {
        List<UUID> ids = new ArrayList<>();
        List<Map<String, Object>> rows = new ArrayList<>();
        for (LocalDate date : schedule.dates()) {
            UUID id = UUID.randomUUID();
            rows.add(Map.of("id", id, "number", schedule.firstNumber() + ids.size(), "date", date));
            ids.add(id);
        }
        int added = jdbc.sql("""
                        insert into schedule_day (id, production_id, unit_id, number, date, state, note)
                        select d.id, u.production_id, u.id, d.number, d.date, 'PLANNED', :note
                        from jsonb_to_recordset(cast(:days as jsonb)) as d(id uuid, number int, date date)
                        join production_unit u on u.id = :unit and u.production_id = :production
                        """)
                .param("days", json(rows))
                .param("note", note)
                .param("unit", schedule.unitId())
                .param("production", productionId)
                .update();
        if (added != ids.size()) {
            throw new NotFoundException();
        }
        return ids;
    }

    void savePlan(UUID productionId, List<UUID> dayIds, List<CameraPlan> plan) {
        List<Map<String, Object>> rows = dayIds.stream()
                .flatMap(day -> plan.stream()
                        .map(line -> Map.<String, Object>of(
                                "day", day,
                                "camera", line.cameraId(),
                                "format", line.formatId(),
                                "minutes", line.minutes())))
                .toList();
        int saved = jdbc.sql("""
                        insert into schedule_plan (day_id, camera_id, format_id, minutes)
                        select p.day, c.id, f.id, p.minutes
                        from jsonb_to_recordset(cast(:plan as jsonb)) as p(day uuid, camera uuid, format uuid, minutes numeric)
                        join production_camera c on c.id = p.camera and c.production_id = :production
                        join format_recording_format f on f.id = p.format and f.production_id = :production
                        """)
                .param("plan", json(rows))
                .param("production", productionId)
                .update();
        if (saved != rows.size()) {
            throw new NotFoundException();
        }
    }

    /** The keys are deferred, so that days can change places; here they must hold. */
    void checkKeys(boolean several) {
        try {
            jdbc.sql("set constraints schedule_day_number_key, schedule_day_date_key immediate")
                    .update();
        } catch (DuplicateKeyException e) {
            boolean date = String.valueOf(e.getMessage()).contains("schedule_day_date_key");
            if (several) {
                throw date
                        ? new DayTaken("startDate", "schedule.invalid.dates-taken")
                        : new DayTaken("firstNumber", "schedule.invalid.numbers-taken");
            }
            throw date
                    ? new DayTaken("date", "schedule.invalid.date-has-day")
                    : new DayTaken("number", "schedule.invalid.number-taken");
        }
    }

    /** @return how many of the days were still as they had been read, and moved */
    int move(UUID productionId, List<Slip.Move> moves) {
        List<Map<String, Object>> rows = moves.stream()
                .map(move -> Map.<String, Object>of(
                        "id",
                        move.day().id(),
                        "date",
                        move.to(),
                        "version",
                        move.day().version()))
                .toList();
        return jdbc.sql("""
                        update schedule_day d set date = m.date, version = d.version + 1
                        from jsonb_to_recordset(cast(:moves as jsonb)) as m(id uuid, date date, version int)
                        where d.id = m.id and d.production_id = :production and d.version = m.version and d.state = 'PLANNED'
                        """)
                .param("moves", json(rows))
                .param("production", productionId)
                .update();
    }

    private static String json(List<Map<String, Object>> rows) {
        return JsonMapper.shared().writeValueAsString(rows);
    }
}
