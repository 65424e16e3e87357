package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItems;
import rollbook.offload.Copies;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Clears cards and records their erasure. Every decision is made anew inside the transaction that acts on it, while the
 * roll is locked against new verdicts; nobody's role skips it.
 */
@Service
public class Clearances {
    static final String CLEARANCES = """
            select c.id, c.roll_id, c.card_id, c.cleared_at, cleared.display_name as cleared_by_name, c.policy, c.verdict_ids,
                   w.withdrawn_at, w.reason as withdrawn_reason, e.erased_at, erased.display_name as erased_by_name, o.request_id as override_id,
                   asked.display_name as asked_by_name, q.reason as override_reason
            from verification_clearance c
            join people_person cleared on cleared.id = c.cleared_by
            left join verification_clearance_withdrawal w on w.clearance_id = c.id
            left join verification_override_approval o on o.clearance_id = c.id
            left join verification_override_request q on q.id = o.request_id
            left join people_person asked on asked.id = q.requested_by
            left join verification_erasure e on e.clearance_id = c.id
            left join people_person erased on erased.id = e.erased_by
            where c.production_id = :production and c.roll_id = :roll
            """;

    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final MediaItems items;
    private final CopyPlan plan;
    private final Unjudged unjudged;
    private final AuditTrail trail;
    private final Clock clock;

    Clearances(
            JdbcClient jdbc,
            Rolls rolls,
            Copies copies,
            Verdicts verdicts,
            MediaItems items,
            CopyPlan plan,
            Unjudged unjudged,
            AuditTrail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.items = items;
        this.plan = plan;
        this.unjudged = unjudged;
        this.trail = trail;
        this.clock = clock;
    }

    List<Clearance> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql(CLEARANCES + " order by c.cleared_at desc, c.id")
                .param("production", productionId)
                .param("roll", rollId)
                .query(Clearances::clearance)
                .list();
    }

    /**
     * Allows the erasure of the card that holds the roll.
     *
     * @param typedCode the card's code, as the person read it off the card
     * @throws Refusal if the code is another one, the card isn't held, or anything holds it or is still to be judged
     */
    @Transactional
    public void clear(Membership by, UUID rollId, String typedCode) {
        Roll roll = rolls.lock(by.productionId(), rollId);
        requireCode(roll, typedCode);
        List<Clearance> earlier = ofRoll(by.productionId(), rollId);
        earlier.stream().filter(Clearance::stands).findFirst().ifPresent(standing -> {
            throw new Refusal("verification.refused.cleared-already", roll.cardCode(), standing.clearedByName());
        });
        if (!roll.onCard()) {
            throw new Refusal("verification.refused.not-on-card", roll.code(), roll.cardCode());
        }
        Proof proof = requireProof(by, roll);
        items.changeCardState(by.productionId(), roll.cardId(), CardState.CLEAR_TO_ERASE, CardState.HELD);
        add(by, roll, proof);
        trail.add(by.act("card.cleared", "card", roll.cardCode(), roll.code()));
    }

    /** Puts a clearance on record; whoever calls it has made sure that it may be, and holds the roll's lock. */
    @Transactional(propagation = Propagation.MANDATORY)
    UUID add(Membership by, Roll roll, Proof proof) {
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into verification_clearance (id, production_id, roll_id, card_id, cleared_at, cleared_by, policy, verdict_ids)
                        values (?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .params(
                        id,
                        by.productionId(),
                        roll.id(),
                        roll.cardId(),
                        Timestamp.from(clock.instant()),
                        by.personId(),
                        proof.policyOnRecord(),
                        proof.verdictIds().toArray(Long[]::new))
                .update();
        return id;
    }

    /**
     * Takes back the clearance that an override gave; the roll's lock is held.
     *
     * @throws Refusal if the card has been erased on the strength of it
     */
    @Transactional(propagation = Propagation.MANDATORY)
    void takeBack(Membership by, Roll roll, UUID clearanceId) {
        Clearance clearance = ofRoll(by.productionId(), roll.id()).stream()
                .filter(candidate -> candidate.id().equals(clearanceId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        if (clearance.erasedAt() != null) {
            throw new Refusal(
                    "verification.refused.erased-already", roll.cardCode(), String.valueOf(clearance.erasedByName()));
        }
        withdraw(by.productionId(), clearance, "OVERRIDE_WITHDRAWN");
    }

    /**
     * Records that the cleared card has been erased; it is blank from now on.
     *
     * @throws Refusal if the code is another one, or no clearance stands, or its proof doesn't hold any more or is still to be judged
     */
    @Transactional
    public void recordErasure(Membership by, UUID rollId, String typedCode) {
        Roll roll = rolls.lock(by.productionId(), rollId);
        requireCode(roll, typedCode);
        List<Clearance> all = ofRoll(by.productionId(), rollId);
        Clearance standing = all.stream().filter(Clearance::stands).findFirst().orElseThrow(() -> {
            Optional<Clearance> erased = all.stream()
                    .filter(clearance -> clearance.erasedAt() != null)
                    .findFirst();
            return erased.isPresent()
                    ? new Refusal(
                            "verification.refused.erased-already",
                            roll.cardCode(),
                            String.valueOf(erased.get().erasedByName()))
                    : new Refusal("verification.refused.not-cleared", roll.cardCode());
        });
        if (!roll.onCard()) {
            throw new Refusal("verification.refused.not-on-card", roll.code(), roll.cardCode());
        }
        if (!standing.withoutProof()) {
            requireProof(by, roll);
        }
        items.changeCardState(by.productionId(), roll.cardId(), CardState.BLANK, CardState.CLEAR_TO_ERASE);
        jdbc.sql("insert into verification_erasure (clearance_id, erased_at, erased_by) values (?, ?, ?)")
                .params(standing.id(), Timestamp.from(clock.instant()), by.personId())
                .update();
        trail.add(by.act("card.erased", "card", roll.cardCode(), roll.code()));
    }

    /**
     * Looks at a roll's clearances again after something changed. One whose proof doesn't hold any more is withdrawn if
     * the card still exists; if the card is erased, only an alarm is left to raise. One without proof has none to lose,
     * but a copy that was proven and fails is told all the same.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    void lookAgain(UUID productionId, UUID rollId) {
        List<Clearance> live = ofRoll(productionId, rollId).stream()
                .filter(clearance -> clearance.withdrawnAt() == null)
                .toList();
        if (live.isEmpty()) {
            return;
        }
        Roll roll = rolls.get(productionId, rollId);
        Proof proof = keptProof(productionId, rollId);
        for (Clearance clearance : live) {
            raiseAlarms(roll, clearance.stands() ? proof : proof.ofKeptLegs(), clearance.verdictIds());
            if (clearance.stands()
                    && !clearance.withoutProof()
                    && !proof.holds().isEmpty()) {
                withdraw(productionId, clearance, "PROOF_LOST");
            }
        }
    }

    /**
     * Raises an alarm for each copy that somebody relied on and that is proven no longer. One that was erased in order,
     * because enough others are proven, raises none.
     *
     * @param verdictIds what was relied on, of this roll and perhaps of others
     */
    @Transactional(propagation = Propagation.MANDATORY)
    void raiseAlarms(Roll roll, Proof proof, List<Long> verdictIds) {
        boolean enough = proof.holds().isEmpty();
        proof.lost(copiesReliedOn(verdictIds)).forEach((copyId, verdictId) -> {
            if (!enough || !proof.isErased(copyId)) {
                raise(roll, copyId, verdictId);
            }
        });
    }

    private Set<UUID> copiesReliedOn(List<Long> verdictIds) {
        return verdictIds.isEmpty()
                ? Set.of()
                : Set.copyOf(jdbc.sql("select copy_id from verification_verdict where id in (:ids)")
                        .param("ids", verdictIds)
                        .query(UUID.class)
                        .list());
    }

    private void withdraw(UUID productionId, Clearance clearance, String reason) {
        jdbc.sql("insert into verification_clearance_withdrawal (clearance_id, withdrawn_at, reason) values (?, ?, ?)")
                .params(clearance.id(), Timestamp.from(clock.instant()), reason)
                .update();
        items.changeCardState(productionId, clearance.cardId(), CardState.HELD, CardState.CLEAR_TO_ERASE);
    }

    private void raise(Roll roll, UUID copyId, long verdictId) {
        jdbc.sql("""
                        insert into verification_alarm (production_id, roll_id, copy_id, verdict_id, card_erased, raised_at)
                        select r.production_id, r.id, :copy, :verdict, :erased, :now from offload_roll r
                        where r.id = :roll
                          and not exists (select 1 from verification_alarm where verdict_id = :verdict and card_erased = :erased)
                        """)
                .param("roll", roll.id())
                .param("copy", copyId)
                .param("verdict", verdictId)
                .param("erased", !roll.onCard())
                .param("now", Timestamp.from(clock.instant()))
                .update();
    }

    /** What is proven of a roll now, and what therefore holds its card. */
    Proof proof(UUID productionId, UUID rollId) {
        return new Proof(
                plan.rules(productionId), copies.ofRoll(productionId, rollId), verdicts.ofRoll(productionId, rollId));
    }

    /** The same, with the media kept as they are until the transaction ends. */
    Proof keptProof(UUID productionId, UUID rollId) {
        return new Proof(
                plan.rulesToGrantBy(productionId),
                copies.keepOfRoll(productionId, rollId),
                verdicts.ofRoll(productionId, rollId));
    }

    /** What was sent of the roll's copies counts from the moment it was sent, not only once a job has come to it. */
    void requireAllJudged(Membership by, String mediumCode, Collection<UUID> rollIds) {
        if (unjudged.isAnything(by.productionId(), rollIds)) {
            throw new Refusal("verification.refused.unjudged", mediumCode);
        }
    }

    private Proof requireProof(Membership by, Roll roll) {
        Proof proof = keptProof(by.productionId(), roll.id());
        if (!proof.holds().isEmpty()) {
            throw new Refusal(
                    "verification.refused.held", roll.cardCode(), proof.holds().size());
        }
        requireAllJudged(by, roll.cardCode(), Set.of(roll.id()));
        return proof;
    }

    static void requireCode(Roll roll, String typedCode) {
        if (!roll.cardCode().equalsIgnoreCase(typedCode.strip())) {
            throw new Refusal("verification.refused.other-code", typedCode.strip(), roll.cardCode());
        }
    }

    static Clearance clearance(ResultSet row, int number) throws SQLException {
        return new Clearance(
                row.getObject("id", UUID.class),
                row.getObject("roll_id", UUID.class),
                row.getObject("card_id", UUID.class),
                row.getTimestamp("cleared_at").toInstant(),
                row.getString("cleared_by_name"),
                row.getString("policy"),
                List.of((Long[]) row.getArray("verdict_ids").getArray()),
                instant(row.getTimestamp("withdrawn_at")),
                row.getString("withdrawn_reason"),
                instant(row.getTimestamp("erased_at")),
                row.getString("erased_by_name"),
                row.getObject("override_id", UUID.class),
                row.getString("asked_by_name"),
                row.getString("override_reason"));
    }

    private static @Nullable Instant instant(@Nullable Timestamp timestamp) {
        return timestamp == null ? null : timestamp.toInstant();
    }
}
