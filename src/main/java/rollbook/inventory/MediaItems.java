package rollbook.inventory;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.MediaKind;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The media items of a production, to look up. */
@Service
public class MediaItems {
    static final String ITEMS = """
            select i.id, i.code, i.serial, i.kind, i.model, i.capacity_bytes, i.read_bytes_per_second, i.write_bytes_per_second,
                   i.ownership, i.supplier, i.cost_minor_units, i.hired_until, i.leg_id, i.place_id, p.name as place_name,
                   p.off_site, i.holder, i.condition, i.card_state, i.version
            from inventory_item i join production_place p on p.id = i.place_id
            where i.production_id = :production
            """;

    private final JdbcClient jdbc;

    MediaItems(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @throws NotFoundException if this production has no such item */
    public MediaItem get(UUID productionId, UUID itemId) {
        return jdbc.sql(ITEMS + " and i.id = :id")
                .param("production", productionId)
                .param("id", itemId)
                .query(MediaItem.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    public Optional<MediaItem> findByCode(UUID productionId, String code) {
        return jdbc.sql(ITEMS + " and upper(i.code) = upper(:code)")
                .param("production", productionId)
                .param("code", code.strip())
                .query(MediaItem.class)
                .optional();
    }

    /** The item with the maker's number: of several, as a hired one comes back, the one that is here or was last. */
    public Optional<MediaItem> findBySerial(UUID productionId, String serial) {
        return jdbc.sql(ITEMS + """
                         and i.serial <> '' and upper(i.serial) = upper(:serial)
                        order by i.condition in ('RETIRED', 'RETURNED'), i.created_at desc limit 1
                        """)
                .param("production", productionId)
                .param("serial", serial.strip())
                .query(MediaItem.class)
                .optional();
    }

    /** Items with one of these makers' numbers, in no order; none that is retired or returned. */
    public List<MediaItem> findBySerials(UUID productionId, Collection<String> serials) {
        if (serials.isEmpty()) {
            return List.of();
        }
        return jdbc.sql(ITEMS + """
                         and i.serial <> '' and upper(i.serial) in (:serials)
                        and i.condition not in ('RETIRED', 'RETURNED')
                        """)
                .param("production", productionId)
                .param("serials", inCapitals(serials))
                .query(MediaItem.class)
                .list();
    }

    /** Those of the codes that this production has, in no order. */
    public List<MediaItem> findByCodes(UUID productionId, Collection<String> codes) {
        if (codes.isEmpty()) {
            return List.of();
        }
        return jdbc.sql(ITEMS + " and upper(i.code) in (:codes)")
                .param("production", productionId)
                .param("codes", inCapitals(codes))
                .query(MediaItem.class)
                .list();
    }

    /** Those of the ids that this production has, in the order of their codes. */
    List<MediaItem> findByIds(UUID productionId, Collection<UUID> ids) {
        return jdbc.sql(ITEMS + " and i.id = any (:ids) order by upper(i.code)")
                .param("production", productionId)
                .param("ids", ids.toArray(UUID[]::new))
                .query(MediaItem.class)
                .list();
    }

    private static List<String> inCapitals(Collection<String> texts) {
        return texts.stream().map(text -> text.strip().toUpperCase(Locale.ROOT)).toList();
    }

    /** All items, ordered by code; of the given kinds only, if any are given. */
    public List<MediaItem> list(UUID productionId, MediaKind... kinds) {
        String ofKinds = kinds.length == 0
                ? ""
                : Arrays.stream(kinds)
                        .map(kind -> "'" + kind.name() + "'")
                        .collect(Collectors.joining(",", " and i.kind in (", ")"));
        return jdbc.sql(ITEMS + ofKinds + " order by upper(i.code)")
                .param("production", productionId)
                .query(MediaItem.class)
                .list();
    }

    /**
     * Reads an item and keeps others from changing it until the transaction ends.
     *
     * @throws NotFoundException if this production has no such item
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public MediaItem lock(UUID productionId, UUID itemId) {
        return held(productionId, itemId, "update");
    }

    /**
     * Reads an item and keeps it as it is until the transaction ends; others may read and keep it at the same time.
     *
     * @throws NotFoundException if this production has no such item
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public MediaItem keep(UUID productionId, UUID itemId) {
        return held(productionId, itemId, "share");
    }

    /** Read after it is held: one that was moved while we waited wouldn't be found with the place it had before. */
    private MediaItem held(UUID productionId, UUID itemId, String how) {
        jdbc.sql("select id from inventory_item where production_id = ? and id = ? for " + how)
                .params(productionId, itemId)
                .query(UUID.class)
                .optional()
                .orElseThrow(NotFoundException::new);
        return get(productionId, itemId);
    }

    /**
     * Takes a card from one state to the next.
     *
     * @throws Refusal naming the card's state if it isn't one of those it may come from, or if the item isn't a card
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void changeCardState(UUID productionId, UUID cardId, CardState to, CardState... from) {
        MediaItem card = lock(productionId, cardId);
        if (card.cardState() == null) {
            throw new Refusal("inventory.refused.not-a-card", card.code());
        }
        if (!Arrays.asList(from).contains(card.cardState())) {
            String state = ItemState.valueOf(card.cardState().name()).key();
            throw new Refusal("inventory.refused.card-state", card.code(), new DefaultMessageSourceResolvable(state));
        }
        jdbc.sql("update inventory_item set card_state = ?, version = version + 1 where production_id = ? and id = ?")
                .params(to.name(), productionId, cardId)
                .update();
    }
}
