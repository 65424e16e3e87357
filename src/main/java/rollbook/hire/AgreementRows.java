package rollbook.hire;

import java.sql.Date;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.hire.TermsEntry.Act;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The tables in which agreements are kept, as {@link AgreementBook} writes them. */
@Repository
class AgreementRows {
    private final JdbcClient jdbc;
    private final Clock clock;

    AgreementRows(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** @throws NotFoundException if this production has no such agreement */
    void lock(UUID productionId, UUID agreementId) {
        jdbc.sql("select id from hire_agreement where production_id = ? and id = ? for update")
                .params(productionId, agreementId)
                .query(UUID.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** Of two that are entered at once the second waits for the first and takes the next number. */
    void add(UUID productionId, UUID id) {
        while (true) {
            int added = jdbc.sql("""
                            insert into hire_agreement (id, production_id, number)
                            select :id, :production, coalesce(max(number), 0) + 1 from hire_agreement where production_id = :production
                            on conflict do nothing
                            """)
                    .param("id", id)
                    .param("production", productionId)
                    .update();
            if (added > 0) {
                return;
            }
        }
    }

    /** @throws Refusal if an item is hired under another agreement */
    void join(UUID agreementId, Set<UUID> itemIds) {
        int joined = jdbc.sql("""
                        insert into hire_item (item_id, agreement_id) select unnest(:items), :agreement on conflict do nothing
                        """)
                .param("items", itemIds.toArray(UUID[]::new))
                .param("agreement", agreementId)
                .update();
        if (joined < itemIds.size()) {
            throw new Refusal("hire.refused.agreed-elsewhere");
        }
    }

    void leave(UUID agreementId, Set<UUID> itemIds) {
        jdbc.sql("delete from hire_item where agreement_id = :agreement and item_id = any (:items)")
                .param("agreement", agreementId)
                .param("items", itemIds.toArray(UUID[]::new))
                .update();
    }

    void enter(UUID personId, UUID agreementId, int number, Act act, NewTerms terms) {
        jdbc.sql("""
                        insert into hire_terms (agreement_id, number, act, entered_at, entered_by, supplier_id, reference, started_on,
                            due_on, minimum_weeks, late_day_minor_units, note)
                        values (:agreement, :number, :act, :at, :by, :supplier, :reference, :started, :due, :weeks, :late, :note)
                        """)
                .param("agreement", agreementId)
                .param("number", number)
                .param("act", act.name())
                .param("at", Timestamp.from(clock.instant()))
                .param("by", personId)
                .param("supplier", terms.supplierId())
                .param("reference", terms.reference())
                .param("started", Date.valueOf(terms.startedOn()))
                .param("due", Date.valueOf(terms.dueOn()))
                .param("weeks", terms.minimumWeeks())
                .param("late", terms.lateDayMinorUnits(), Types.BIGINT)
                .param("note", terms.note())
                .update();
        terms.weekMinorUnits()
                .forEach((item, week) -> jdbc.sql(
                                "insert into hire_rate (agreement_id, number, item_id, week_minor_units) values (?, ?, ?, ?)")
                        .params(agreementId, number, item, week)
                        .update());
    }
}
