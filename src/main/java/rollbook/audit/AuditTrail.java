package rollbook.audit;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.web.Listing;

/** Writes acts to the record. Must be called inside the transaction that does what the act says. */
@Repository
public class AuditTrail {
    private static final String MATCHING = """
             where production_id = :production
               and (:text = '' or position(lower(:text) in lower(subject_code || ' ' || person_name)) > 0)
               and (:kind = '' or subject_kind = :kind)
               and (cast(:from as timestamptz) is null or at >= :from)
               and (cast(:before as timestamptz) is null or at < :before)
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

    public List<RecordedAct> list(
            UUID productionId, ActFilter filter, Listing.Order<ActFilter.Column> order, long offset, int limit) {
        return matching(
                        "select id, at, person_name, action, subject_kind, subject_code, detail from audit_act",
                        " order by " + order.column().sql + order.direction() + ", id desc limit :limit offset :offset",
                        productionId,
                        filter)
                .param("limit", limit)
                .param("offset", offset)
                .query(RecordedAct.class)
                .list();
    }

    public long count(UUID productionId, ActFilter filter) {
        return matching("select count(*) from audit_act", "", productionId, filter)
                .query(Long.class)
                .single();
    }

    /** The kinds of subjects that there are acts on, in no order. */
    public List<String> subjectKinds(UUID productionId) {
        return jdbc.sql("select distinct subject_kind from audit_act where production_id = ?")
                .param(productionId)
                .query(String.class)
                .list();
    }

    private JdbcClient.StatementSpec matching(String select, String end, UUID productionId, ActFilter filter) {
        return jdbc.sql(select + MATCHING + end)
                .param("production", productionId)
                .param("text", filter.text())
                .param("kind", filter.subjectKind())
                .param("from", timestamp(filter.from()))
                .param("before", timestamp(filter.before()));
    }

    private static @Nullable Timestamp timestamp(@Nullable Instant instant) {
        return instant == null ? null : Timestamp.from(instant);
    }
}
