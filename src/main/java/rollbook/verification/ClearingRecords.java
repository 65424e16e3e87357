package rollbook.verification;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** All that was cleared, erased and taken back, and the alarms, for reports: one statement each. */
@Repository
public class ClearingRecords {
    private static final String CARDS = """
            select case when o.request_id is null then 'CLEARED' else 'CLEARED_WITHOUT_PROOF' end as kind, c.roll_id,
                   c.card_id as item_id, c.cleared_at as at, c.cleared_by as actor_id, q.requested_by as other_id, coalesce(q.reason, '') as note
            from verification_clearance c
            left join verification_override_approval o on o.clearance_id = c.id
            left join verification_override_request q on q.id = o.request_id
            where c.production_id = :production
            union all
            select 'WITHDRAWN', c.roll_id, c.card_id, w.withdrawn_at, null, null, w.reason
            from verification_clearance_withdrawal w join verification_clearance c on c.id = w.clearance_id
            where c.production_id = :production
            union all
            select 'ERASED', c.roll_id, c.card_id, e.erased_at, e.erased_by, null, ''
            from verification_erasure e join verification_clearance c on c.id = e.clearance_id
            where c.production_id = :production
            union all
            select 'ALARM', a.roll_id, k.item_id, a.raised_at, null, null, case when a.card_erased then 'CARD_ERASED' else '' end
            from verification_alarm a join offload_copy k on k.id = a.copy_id
            where a.production_id = :production
            """;

    private static final String MEDIA = """
            union all
            select 'CLEARED', null, c.item_id, c.cleared_at, c.cleared_by, null, '' from verification_medium_clearance c
            where c.production_id = :production
            union all
            select 'WITHDRAWN', null, c.item_id, w.withdrawn_at, null, null, w.reason
            from verification_medium_withdrawal w join verification_medium_clearance c on c.id = w.clearance_id
            where c.production_id = :production
            union all
            select 'ERASED', null, c.item_id, e.erased_at, e.erased_by, null, ''
            from verification_medium_erasure e join verification_medium_clearance c on c.id = e.clearance_id
            where c.production_id = :production
            """;

    private static final String RECORDS = """
            select m.kind, m.roll_id, coalesce(r.code, '') as roll_code, i.code as item_code, m.at,
                   coalesce(actor.display_name, '') as by_name, coalesce(other.display_name, '') as other_name, m.note
            from (%s) m
            join inventory_item i on i.id = m.item_id
            left join offload_roll r on r.id = m.roll_id
            left join people_person actor on actor.id = m.actor_id
            left join people_person other on other.id = m.other_id
            """;

    private static final String IN_ORDER = " order by m.at, r.code, i.code, m.kind";

    private final JdbcClient jdbc;

    ClearingRecords(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of the cards of a day's rolls and the copies of these, in the order of time. */
    public List<ClearingRecord> ofDay(UUID productionId, UUID dayId) {
        return jdbc.sql(RECORDS.formatted(CARDS) + " where r.day_id = :day" + IN_ORDER)
                .param("production", productionId)
                .param("day", dayId)
                .query(ClearingRecord.class)
                .list();
    }

    /** Of all media of the production, in the order of time. */
    public List<ClearingRecord> all(UUID productionId) {
        return jdbc.sql(RECORDS.formatted(CARDS + MEDIA) + IN_ORDER)
                .param("production", productionId)
                .query(ClearingRecord.class)
                .list();
    }
}
