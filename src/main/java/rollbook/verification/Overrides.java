package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItems;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.verification.ClearingGate.Hold;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Clears a card whose copies aren't proven, on the word of two people: one asks with a reason, another one who watches
 * over the proof approves what was asked, no more and no later. Everything stays on record for good.
 */
@Service
public class Overrides {
    public static final int SHORTEST_REASON = 20;
    public static final int LONGEST_REASON = 1_000;
    static final Duration OPEN_FOR = Duration.ofHours(24);

    private static final Role[] MAY_ASK = {Role.WRANGLER, Role.OFFICE, Role.POST};
    private static final Role[] MAY_APPROVE = {Role.POST};

    private static final String REQUESTS = """
            select q.id, q.roll_id, r.code as roll_code, q.card_id, i.code as card_code, q.requested_at, q.requested_by,
                   asked.display_name as requested_by_name, q.reason, q.holds, q.holds_in_words, q.nothing_proven,
                   a.approved_at, approved.display_name as approved_by_name, a.clearance_id,
                   w.withdrawn_at, withdrawn.display_name as withdrawn_by_name, w.reason as withdrawn_reason
            from verification_override_request q
            join offload_roll r on r.id = q.roll_id
            join inventory_item i on i.id = q.card_id
            join people_person asked on asked.id = q.requested_by
            left join verification_override_approval a on a.request_id = q.id
            left join people_person approved on approved.id = a.approved_by
            left join verification_override_withdrawal w on w.request_id = q.id
            left join people_person withdrawn on withdrawn.id = w.withdrawn_by
            where q.production_id = :production
            """;

    private final JdbcClient jdbc;
    private final Rolls rolls;
    private final MediaItems items;
    private final Clearances clearances;
    private final AuditTrail trail;
    private final Display display;
    private final Clock clock;

    Overrides(
            JdbcClient jdbc,
            Rolls rolls,
            MediaItems items,
            Clearances clearances,
            AuditTrail trail,
            Display display,
            Clock clock) {
        this.jdbc = jdbc;
        this.rolls = rolls;
        this.items = items;
        this.clearances = clearances;
        this.trail = trail;
        this.display = display;
        this.clock = clock;
    }

    /** @throws NotFoundException if this production has no such request */
    public WithoutProof get(UUID productionId, UUID requestId) {
        return jdbc.sql(REQUESTS + " and q.id = :request")
                .param("production", productionId)
                .param("request", requestId)
                .query(Overrides::request)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** Every request for a roll, the newest first. */
    public List<WithoutProof> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql(REQUESTS + " and q.roll_id = :roll order by q.requested_at desc, q.id")
                .param("production", productionId)
                .param("roll", rollId)
                .query(Overrides::request)
                .list();
    }

    /** The requests that wait for a second person and those that got one and weren't withdrawn, the newest first. */
    public List<WithoutProof> standing(UUID productionId) {
        return jdbc.sql(
                        REQUESTS
                                + " and w.request_id is null and (a.request_id is not null or q.requested_at > :since) order by q.requested_at desc, q.id")
                .param("production", productionId)
                .param("since", Timestamp.from(clock.instant().minus(OPEN_FOR)))
                .query(Overrides::request)
                .list();
    }

    /** Whether a second person may still approve it, as far as time goes. */
    public boolean waits(WithoutProof request) {
        return request.isOpen()
                && clock.instant().isBefore(request.requestedAt().plus(OPEN_FOR));
    }

    /**
     * Asks to clear the card that holds the roll although something holds it.
     *
     * @return the request's id
     * @throws Refusal if the reason says too little, the card isn't held, nothing holds it, or a request waits already
     */
    @Transactional
    public UUID request(Membership by, UUID rollId, String reason) {
        requireRole(by, MAY_ASK);
        Roll roll = rolls.lock(by.productionId(), rollId);
        requireLongEnough(reason);
        requireHeld(roll);
        if (ofRoll(by.productionId(), rollId).stream().anyMatch(this::waits)) {
            throw new Refusal("verification.refused.override-waits", roll.cardCode());
        }
        Proof proof = clearances.keptProof(by.productionId(), rollId);
        List<Hold> holds = proof.holds();
        if (holds.isEmpty()) {
            throw new Refusal("verification.refused.override-not-needed", roll.cardCode());
        }
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into verification_override_request
                            (id, production_id, roll_id, card_id, requested_at, requested_by, reason, holds, holds_in_words, nothing_proven)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(id)
                .param(by.productionId())
                .param(rollId)
                .param(roll.cardId())
                .param(Timestamp.from(clock.instant()))
                .param(by.personId())
                .param(reason.strip())
                .param(onRecord(holds).toArray(String[]::new))
                .param(inWords(holds).toArray(String[]::new))
                .param(proof.counting().isEmpty())
                .update();
        trail.add(by.act("override.requested", "card", roll.cardCode(), roll.code() + ": " + reason.strip()));
        return id;
    }

    /**
     * Approves a request: the card is cleared without proof.
     *
     * @param typedCode the card's code, as the person read it off the card
     * @throws Refusal if the same person asked, the code is another one, the request is a day old or was withdrawn or
     *     approved, what holds the card is no longer what was asked for, or something is still to be judged
     */
    @Transactional
    public void approve(Membership by, UUID requestId, String typedCode) {
        requireRole(by, MAY_APPROVE);
        Roll roll =
                rolls.lock(by.productionId(), get(by.productionId(), requestId).rollId());
        WithoutProof request = get(by.productionId(), requestId);
        if (request.requestedBy().equals(by.personId())) {
            throw new Refusal("verification.refused.override-own");
        }
        Clearances.requireCode(roll, typedCode);
        if (request.withdrawnAt() != null) {
            throw new Refusal(
                    "verification.refused.override-withdrawn",
                    roll.cardCode(),
                    String.valueOf(request.withdrawnByName()));
        }
        if (request.isApproved()) {
            throw new Refusal(
                    "verification.refused.cleared-already", roll.cardCode(), String.valueOf(request.approvedByName()));
        }
        if (!waits(request)) {
            throw new Refusal("verification.refused.override-too-late", roll.cardCode());
        }
        requireHeld(roll);
        clearances.requireAllJudged(by, roll.cardCode(), List.of(roll.id()));
        Proof proof = clearances.keptProof(by.productionId(), roll.id());
        if (!onRecord(proof.holds()).equals(request.holds())) {
            throw new Refusal("verification.refused.override-changed", roll.cardCode());
        }
        items.changeCardState(by.productionId(), roll.cardId(), CardState.CLEAR_TO_ERASE, CardState.HELD);
        UUID clearanceId = clearances.add(by, roll, proof);
        jdbc.sql("""
                        insert into verification_override_approval (request_id, requested_by, approved_at, approved_by, clearance_id)
                        values (?, ?, ?, ?, ?)
                        """)
                .params(requestId, request.requestedBy(), Timestamp.from(clock.instant()), by.personId(), clearanceId)
                .update();
        trail.add(by.act(
                "override.approved",
                "card",
                roll.cardCode(),
                display.text(
                        "verification.override.on-record",
                        roll.code(),
                        request.requestedByName(),
                        by.personName(),
                        request.reason())));
    }

    /**
     * Takes a request back, or the clearance that came of it: the card is held again.
     *
     * @param requestOrClearanceId of an override of this production
     * @throws Refusal if no reason is given, it was withdrawn already, or the card has been erased
     */
    @Transactional
    public void withdraw(Membership by, UUID requestOrClearanceId, String reason) {
        requireRole(by, MAY_ASK);
        UUID requestId = requestOf(by.productionId(), requestOrClearanceId);
        Roll roll =
                rolls.lock(by.productionId(), get(by.productionId(), requestId).rollId());
        WithoutProof request = get(by.productionId(), requestId);
        if (reason.isBlank() || reason.strip().length() > LONGEST_REASON) {
            throw new Refusal("verification.refused.override-no-reason");
        }
        if (request.withdrawnAt() != null) {
            throw new Refusal(
                    "verification.refused.override-withdrawn",
                    request.cardCode(),
                    String.valueOf(request.withdrawnByName()));
        }
        UUID clearanceId = request.clearanceId();
        if (clearanceId != null) {
            clearances.takeBack(by, roll, clearanceId);
        }
        jdbc.sql("""
                        insert into verification_override_withdrawal (request_id, withdrawn_at, withdrawn_by, reason)
                        values (?, ?, ?, ?)
                        """)
                .params(requestId, Timestamp.from(clock.instant()), by.personId(), reason.strip())
                .update();
        trail.add(by.act("override.withdrawn", "card", request.cardCode(), roll.code() + ": " + reason.strip()));
    }

    private UUID requestOf(UUID productionId, UUID requestOrClearanceId) {
        return jdbc.sql("""
                        select q.id from verification_override_request q
                        left join verification_override_approval a on a.request_id = q.id
                        where q.production_id = :production and (q.id = :id or a.clearance_id = :id)
                        """)
                .param("production", productionId)
                .param("id", requestOrClearanceId)
                .query(UUID.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    private static void requireRole(Membership by, Role... roles) {
        if (!by.may(roles)) {
            throw new Refusal("verification.refused.override-role");
        }
    }

    private static void requireLongEnough(String reason) {
        int length = reason.strip().length();
        if (length < SHORTEST_REASON || length > LONGEST_REASON) {
            throw new Refusal("verification.refused.override-reason", SHORTEST_REASON, LONGEST_REASON);
        }
    }

    private static void requireHeld(Roll roll) {
        if (!roll.onCard()) {
            throw new Refusal("verification.refused.not-on-card", roll.code(), roll.cardCode());
        }
        if (roll.cardState() != CardState.HELD) {
            throw new Refusal("verification.refused.override-not-held", roll.cardCode());
        }
    }

    private static List<String> onRecord(List<Hold> holds) {
        return holds.stream().map(Hold::onRecord).toList();
    }

    private List<String> inWords(List<Hold> holds) {
        return holds.stream()
                .map(hold -> display.text(hold.key(), hold.args().toArray()))
                .toList();
    }

    private static WithoutProof request(ResultSet row, int number) throws SQLException {
        return new WithoutProof(
                row.getObject("id", UUID.class),
                row.getObject("roll_id", UUID.class),
                row.getString("roll_code"),
                row.getObject("card_id", UUID.class),
                row.getString("card_code"),
                row.getTimestamp("requested_at").toInstant(),
                row.getObject("requested_by", UUID.class),
                row.getString("requested_by_name"),
                row.getString("reason"),
                List.of((String[]) row.getArray("holds").getArray()),
                List.of((String[]) row.getArray("holds_in_words").getArray()),
                row.getBoolean("nothing_proven"),
                instant(row.getTimestamp("approved_at")),
                row.getString("approved_by_name"),
                row.getObject("clearance_id", UUID.class),
                instant(row.getTimestamp("withdrawn_at")),
                row.getString("withdrawn_by_name"),
                row.getString("withdrawn_reason"));
    }

    private static @Nullable Instant instant(@Nullable Timestamp timestamp) {
        return timestamp == null ? null : timestamp.toInstant();
    }
}
