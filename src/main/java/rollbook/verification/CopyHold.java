package rollbook.verification;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemHold;
import rollbook.offload.Rolls;

/** A medium stays while a roll that was copied to it has no proven copy on another good one. */
@Component
class CopyHold implements ItemHold {
    private final JdbcClient jdbc;
    private final Rolls rolls;

    CopyHold(JdbcClient jdbc, Rolls rolls) {
        this.jdbc = jdbc;
        this.rolls = rolls;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Optional<Hold> reasonToKeep(UUID productionId, UUID itemId) {
        // Two media that prove the same roll must not leave at once, each on the strength of the other.
        rolls.lockCopiedTo(productionId, itemId);
        List<String> codes = jdbc.sql("""
                        select distinct r.code from offload_copy here join offload_roll r on r.id = here.roll_id
                        where here.production_id = :production and here.item_id = :item and here.erased_at is null
                          and not exists (
                            select 1 from offload_copy other
                            join inventory_item i on i.id = other.item_id and i.condition = 'GOOD'
                            join lateral (select v.verdict, v.reasons from verification_verdict v where v.copy_id = other.id
                                          order by v.id desc limit 1) newest on newest.verdict = 'PROVEN'
                                and (other.rendition = 'AS_RECORDED' or 'ROUND_TRIP_PROVEN' = any (newest.reasons))
                            where other.roll_id = here.roll_id and other.item_id <> here.item_id and other.erased_at is null)
                        order by r.code
                        """)
                .param("production", productionId)
                .param("item", itemId)
                .query(String.class)
                .list();
        return codes.isEmpty()
                ? Optional.empty()
                : Optional.of(Hold.of("verification.hold.last-proof", codes.get(0), codes.size() - 1));
    }
}
