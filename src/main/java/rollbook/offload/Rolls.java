package rollbook.offload;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The rolls of a production. */
@Service
public class Rolls {
    private static final String ROLLS = """
            select r.id, r.code, r.camera_id, c.letter as camera_letter, c.unit_id, u.name as unit_name, r.day_id,
                   d.number as day_number, d.date as day_date, r.card_id, i.code as card_code,
                   i.capacity_bytes as card_capacity_bytes, i.card_state,
                   not exists (select 1 from offload_roll later where later.card_id = r.card_id and later.loaded_at > r.loaded_at)
                       and i.card_state <> 'BLANK' as on_card,
                   r.format_id, r.loaded_at, r.pulled_at, r.minutes, r.size_bytes, r.note, r.version
            from offload_roll r
            join production_camera c on c.id = r.camera_id
            join production_unit u on u.id = c.unit_id
            join schedule_day d on d.id = r.day_id
            join inventory_item i on i.id = r.card_id
            where r.production_id = :production
            """;

    private final JdbcClient jdbc;
    private final MediaItems items;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Rolls(JdbcClient jdbc, MediaItems items, AuditTrail trail, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.items = items;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /** @throws NotFoundException if this production has no such roll */
    public Roll get(UUID productionId, UUID rollId) {
        return jdbc.sql(ROLLS + " and r.id = :id")
                .param("production", productionId)
                .param("id", rollId)
                .query(Roll.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    public Optional<Roll> findByCode(UUID productionId, String code) {
        return jdbc.sql(ROLLS + " and upper(r.code) = upper(:code)")
                .param("production", productionId)
                .param("code", code.strip())
                .query(Roll.class)
                .optional();
    }

    /** The rolls shot on a day, of every unit that counts that day as its own. */
    public List<Roll> ofDay(UUID productionId, UUID dayId) {
        return jdbc.sql(ROLLS + " and r.day_id = :day order by r.code")
                .param("production", productionId)
                .param("day", dayId)
                .query(Roll.class)
                .list();
    }

    public List<Roll> list(UUID productionId) {
        return jdbc.sql(ROLLS + " order by r.loaded_at, r.code")
                .param("production", productionId)
                .query(Roll.class)
                .list();
    }

    /** The rolls whose card is clear to erase. */
    public List<UUID> onClearedCards(UUID productionId) {
        return jdbc.sql("""
                        select r.id from offload_roll r join inventory_item card on card.id = r.card_id
                        where r.production_id = ? and card.card_state = 'CLEAR_TO_ERASE'
                        """).param(productionId).query(UUID.class).list();
    }

    /** The rolls with a copy on an item, which isn't erased. */
    public List<Roll> copiedTo(UUID productionId, UUID itemId) {
        return jdbc.sql(
                        ROLLS
                                + " and r.id in (select c.roll_id from offload_copy c where c.item_id = :item and c.erased_at is null) order by r.code")
                .param("production", productionId)
                .param("item", itemId)
                .query(Roll.class)
                .list();
    }

    /** Locks, in one order, every roll that was ever copied to an item, as {@link #lock} does. */
    @Transactional(propagation = Propagation.MANDATORY)
    public Set<UUID> lockCopiedTo(UUID productionId, UUID itemId) {
        return lockCopiedTo(productionId, List.of(itemId));
    }

    /** As {@link #lockCopiedTo(UUID, UUID)} for several items at once. */
    @Transactional(propagation = Propagation.MANDATORY)
    public Set<UUID> lockCopiedTo(UUID productionId, Collection<UUID> itemIds) {
        return Set.copyOf(jdbc.sql("""
                        select r.id from offload_roll r where r.production_id = :production
                          and r.id in (select c.roll_id from offload_copy c where c.item_id = any (:items))
                        order by r.id for update
                        """)
                .param("production", productionId)
                .param("items", itemIds.toArray(UUID[]::new))
                .query(UUID.class)
                .list());
    }

    /** The roll that a card holds now, or last held. */
    public Optional<Roll> latestOnCard(UUID productionId, UUID cardId) {
        return jdbc.sql(ROLLS + " and r.card_id = :card order by r.loaded_at desc limit 1")
                .param("production", productionId)
                .param("card", cardId)
                .query(Roll.class)
                .optional();
    }

    /** Every roll's id by its code in upper case. */
    public Map<String, UUID> idsByCode(UUID productionId) {
        Map<String, UUID> ids = new TreeMap<>();
        jdbc.sql("select id, code from offload_roll where production_id = ?")
                .param(productionId)
                .query(row -> {
                    ids.put(row.getString("code").toUpperCase(Locale.ROOT), row.getObject("id", UUID.class));
                });
        return ids;
    }

    /**
     * Keeps everybody else from judging, clearing or changing the roll until the transaction ends.
     *
     * @throws NotFoundException if this production has no such roll
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public Roll lock(UUID productionId, UUID rollId) {
        jdbc.sql("select id from offload_roll where production_id = ? and id = ? for update")
                .params(productionId, rollId)
                .query(UUID.class)
                .optional()
                .orElseThrow(NotFoundException::new);
        return get(productionId, rollId);
    }

    /**
     * A blank card goes into a camera and becomes a roll.
     *
     * @throws Refusal if the roll code is taken, or the card isn't blank and good
     */
    @Transactional
    public UUID load(Membership by, String code, UUID cameraId, UUID dayId, UUID cardId, UUID formatId) {
        MediaItem card = items.lock(by.productionId(), cardId);
        if (!card.usable()) {
            throw new Refusal(
                    "offload.refused.card-condition",
                    card.code(),
                    card.condition().name());
        }
        items.changeCardState(by.productionId(), cardId, CardState.IN_CAMERA, CardState.BLANK);
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into offload_roll (id, production_id, code, camera_id, day_id, card_id, format_id, loaded_at, loaded_by)
                        select :id, :production, :code, c.id, d.id, :card, f.id, :now, :person
                        from production_camera c, schedule_day d, format_recording_format f
                        where c.id = :camera and c.production_id = :production and d.id = :day and d.production_id = :production
                          and f.id = :format and f.production_id = :production
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("code", code.strip().toUpperCase(Locale.ROOT))
                .param("card", cardId)
                .param("now", Timestamp.from(clock.instant()))
                .param("person", by.personId())
                .param("camera", cameraId)
                .param("day", dayId)
                .param("format", formatId)
                .update();
        if (added == 0) {
            throw findByCode(by.productionId(), code).isPresent()
                    ? new Refusal("offload.refused.roll-exists", code.strip().toUpperCase(Locale.ROOT))
                    : new NotFoundException();
        }
        changed(by, id, "roll.loaded", code, card.code());
        return id;
    }

    /**
     * The card comes out of the camera with so many minutes on it.
     *
     * @throws Refusal if it isn't in a camera any more
     */
    @Transactional
    public void pull(Membership by, UUID rollId, BigDecimal minutes) {
        Roll roll = lock(by.productionId(), rollId);
        if (roll.pulledAt() != null) {
            throw new Refusal("offload.refused.pulled-already", roll.code());
        }
        items.changeCardState(by.productionId(), roll.cardId(), CardState.EXPOSED, CardState.IN_CAMERA);
        jdbc.sql(
                        "update offload_roll set pulled_at = ?, pulled_by = ?, minutes = ?, version = version + 1 where production_id = ? and id = ?")
                .params(Timestamp.from(clock.instant()), by.personId(), minutes, by.productionId(), rollId)
                .update();
        changed(by, rollId, "roll.pulled", roll.code(), minutes.toPlainString());
    }

    /**
     * Takes back a loading that was logged by mistake: nothing was recorded, so the card is blank again.
     *
     * @throws Refusal if the card has left the camera, or a document speaks of the roll
     */
    @Transactional
    public void unload(Membership by, UUID rollId) {
        Roll roll = lock(by.productionId(), rollId);
        if (roll.pulledAt() != null) {
            throw new Refusal("offload.refused.pulled-already", roll.code());
        }
        items.changeCardState(by.productionId(), roll.cardId(), CardState.BLANK, CardState.IN_CAMERA);
        try {
            jdbc.sql("delete from offload_roll where production_id = ? and id = ?")
                    .params(by.productionId(), rollId)
                    .update();
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("offload.refused.has-evidence", roll.code());
        }
        changed(by, rollId, "roll.unloaded", roll.code(), roll.cardCode());
    }

    /** Notes how many bytes the roll has as recorded. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void measured(UUID productionId, UUID rollId, long sizeBytes) {
        jdbc.sql("update offload_roll set size_bytes = ? where production_id = ? and id = ?")
                .params(sizeBytes, productionId, rollId)
                .update();
        events.publishEvent(new RollChanged(productionId, rollId));
    }

    /** Notes how many bytes the roll has as encoded; 0 if no document tells. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void measuredEncoded(UUID productionId, UUID rollId, long encodedBytes) {
        int changed = jdbc.sql("""
                        update offload_roll set encoded_bytes = nullif(:bytes::bigint, 0)
                        where production_id = :production and id = :roll
                          and encoded_bytes is distinct from nullif(:bytes::bigint, 0)
                        """)
                .param("bytes", encodedBytes)
                .param("production", productionId)
                .param("roll", rollId)
                .update();
        if (changed > 0) {
            events.publishEvent(new RollChanged(productionId, rollId));
        }
    }

    /** The rolls of which both sizes are known, as recorded and as encoded; in the order in which they were loaded. */
    public List<Encoding> encodings(UUID productionId) {
        return jdbc.sql("""
                        select id as roll_id, encoded_bytes, size_bytes as recorded_bytes from offload_roll
                        where production_id = ? and encoded_bytes is not null and size_bytes > 0 order by loaded_at, id
                        """).param(productionId).query(Encoding.class).list();
    }

    private void changed(Membership by, UUID rollId, String action, String code, String detail) {
        trail.add(by.act(action, "roll", code, detail));
        events.publishEvent(new RollChanged(by.productionId(), rollId));
    }
}
