package rollbook.offload;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Rendition;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The sessions that read cards and write copies. */
@Service
public class Offloads {
    static final String SESSIONS = """
            select s.id, s.roll_id, r.code as roll_code, card.code as card_code, reader.code as reader_code,
                   adapter.code as adapter_code, d.codes as destinations,
                   least(card.read_bytes_per_second, reader.read_bytes_per_second, adapter.read_bytes_per_second, d.slowest)
                       as expected_bytes_per_second,
                   s.started_at, s.ended_at, s.outcome, s.size_bytes, s.note
            from offload_session s
            join offload_roll r on r.id = s.roll_id
            join inventory_item card on card.id = r.card_id
            join inventory_item reader on reader.id = s.reader_id
            left join inventory_item adapter on adapter.id = s.adapter_id
            cross join lateral (
                select coalesce(string_agg(i.code, ', ' order by i.code), '') as codes, min(i.write_bytes_per_second) as slowest
                from offload_destination o join offload_copy c on c.id = o.copy_id join inventory_item i on i.id = c.item_id
                where o.session_id = s.id) d
            where s.production_id = :production
            """;

    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final Copies copies;
    private final MediaItems items;
    private final CopyPlan plan;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Offloads(
            JdbcClient jdbc,
            Rolls rolls,
            Copies copies,
            MediaItems items,
            CopyPlan plan,
            AuditTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.copies = copies;
        this.items = items;
        this.plan = plan;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /** @throws NotFoundException if this production has no such session */
    public Offload get(UUID productionId, UUID sessionId) {
        return jdbc.sql(SESSIONS + " and s.id = :id")
                .param("production", productionId)
                .param("id", sessionId)
                .query(Offload.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    public List<Offload> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql(SESSIONS + " and s.roll_id = :roll order by s.started_at")
                .param("production", productionId)
                .param("roll", rollId)
                .query(Offload.class)
                .list();
    }

    public List<Offload> running(UUID productionId) {
        return jdbc.sql(SESSIONS + " and s.outcome = 'RUNNING' order by s.started_at")
                .param("production", productionId)
                .query(Offload.class)
                .list();
    }

    /**
     * Whether the roll's card can be read now.
     *
     * @throws Refusal saying why not
     */
    static void requireReadable(Roll roll) {
        if (!roll.onCard()) {
            throw new Refusal("offload.refused.not-on-card", roll.code(), roll.cardCode());
        }
        switch (roll.cardState()) {
            case EXPOSED, HELD -> {}
            case COPYING -> throw new Refusal("offload.refused.running-already", roll.code(), roll.cardCode());
            case CLEAR_TO_ERASE -> throw new Refusal("offload.refused.cleared", roll.code(), roll.cardCode());
            case BLANK, IN_CAMERA -> throw new Refusal("offload.refused.in-camera", roll.code(), roll.cardCode());
        }
    }

    /**
     * Begins to read the roll's card. Whatever was proven of copies that are written over is proven no longer.
     *
     * @throws Refusal if the card isn't exposed or held, or an item can't serve
     */
    @Transactional
    public UUID start(
            Membership by, UUID rollId, UUID readerId, @Nullable UUID adapterId, List<Destination> destinations) {
        Roll roll = rolls.lock(by.productionId(), rollId);
        requireReadable(roll);
        if (destinations.isEmpty()) {
            throw new Refusal("offload.refused.no-destination", roll.code());
        }
        items.changeCardState(by.productionId(), roll.cardId(), CardState.COPYING, CardState.EXPOSED, CardState.HELD);
        usable(by, readerId, MediaKind.READER);
        if (adapterId != null) {
            usable(by, adapterId, MediaKind.ADAPTER);
        }
        UUID sessionId = UUID.randomUUID();
        Timestamp now = Timestamp.from(clock.instant());
        jdbc.sql("""
                        insert into offload_session (id, production_id, roll_id, reader_id, adapter_id, started_at, started_by)
                        values (:id, :production, :roll, :reader, :adapter, :now, :person)
                        """)
                .param("id", sessionId)
                .param("production", by.productionId())
                .param("roll", rollId)
                .param("reader", readerId)
                .param("adapter", adapterId)
                .param("now", now)
                .param("person", by.personId())
                .update();
        List<Leg> legs = plan.legs(by.productionId());
        for (Destination destination : destinations) {
            write(by, sessionId, rollId, destination, legs, now);
        }
        trail.add(by.act("offload.started", "roll", roll.code(), roll.cardCode()));
        return sessionId;
    }

    private void write(
            Membership by, UUID sessionId, UUID rollId, Destination destination, List<Leg> legs, Timestamp now) {
        MediaItem item = usable(by, destination.itemId(), MediaKind.DRIVE, MediaKind.ARRAY, MediaKind.TAPE);
        Leg leg = destination.legId() == null
                ? null
                : legs.stream()
                        .filter(candidate -> candidate.id().equals(destination.legId()))
                        .findFirst()
                        .orElseThrow(NotFoundException::new);
        Rendition rendition = leg == null ? Rendition.AS_RECORDED : leg.rendition();
        UUID copyId = jdbc.sql("""
                        update offload_copy set written_from = ?, erased_at = null, leg_id = coalesce(?, leg_id)
                        where production_id = ? and roll_id = ? and item_id = ? and rendition = ? returning id
                        """)
                .param(now)
                .param(destination.legId())
                .param(by.productionId())
                .param(rollId)
                .param(item.id())
                .param(rendition.name())
                .query(UUID.class)
                .optional()
                .orElseGet(() -> copies.add(by.productionId(), rollId, item, destination.legId(), rendition, now));
        jdbc.sql("insert into offload_destination (session_id, copy_id) values (?, ?) on conflict do nothing")
                .params(sessionId, copyId)
                .update();
        events.publishEvent(new CopyWritten(by.productionId(), rollId, copyId));
    }

    /**
     * The session has read the whole card and written every destination.
     *
     * @param sizeBytes bytes read from the card
     * @throws Refusal if it has ended already
     */
    @Transactional
    public void finish(Membership by, UUID sessionId, long sizeBytes) {
        Offload session = end(by, sessionId, Offload.Outcome.FINISHED, sizeBytes, "");
        Roll roll = rolls.get(by.productionId(), session.rollId());
        items.changeCardState(by.productionId(), roll.cardId(), CardState.HELD, CardState.COPYING);
        rolls.measured(by.productionId(), roll.id(), sizeBytes);
        trail.add(by.act("offload.finished", "roll", roll.code(), Long.toString(sizeBytes)));
    }

    /**
     * The session broke off. What it wrote counts for nothing; the card still holds the roll.
     *
     * @throws Refusal if it has ended already
     */
    @Transactional
    public void abandon(Membership by, UUID sessionId, String note) {
        Offload session = end(by, sessionId, Offload.Outcome.ABANDONED, null, note);
        Roll roll = rolls.get(by.productionId(), session.rollId());
        boolean copiedBefore = ofRoll(by.productionId(), roll.id()).stream()
                .anyMatch(other -> other.outcome() == Offload.Outcome.FINISHED);
        items.changeCardState(
                by.productionId(), roll.cardId(), copiedBefore ? CardState.HELD : CardState.EXPOSED, CardState.COPYING);
        trail.add(by.act("offload.abandoned", "roll", roll.code(), note));
    }

    private Offload end(Membership by, UUID sessionId, Offload.Outcome outcome, @Nullable Long sizeBytes, String note) {
        Offload session = get(by.productionId(), sessionId);
        rolls.lock(by.productionId(), session.rollId());
        int ended = jdbc.sql("""
                        update offload_session set outcome = ?, ended_at = ?, ended_by = ?, size_bytes = ?, note = ?
                        where production_id = ? and id = ? and outcome = 'RUNNING'
                        """)
                .param(outcome.name())
                .param(Timestamp.from(clock.instant()))
                .param(by.personId())
                .param(sizeBytes)
                .param(note)
                .param(by.productionId())
                .param(sessionId)
                .update();
        if (ended == 0) {
            throw new Refusal("offload.refused.ended-already", session.rollCode());
        }
        return session;
    }

    private MediaItem usable(Membership by, UUID itemId, MediaKind... kinds) {
        MediaItem item = items.keep(by.productionId(), itemId);
        if (!List.of(kinds).contains(item.kind())) {
            throw new Refusal("offload.refused.wrong-kind", item.code());
        }
        if (!item.usable()) {
            throw new Refusal(
                    "offload.refused.item-condition",
                    item.code(),
                    item.condition().name());
        }
        return item;
    }

    /** Where a copy goes, and which leg of the copy plan it serves, if any. */
    public record Destination(UUID itemId, @Nullable UUID legId) {}
}
