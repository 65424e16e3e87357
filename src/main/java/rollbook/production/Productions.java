package rollbook.production;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.Act;
import rollbook.audit.AuditTrail;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The productions of this installation. */
@Service
public class Productions {
    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final Clock clock;
    private final ApplicationEventPublisher events;

    Productions(JdbcClient jdbc, AuditTrail trail, Clock clock, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.clock = clock;
        this.events = events;
    }

    /**
     * Makes a production with one administrator and the initial clearing policies.
     *
     * @throws Refusal if the code is taken
     */
    @Transactional
    public UUID create(
            String code, String name, ZoneId zone, String currency, UUID administratorId, String administratorName) {
        UUID id = UUID.randomUUID();
        int created = jdbc.sql("""
                        insert into production_production (id, code, name, time_zone, currency, created_at)
                        values (?, ?, ?, ?, ?, ?) on conflict (code) do nothing
                        """)
                .params(id, code, name, zone.getId(), currency, Timestamp.from(clock.instant()))
                .update();
        if (created == 0) {
            throw new Refusal("production.refused.code-taken", code);
        }
        jdbc.sql("insert into production_member (production_id, person_id, role) values (?, ?, 'ADMINISTRATOR')")
                .params(id, administratorId)
                .update();
        for (MediaKind subject : ClearingPolicy.SUBJECTS) {
            ClearingPolicy policy = ClearingPolicy.initial(subject);
            jdbc.sql("""
                            insert into production_clearing_policy (production_id, subject, proven_copies, items, media_kinds, places, off_site)
                            values (?, ?, ?, ?, ?, ?, ?)
                            """)
                    .params(
                            id,
                            subject.name(),
                            policy.provenCopies(),
                            policy.items(),
                            policy.mediaKinds(),
                            policy.places(),
                            policy.offSite())
                    .update();
        }
        trail.add(new Act(id, administratorId, administratorName, "production.created", "production", code, name));
        return id;
    }

    /**
     * Changes what a production is called and how its times, money and lead times are counted.
     *
     * @throws Refusal if somebody else changed it meanwhile
     */
    @Transactional
    public void change(Membership by, Production changed) {
        int updated = jdbc.sql("""
                        update production_production
                        set name = ?, time_zone = ?, currency = ?, working_days = ?,
                            virus_checked = ?, write_blocked = ?, version = version + 1
                        where id = ? and version = ?
                        """)
                .params(
                        changed.name(),
                        changed.zone().getId(),
                        changed.currency(),
                        changed.workingDays().stream().map(DayOfWeek::name).collect(Collectors.joining(",")),
                        changed.virusChecked(),
                        changed.writeBlocked(),
                        by.productionId(),
                        changed.version())
                .update();
        if (updated == 0) {
            throw new Refusal("production.refused.changed-meanwhile");
        }
        changed(by, "production.changed", "production", by.code(), changed.name());
    }

    public Production get(UUID productionId) {
        return jdbc.sql("select * from production_production where id = ?")
                .param(productionId)
                .query(Productions::production)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    public List<Production> all() {
        return jdbc.sql("select * from production_production order by created_at")
                .query(Productions::production)
                .list();
    }

    public SortedMap<LocalDate, String> holidays(UUID productionId) {
        SortedMap<LocalDate, String> holidays = new TreeMap<>();
        jdbc.sql("select date, name from production_holiday where production_id = ?")
                .param(productionId)
                .query(row -> {
                    holidays.put(row.getObject("date", LocalDate.class), row.getString("name"));
                });
        return holidays;
    }

    @Transactional
    public void addHoliday(Membership by, LocalDate date, String name) {
        jdbc.sql("""
                        insert into production_holiday (production_id, date, name) values (?, ?, ?)
                        on conflict (production_id, date) do update set name = excluded.name
                        """).params(by.productionId(), Date.valueOf(date), name).update();
        changed(by, "holiday.added", "date", date.toString(), name);
    }

    /** @throws NotFoundException if that day is no holiday */
    @Transactional
    public void removeHoliday(Membership by, LocalDate date) {
        int removed = jdbc.sql("delete from production_holiday where production_id = ? and date = ?")
                .params(by.productionId(), Date.valueOf(date))
                .update();
        if (removed == 0) {
            throw new NotFoundException();
        }
        changed(by, "holiday.removed", "date", date.toString(), "");
    }

    private void changed(Membership by, String action, String subjectKind, String subjectCode, String detail) {
        trail.add(by.act(action, subjectKind, subjectCode, detail));
        events.publishEvent(new ProductionChanged(by.productionId()));
    }

    private static Production production(ResultSet row, int number) throws SQLException {
        Set<DayOfWeek> workingDays = Stream.of(row.getString("working_days").split(","))
                .filter(name -> !name.isEmpty())
                .map(DayOfWeek::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(DayOfWeek.class)));
        return new Production(
                row.getObject("id", UUID.class),
                row.getString("code"),
                row.getString("name"),
                ZoneId.of(row.getString("time_zone")),
                row.getString("currency"),
                workingDays,
                row.getBoolean("virus_checked"),
                row.getBoolean("write_blocked"),
                row.getInt("version"));
    }
}
