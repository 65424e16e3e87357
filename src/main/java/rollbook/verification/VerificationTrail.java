package rollbook.verification;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemTrail;

/** When an item was cleared and erased, and what was found of the copies on it; verdicts are told day by day. */
@Component
class VerificationTrail implements ItemTrail {
    private final JdbcClient jdbc;

    VerificationTrail(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Happening> of(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        with cleared as (
                          select c.id, c.cleared_at, p.display_name as by_name from verification_clearance c
                          join people_person p on p.id = c.cleared_by
                          where c.production_id = :production and c.card_id = :item
                          union all
                          select c.id, c.cleared_at, p.display_name from verification_medium_clearance c
                          join people_person p on p.id = c.cleared_by
                          where c.production_id = :production and c.item_id = :item),
                        ended as (
                          select clearance_id, withdrawn_at as at, 'withdrawn' as kind from verification_clearance_withdrawal
                          union all
                          select clearance_id, withdrawn_at, 'withdrawn' from verification_medium_withdrawal
                          union all
                          select clearance_id, erased_at, 'erased' from verification_erasure
                          union all
                          select clearance_id, erased_at, 'erased' from verification_medium_erasure)
                        select cleared_at as at, 'cleared' as kind, by_name, 1 as copies from cleared
                        union all
                        select ended.at, ended.kind, cleared.by_name, 1 from ended join cleared on cleared.id = ended.clearance_id
                        union all
                        select min(v.judged_at), v.verdict, '', count(distinct v.copy_id)::int
                        from verification_verdict v join offload_copy k on k.id = v.copy_id
                        where k.production_id = :production and k.item_id = :item
                        group by v.verdict, date_trunc('day', v.judged_at)
                        order by at
                        """)
                .param("production", productionId)
                .param("item", itemId)
                .query((row, number) -> new Happening(
                        row.getTimestamp("at").toInstant(),
                        "verification.trail." + row.getString("kind"),
                        Hold.of(
                                "verification.trail.says." + row.getString("kind"),
                                row.getInt("copies"),
                                row.getString("by_name"))))
                .list();
    }
}
