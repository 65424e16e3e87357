package rollbook.verification;

import java.util.Collection;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** What has happened that the newest verdicts on a roll don't know of yet. */
@Repository
class Unjudged {
    private final JdbcClient jdbc;

    Unjudged(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Whether a document is still to be read that was sent about a card or an encoding, which may be one of the rolls', or
     * about a medium with a copy of them; or whether one of them is still to be judged. One statement, so that nothing
     * slips from one to the other unseen; the caller holds the rolls' locks, so that nothing is judged meanwhile.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public boolean isAnything(UUID productionId, Collection<UUID> rollIds) {
        return jdbc.sql("""
                        select exists (
                            select 1 from verification_reading r join verification_document d on d.id = r.document_id
                            where r.production_id = :production and r.state in ('WAITING', 'READING')
                              and (d.said_subject <> 'COPY'
                                   or d.said_item_id in (select c.item_id from offload_copy c where c.roll_id = any (:rolls))))
                          or exists (
                            select 1 from scheduled_tasks
                            where task_name = :task and last_success is null
                              and split_part(task_instance, '/', 2) = any (:rolls::text[]))
                        """)
                .param("production", productionId)
                .param("rolls", rollIds.toArray(UUID[]::new))
                .param("task", RollJudging.TASK.getTaskName())
                .query(Boolean.class)
                .single();
    }

    /** Notes in the transaction that judges the roll that an order is carried out; its row is deleted only after that. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void carriedOut(String order) {
        jdbc.sql("update scheduled_tasks set last_success = now() where task_name = ? and task_instance = ?")
                .params(RollJudging.TASK.getTaskName(), order)
                .update();
    }
}
