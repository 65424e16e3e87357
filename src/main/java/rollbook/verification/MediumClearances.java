package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItemChanged;
import rollbook.inventory.MediaItems;
import rollbook.offload.Copies;
import rollbook.offload.CopyWritten;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Clears drives, arrays and tapes that come back into use, and records their erasure: as with cards, on proof that is
 * looked at anew inside the transaction, while every roll on the medium is locked. After the erasure its copies are
 * gone.
 */
@Service
public class MediumClearances {
    private static final String CLEARANCES = """
            select c.id, c.item_id, i.kind, c.cleared_at, cleared.display_name as cleared_by_name, c.policy, c.verdict_ids,
                   w.withdrawn_at, w.reason as withdrawn_reason, e.erased_at, erased.display_name as erased_by_name
            from verification_medium_clearance c
            join inventory_item i on i.id = c.item_id
            join people_person cleared on cleared.id = c.cleared_by
            left join verification_medium_withdrawal w on w.clearance_id = c.id
            left join verification_medium_erasure e on e.clearance_id = c.id
            left join people_person erased on erased.id = e.erased_by
            where c.production_id = :production
            """;

    private static final String ON_CLEARED_MEDIA = """
            select distinct h.roll_id from verification_medium_clearance c
            join offload_copy h on h.item_id = c.item_id and h.erased_at is null
            where c.production_id = :production
              and not exists (select 1 from verification_medium_withdrawal w where w.clearance_id = c.id)
              and not exists (select 1 from verification_medium_erasure e where e.clearance_id = c.id)
            """;

    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final Clearances clearances;
    private final MediaItems items;
    private final CopyPlan plan;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    MediumClearances(
            JdbcClient jdbc,
            Rolls rolls,
            Copies copies,
            Verdicts verdicts,
            Clearances clearances,
            MediaItems items,
            CopyPlan plan,
            AuditTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.clearances = clearances;
        this.items = items;
        this.plan = plan;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    List<MediumClearance> ofItem(UUID productionId, UUID itemId) {
        return jdbc.sql(CLEARANCES + " and c.item_id = :item order by c.cleared_at desc, c.id")
                .param("production", productionId)
                .param("item", itemId)
                .query(MediumClearances::clearance)
                .list();
    }

    /** The items that may be erased now. */
    Set<UUID> cleared(UUID productionId) {
        return Set.copyOf(jdbc.sql("""
                        select c.item_id from verification_medium_clearance c where c.production_id = ?
                          and not exists (select 1 from verification_medium_withdrawal w where w.clearance_id = c.id)
                          and not exists (select 1 from verification_medium_erasure e where e.clearance_id = c.id)
                        """).param(productionId).query(UUID.class).list());
    }

    /** The rolls on media that may be erased, if the item holds a copy of them too: their proof may lean on it. */
    List<UUID> rollsThatLeanOn(UUID productionId, UUID itemId) {
        return jdbc.sql(
                        ON_CLEARED_MEDIA
                                + " and exists (select 1 from offload_copy o where o.roll_id = h.roll_id and o.item_id = :item)")
                .param("production", productionId)
                .param("item", itemId)
                .query(UUID.class)
                .list();
    }

    /** All rolls on media that may be erased. */
    List<UUID> rollsOnCleared(UUID productionId) {
        return jdbc.sql(ON_CLEARED_MEDIA)
                .param("production", productionId)
                .query(UUID.class)
                .list();
    }

    /** What is proven elsewhere of the rolls on an item. */
    MediumProof proof(UUID productionId, MediaItem item) {
        return MediumProof.of(
                item.id(),
                plan.rules(productionId),
                rolls.copiedTo(productionId, item.id()),
                copies.ofRollsOn(productionId, item.id()),
                verdicts.ofRollsOn(productionId, item.id()));
    }

    /**
     * Allows the erasure of an item.
     *
     * @param typedCode the item's code, as the person read it off the item
     * @throws Refusal if the code is another one, nothing is on the item, or a roll on it isn't proven elsewhere
     */
    @Transactional
    public void clear(Membership by, UUID itemId, String typedCode) {
        MediaItem item = lock(by, itemId, typedCode);
        standing(by, itemId).ifPresent(standing -> {
            throw new Refusal("verification.refused.cleared-already", item.code(), standing.clearedByName());
        });
        MediumProof proof = requireProof(by, item);
        jdbc.sql("""
                        insert into verification_medium_clearance (id, production_id, item_id, cleared_at, cleared_by, policy, verdict_ids)
                        values (?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        UUID.randomUUID(),
                        by.productionId(),
                        itemId,
                        Timestamp.from(clock.instant()),
                        by.personId(),
                        proof.rolls().get(0).proof().policyOnRecord(),
                        proof.verdictIds().toArray(Long[]::new))
                .update();
        trail.add(by.act("medium.cleared", "item", item.code(), codes(proof)));
    }

    /**
     * Records that the cleared item has been erased: the copies on it are there no longer.
     *
     * @throws Refusal if the code is another one, or no clearance stands, or its proof doesn't hold any more
     */
    @Transactional
    public void recordErasure(Membership by, UUID itemId, String typedCode) {
        MediaItem item = lock(by, itemId, typedCode);
        MediumClearance standing =
                standing(by, itemId).orElseThrow(() -> new Refusal("verification.refused.not-cleared", item.code()));
        MediumProof proof = requireProof(by, item);
        Instant now = clock.instant();
        jdbc.sql("insert into verification_medium_erasure (clearance_id, erased_at, erased_by) values (?, ?, ?)")
                .params(standing.id(), Timestamp.from(now), by.personId())
                .update();
        copies.onItem(by.productionId(), itemId).stream()
                .filter(copy -> !copy.isErased())
                .forEach(copy -> verdicts.append(
                        by.productionId(),
                        copy.rollId(),
                        CopyVerdict.unknown(copy.id(), CopyVerdict.Reason.ERASED, now),
                        List.of()));
        copies.erased(by.productionId(), itemId);
        for (MediumProof.OfRoll roll : proof.rolls()) {
            clearances.lookAgain(by.productionId(), roll.rollId());
            lookAgain(by.productionId(), roll.rollId());
        }
        trail.add(by.act("medium.erased", "item", item.code(), codes(proof)));
        events.publishEvent(new MediaItemChanged(by.productionId(), itemId));
    }

    /**
     * Looks again at the clearances of media that hold a roll or held it; the roll's lock is held. One whose proof
     * doesn't hold any more is withdrawn; for one that was used up, an alarm is left to raise.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    void lookAgain(UUID productionId, UUID rollId) {
        List<MediumClearance> live = jdbc.sql(CLEARANCES + """
                         and w.clearance_id is null
                         and c.item_id in (select h.item_id from offload_copy h where h.roll_id = :roll)
                        """)
                .param("production", productionId)
                .param("roll", rollId)
                .query(MediumClearances::clearance)
                .list();
        if (live.isEmpty()) {
            return;
        }
        Roll roll = rolls.get(productionId, rollId);
        Proof proof = clearances.keptProof(productionId, rollId);
        for (MediumClearance clearance : live) {
            Proof elsewhere = proof.without(clearance.itemId(), clearance.kind());
            clearances.raiseAlarms(roll, elsewhere, clearance.verdictIds());
            if (clearance.stands() && !elsewhere.holds().isEmpty()) {
                withdraw(clearance, "PROOF_LOST");
            }
        }
    }

    /** What is cleared and then written to holds something that nobody looked at. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onCopyWritten(CopyWritten written) {
        jdbc.sql(CLEARANCES + """
                         and w.clearance_id is null and e.clearance_id is null
                         and c.item_id = (select h.item_id from offload_copy h where h.id = :copy)
                        """)
                .param("production", written.productionId())
                .param("copy", written.copyId())
                .query(MediumClearances::clearance)
                .list()
                .forEach(clearance -> withdraw(clearance, "WRITTEN_TO"));
    }

    private void withdraw(MediumClearance clearance, String reason) {
        jdbc.sql("""
                        insert into verification_medium_withdrawal (clearance_id, withdrawn_at, reason) values (?, ?, ?)
                        on conflict do nothing
                        """)
                .params(clearance.id(), Timestamp.from(clock.instant()), reason)
                .update();
    }

    /** Locks the rolls on the item and then the item, in the order in which everybody does, and nothing comes onto it. */
    private MediaItem lock(Membership by, UUID itemId, String typedCode) {
        Set<UUID> locked = rolls.lockCopiedTo(by.productionId(), itemId);
        MediaItem item = items.lock(by.productionId(), itemId);
        if (rolls.copiedTo(by.productionId(), itemId).stream().anyMatch(roll -> !locked.contains(roll.id()))) {
            throw new Refusal("verification.refused.medium-written-to", item.code());
        }
        if (!item.kind().holdsCopies()) {
            throw new NotFoundException();
        }
        if (!item.code().equalsIgnoreCase(typedCode.strip())) {
            throw new Refusal("verification.refused.other-code", typedCode.strip(), item.code());
        }
        if (item.condition() != Condition.GOOD && item.condition() != Condition.QUARANTINED) {
            throw new Refusal("verification.refused.medium-away", item.code());
        }
        return item;
    }

    private MediumProof requireProof(Membership by, MediaItem item) {
        MediumProof proof = MediumProof.of(
                item.id(),
                plan.rulesToGrantBy(by.productionId()),
                rolls.copiedTo(by.productionId(), item.id()),
                copies.keepOfRollsOn(by.productionId(), item.id()),
                verdicts.ofRollsOn(by.productionId(), item.id()));
        if (proof.rolls().isEmpty()) {
            throw new Refusal("verification.refused.medium-empty", item.code());
        }
        if (!proof.held().isEmpty()) {
            throw new Refusal(
                    "verification.refused.medium-held",
                    item.code(),
                    proof.held().size());
        }
        clearances.requireAllJudged(
                by,
                item.code(),
                proof.rolls().stream().map(MediumProof.OfRoll::rollId).toList());
        return proof;
    }

    private Optional<MediumClearance> standing(Membership by, UUID itemId) {
        return ofItem(by.productionId(), itemId).stream()
                .filter(MediumClearance::stands)
                .findFirst();
    }

    private static String codes(MediumProof proof) {
        return String.join(
                ", ", proof.rolls().stream().map(MediumProof.OfRoll::rollCode).toList());
    }

    private static MediumClearance clearance(ResultSet row, int number) throws SQLException {
        return new MediumClearance(
                row.getObject("id", UUID.class),
                row.getObject("item_id", UUID.class),
                MediaKind.valueOf(row.getString("kind")),
                row.getTimestamp("cleared_at").toInstant(),
                row.getString("cleared_by_name"),
                row.getString("policy"),
                List.of((Long[]) row.getArray("verdict_ids").getArray()),
                instant(row.getTimestamp("withdrawn_at")),
                row.getString("withdrawn_reason"),
                instant(row.getTimestamp("erased_at")),
                row.getString("erased_by_name"));
    }

    private static @Nullable Instant instant(@Nullable Timestamp timestamp) {
        return timestamp == null ? null : timestamp.toInstant();
    }
}
