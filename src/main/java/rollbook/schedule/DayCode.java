package rollbook.schedule;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** Day 11, or its date. */
@Component
class DayCode implements CodeKind {
    @Override
    public String numbered() {
        return "schedule.day.label";
    }

    @Override
    public String rows() {
        return """
                select d.id, 'schedule.code' as what, d.number::text as code, d.date::text as also, u.name as detail,
                       d.date as on_date, 'schedule.state.' || d.state as state, false as past
                from schedule_day d join production_unit u on u.id = d.unit_id
                where d.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "rolls?day=" + id;
    }
}
