package rollbook.audit;

import java.sql.Timestamp;
import java.time.Clock;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Writes acts to the record. Must be called inside the transaction that does what the act says. */
@Repository
public class AuditTrail {
    private final JdbcClient jdbc;
    private final Clock clock;

    AuditTrail(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void add(Act act) {
        jdbc.sql("""
                        insert into audit_act (production_id, person_id, person_name, at, action, subject_kind, subject_code, detail)
                        values (?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        act.productionId(),
                        act.personId(),
                        act.personName(),
                        Timestamp.from(clock.instant()),
                        act.action(),
                        act.subjectKind(),
                        act.subjectCode(),
                        act.detail())
                .update();
    }
}
