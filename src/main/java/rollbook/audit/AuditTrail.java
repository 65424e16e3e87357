package rollbook.audit;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Writes acts to the record. Must be called inside the transaction that does what the act says. */
@Repository
public class AuditTrail {
    private static final String MATCHING = """
             where production_id = :production
               and (:text = '' or position(lower(:text) in lower(subject_code || ' ' || person_name)) > 0)
            """;

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

    /** A production's acts, newest first; those alone whose subject or person is called by the text, if one is given. */
    public List<RecordedAct> list(UUID productionId, String text, long offset, int limit) {
        return jdbc.sql("select id, at, person_name, action, subject_kind, subject_code, detail from audit_act"
                        + MATCHING + " order by id desc limit :limit offset :offset")
                .param("production", productionId)
                .param("text", text.strip())
                .param("limit", limit)
                .param("offset", offset)
                .query(RecordedAct.class)
                .list();
    }

    public long count(UUID productionId, String text) {
        return jdbc.sql("select count(*) from audit_act" + MATCHING)
                .param("production", productionId)
                .param("text", text.strip())
                .query(Long.class)
                .single();
    }
}
