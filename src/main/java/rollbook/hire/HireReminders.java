package rollbook.hire;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/** How many days before an item is due back people are told. */
@Service
class HireReminders {
    /** Time to clear a drive, erase it and send somebody: common practice, no source. */
    static final int USUAL_DAYS = 3;

    private final JdbcClient jdbc;
    private final AuditTrail trail;

    HireReminders(JdbcClient jdbc, AuditTrail trail) {
        this.jdbc = jdbc;
        this.trail = trail;
    }

    /** @param version zero while nobody has chosen */
    record Reminder(int days, int version) {}

    Reminder of(UUID productionId) {
        return jdbc.sql("select remind_days as days, version from hire_settings where production_id = ?")
                .param(productionId)
                .query(Reminder.class)
                .optional()
                .orElse(new Reminder(USUAL_DAYS, 0));
    }

    /** @throws Refusal if somebody else changed it meanwhile */
    @Transactional
    public void change(Membership by, Reminder reminder) {
        int changed = jdbc.sql("""
                        insert into hire_settings (production_id, remind_days, version)
                        select :production, :days, 1 where :version = 0
                        on conflict (production_id) do nothing
                        """)
                .param("production", by.productionId())
                .param("days", reminder.days())
                .param("version", reminder.version())
                .update();
        if (changed == 0) {
            changed = jdbc.sql("""
                            update hire_settings set remind_days = ?, version = version + 1
                            where production_id = ? and version = ? and version > 0
                            """)
                    .params(reminder.days(), by.productionId(), reminder.version())
                    .update();
        }
        if (changed == 0) {
            throw new Refusal("hire.refused.reminder-changed");
        }
        trail.add(by.act("hire.reminder-changed", "production", by.code(), Integer.toString(reminder.days())));
    }
}
