package rollbook.hire;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Role;
import rollbook.web.Display;

/** Hired items that are due back within the days that the production chose, or overdue. */
@Component
class HireAlarms implements AlarmSource {
    private static final Set<Role> WHO = Set.of(Role.OFFICE, Role.WRANGLER);

    private final JdbcClient jdbc;
    private final Display display;
    private final Clock clock;

    HireAlarms(JdbcClient jdbc, Display display, Clock clock) {
        this.jdbc = jdbc;
        this.display = display;
        this.clock = clock;
    }

    /** @param agreementId null if nobody wrote one down */
    private record Due(
            String code,
            String supplier,
            LocalDate hiredUntil,
            @Nullable UUID agreementId,
            int remindDays,
            LocalDate today,
            String zone) {

        /** What goes back to a supplier on a day is one thing to see to; extended, it is another one. */
        String key() {
            String hired = agreementId == null ? supplier : agreementId.toString();
            return "hire/%s/%s/%s".formatted(isOverdue() ? "overdue" : "due", hired, hiredUntil);
        }

        boolean isOverdue() {
            return hiredUntil.isBefore(today);
        }

        Instant since() {
            LocalDate began = isOverdue() ? hiredUntil.plusDays(1) : hiredUntil.minusDays(remindDays);
            return began.atStartOfDay(ZoneId.of(zone)).toInstant();
        }
    }

    @Override
    public List<Alarm> alarms(UUID productionId) {
        return jdbc
                .sql("""
                        select i.code, i.supplier, i.hired_until, h.agreement_id, coalesce(s.remind_days, :usual) as remind_days,
                               (:now::timestamptz at time zone p.time_zone)::date as today, p.time_zone as zone
                        from inventory_item i
                        join production_production p on p.id = i.production_id
                        left join hire_settings s on s.production_id = p.id
                        left join hire_item h on h.item_id = i.id
                        where i.production_id = :production and i.ownership = 'HIRED'
                          and i.condition in ('GOOD', 'QUARANTINED', 'LOST')
                          and i.hired_until <= (:now::timestamptz at time zone p.time_zone)::date + coalesce(s.remind_days, :usual)
                        order by i.hired_until, upper(i.code)
                        """)
                .param("production", productionId)
                .param("usual", HireReminders.USUAL_DAYS)
                .param("now", Timestamp.from(clock.instant()))
                .query(Due.class)
                .list()
                .stream()
                .collect(Collectors.groupingBy(Due::key, LinkedHashMap::new, Collectors.toList()))
                .values()
                .stream()
                .map(this::alarm)
                .toList();
    }

    private Alarm alarm(List<Due> together) {
        Due first = together.get(0);
        return new Alarm(
                first.key(),
                WHO,
                first.isOverdue() ? "hire.alarm.overdue" : "hire.alarm.due",
                List.of(
                        first.code(),
                        together.size() - 1,
                        display.date(first.hiredUntil()),
                        first.supplier().isEmpty() ? display.text("hire.alarm.supplier") : first.supplier()),
                first.agreementId() == null ? "hire" : "hire/" + first.agreementId(),
                first.since());
    }
}
