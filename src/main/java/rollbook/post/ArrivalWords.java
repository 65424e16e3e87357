package rollbook.post;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/**
 * What post says of media that were moved there without a shipment to confirm: it is here, or it isn't. The newest word
 * on a stay counts; whoever was wrong says the other.
 */
@Service
public class ArrivalWords {
    private final JdbcClient jdbc;
    private final MediaItems items;
    private final AuditTrail trail;
    private final Clock clock;

    ArrivalWords(JdbcClient jdbc, MediaItems items, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.items = items;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * Saying again what was said last changes nothing.
     *
     * @param custodyId the link of the item's chain by which it came, as the person saw it
     * @throws Refusal if the item isn't at post any more by its chain, or went and came again meanwhile
     */
    @Transactional
    public void say(Membership by, UUID itemId, long custodyId, boolean here, String note) {
        MediaItem item = items.lock(by.productionId(), itemId);
        if (!Long.valueOf(custodyId).equals(currentStay(by.productionId(), itemId))) {
            throw new Refusal("post.refused.moved-meanwhile", item.code());
        }
        int added = jdbc.sql("""
                        insert into post_word (production_id, item_id, custody_id, here, note, at, by_id)
                        select :production, :item, :custody, :here, :note, :at, :by
                        where not exists (select 1 from post_word w where w.custody_id = :custody and w.here = :here and w.note = :note
                            and w.id = (select max(id) from post_word where custody_id = :custody))
                        """)
                .param("production", by.productionId())
                .param("item", itemId)
                .param("custody", custodyId)
                .param("here", here)
                .param("note", note)
                .param("at", Timestamp.from(clock.instant()))
                .param("by", by.personId())
                .update();
        if (added > 0) {
            trail.add(by.act(here ? "item.said-here" : "item.said-not-here", "item", item.code(), note));
        }
    }

    /** The link by which the item came to post, if it is there by its chain. */
    private @Nullable Long currentStay(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select min(k.id) from inventory_custody k
                        join post_place s on s.production_id = k.production_id and s.place_id = k.place_id
                        join inventory_item i on i.id = k.item_id and i.place_id = s.place_id
                        where k.production_id = :production and k.item_id = :item and k.id > coalesce(
                            (select max(o.id) from inventory_custody o where o.item_id = :item and o.place_id <> s.place_id), 0)
                        """)
                .param("production", productionId)
                .param("item", itemId)
                .query(Long.class)
                .optional()
                .orElse(null);
    }
}
