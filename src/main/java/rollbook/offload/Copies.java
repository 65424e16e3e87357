package rollbook.offload;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Rendition;
import rollbook.web.Refusal;

/** The copies of rolls. */
@Service
public class Copies {
    private static final String COPIES = """
            select c.id, c.roll_id, c.item_id, i.code as item_code, i.kind as item_kind, i.condition as item_condition,
                   i.place_id, p.name as place_name, p.off_site, p.threat, c.leg_id, c.rendition, c.written_from, c.erased_at,
                   (select max(k.at) from inventory_custody k where k.item_id = c.item_id and k.act <> 'REGISTERED') as disturbed_at
            from offload_copy c
            join inventory_item i on i.id = c.item_id
            join production_place p on p.id = i.place_id
            where c.production_id = :production
            """;

    private static final String OF_ROLLS_ON = """
             and c.roll_id in (select here.roll_id from offload_copy here where here.item_id = :item and here.erased_at is null)
            order by c.created_at, i.code
            """;

    private final JdbcClient jdbc;
    private final MediaItems items;
    private final Clock clock;

    Copies(JdbcClient jdbc, MediaItems items, Clock clock) {
        this.jdbc = jdbc;
        this.items = items;
        this.clock = clock;
    }

    public List<Copy> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql(COPIES + " and c.roll_id = :roll order by c.created_at, i.code")
                .param("production", productionId)
                .param("roll", rollId)
                .query(Copy.class)
                .list();
    }

    /** As {@link #ofRoll}, and keeps the media as they are until the transaction ends: none is quarantined meanwhile. */
    @Transactional(propagation = Propagation.MANDATORY)
    public List<Copy> keepOfRoll(UUID productionId, UUID rollId) {
        return jdbc.sql(COPIES + " and c.roll_id = :roll order by c.created_at, i.code for share of i")
                .param("production", productionId)
                .param("roll", rollId)
                .query(Copy.class)
                .list();
    }

    /** All copies of the rolls that have one on the item, which isn't erased. */
    public List<Copy> ofRollsOn(UUID productionId, UUID itemId) {
        return jdbc.sql(COPIES + OF_ROLLS_ON)
                .param("production", productionId)
                .param("item", itemId)
                .query(Copy.class)
                .list();
    }

    /** As {@link #ofRollsOn}, and keeps the media as they are until the transaction ends. */
    @Transactional(propagation = Propagation.MANDATORY)
    public List<Copy> keepOfRollsOn(UUID productionId, UUID itemId) {
        return jdbc.sql(COPIES + OF_ROLLS_ON + " for share of i")
                .param("production", productionId)
                .param("item", itemId)
                .query(Copy.class)
                .list();
    }

    /** The item was erased: its copies are there no longer. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void erased(UUID productionId, UUID itemId) {
        jdbc.sql("update offload_copy set erased_at = ? where production_id = ? and item_id = ? and erased_at is null")
                .params(Timestamp.from(clock.instant()), productionId, itemId)
                .update();
    }

    /** The rolls with a copy on the item whose card is clear to erase. */
    public List<UUID> clearedRollsOn(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select distinct c.roll_id from offload_copy c
                        join offload_roll r on r.id = c.roll_id join inventory_item card on card.id = r.card_id
                        where c.production_id = ? and c.item_id = ? and card.card_state = 'CLEAR_TO_ERASE'
                        """).params(productionId, itemId).query(UUID.class).list();
    }

    public List<Copy> ofDay(UUID productionId, UUID dayId) {
        return jdbc.sql(
                        COPIES
                                + " and c.roll_id in (select r.id from offload_roll r where r.day_id = :day) order by c.created_at, i.code")
                .param("production", productionId)
                .param("day", dayId)
                .query(Copy.class)
                .list();
    }

    public List<Copy> list(UUID productionId) {
        return jdbc.sql(COPIES + " order by c.created_at, i.code")
                .param("production", productionId)
                .query(Copy.class)
                .list();
    }

    public List<Copy> onItem(UUID productionId, UUID itemId) {
        return jdbc.sql(COPIES + " and c.item_id = :item order by c.created_at")
                .param("production", productionId)
                .param("item", itemId)
                .query(Copy.class)
                .list();
    }

    /** Bytes that the copies on each item take, as far as the rolls' sizes are known. */
    public List<Used> usedBytes(UUID productionId) {
        return jdbc.sql("""
                        select c.item_id, sum(case when c.rendition = 'ENCODED'
                                  then coalesce(r.encoded_bytes, ceil(r.size_bytes * coalesce(l.kept_percent, 100) / 100.0)::bigint)
                                  else r.size_bytes end)::bigint as bytes
                        from offload_copy c join offload_roll r on r.id = c.roll_id
                        left join production_leg l on l.id = c.leg_id
                        where c.production_id = ? and r.size_bytes is not null and c.erased_at is null group by c.item_id
                        """).param(productionId).query(Used.class).list();
    }

    /** The item on which each leg of the copy plan was written last. */
    Map<UUID, UUID> lastItems(UUID productionId) {
        Map<UUID, UUID> items = new HashMap<>();
        jdbc.sql("""
                        select distinct on (leg_id) leg_id, item_id from offload_copy
                        where production_id = ? and leg_id is not null order by leg_id, written_from desc, created_at desc
                        """).param(productionId).query(row -> {
            items.put(row.getObject("leg_id", UUID.class), row.getObject("item_id", UUID.class));
        });
        return items;
    }

    /**
     * The copy of a roll on an item, made up now if nobody logged it: a manifest may speak of a copy that no offload
     * was recorded for.
     *
     * @throws Refusal if items of that kind don't hold copies
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public UUID findOrAdd(UUID productionId, UUID rollId, UUID itemId, Rendition rendition) {
        return jdbc.sql(
                        "select id from offload_copy where production_id = ? and roll_id = ? and item_id = ? and rendition = ?")
                .params(productionId, rollId, itemId, rendition.name())
                .query(UUID.class)
                .optional()
                .orElseGet(() -> {
                    MediaItem item = items.get(productionId, itemId);
                    return add(productionId, rollId, item, item.legId(), rendition, earliestWriting(item));
                });
    }

    /**
     * The writing of a copy that nobody logged began at an unknown time before now, and any evidence sent so far may
     * speak of it; but what was there before the medium was erased is gone.
     */
    private Timestamp earliestWriting(MediaItem item) {
        return jdbc.sql(
                        "select coalesce(max(erased_at), timestamptz '1970-01-01 00:00:00Z') from offload_copy where item_id = ?")
                .param(item.id())
                .query(Timestamp.class)
                .single();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    UUID add(
            UUID productionId,
            UUID rollId,
            MediaItem item,
            @Nullable UUID legId,
            Rendition rendition,
            Timestamp writtenFrom) {
        if (!item.kind().holdsCopies()) {
            throw new Refusal("offload.refused.no-copies-on", item.code());
        }
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into offload_copy (id, production_id, roll_id, item_id, leg_id, rendition, written_from, created_at)
                        values (?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(id)
                .param(productionId)
                .param(rollId)
                .param(item.id())
                .param(legId)
                .param(rendition.name())
                .param(writtenFrom)
                .param(Timestamp.from(clock.instant()))
                .update();
        return id;
    }

    /** @param bytes of all copies on the item */
    public record Used(UUID itemId, long bytes) {}
}
