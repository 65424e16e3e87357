package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.assertj.core.api.Assertions;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.CardState;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.ClearingPolicy;
import rollbook.production.CopyPlan;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Attacks the one way past the gate: two people, a reason, the same state, one day, on record for good. */
@PortalTest
class OverridesTests {
    private static final String FILES = """
            d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf
            900150983cd24fb0d6963f7d28e17f72  A001/Clips/A001C002.mxf
            """;
    private static final String ONE_FILE = "d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf\n";
    private static final String REASON = "The vault drive is on its way, and we are out of cards.";

    @Autowired
    Fixtures fixtures;

    @Autowired
    Jobs jobs;

    @Autowired
    Documents documents;

    @Autowired
    Overrides overrides;

    @Autowired
    Clearances clearances;

    @Autowired
    ProofSummaries summaries;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    MediaItems items;

    @Autowired
    Custody custody;

    @Autowired
    CopyPlan plan;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership wrangler;
    private Membership post;
    private UUID camera;
    private UUID day;
    private UUID format;
    private UUID card;
    private UUID reader;
    private UUID shuttle;
    private UUID vault;
    private UUID roll;

    @BeforeEach
    void copyARollAndProveOneOfTwoCopies() throws IOException {
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        post = production.as(Role.POST);
        UUID set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        card = production.item("CARD-1", "CARD", set, null);
        reader = production.item("READER-1", "READER", set, null);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, null);
        vault = production.item("VAULT-1", "DRIVE", set, null);
        roll = rolls.load(wrangler, "A001", camera, day, card, format);
        rolls.pull(wrangler, roll, new BigDecimal("10"));
        offload();
        upload("card.md5", FILES, Subject.CARD, null);
        upload("shuttle.md5", "# shuttle\n" + FILES, Subject.COPY, shuttle);
    }

    @Test
    void aSecondPersonsApprovalClearsTheCardAndTheRecordSaysSoForGood() {
        UUID request = overrides.request(wrangler, roll, REASON);
        assertThat(overrides.get(production.id, request).holdsInWords())
                .anyMatch(hold -> hold.startsWith("Only 1 copy is proven"));
        assertThat(cardState()).isEqualTo(CardState.HELD);

        overrides.approve(post, request, "card-1");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
        clearances.recordErasure(wrangler, roll, "CARD-1");
        assertThat(cardState()).isEqualTo(CardState.BLANK);

        Clearance clearance = clearances.ofRoll(production.id, roll).get(0);
        assertThat(clearance.withoutProof()).isTrue();
        assertThat(overrides.ofRoll(production.id, roll)).singleElement().satisfies(kept -> {
            assertThat(kept.requestedByName()).isEqualTo("WRANGLER");
            assertThat(kept.approvedByName()).isEqualTo("POST");
            assertThat(kept.reason()).isEqualTo(REASON);
            assertThat(kept.nothingProven()).isFalse();
            assertThat(kept.clearanceId()).isEqualTo(clearance.id());
        });
        assertThat(record())
                .containsSubsequence("override.requested", "override.approved", "card.erased")
                .doesNotContain("card.cleared");
    }

    @Test
    void oneWhoAskedNeverApprovesWhateverRolesTheyHave() {
        Membership administrator = production.as(Role.ADMINISTRATOR);
        UUID request = overrides.request(administrator, roll, REASON);
        assertThat(refusal(() -> overrides.approve(administrator, request, "CARD-1")))
                .isEqualTo("verification.refused.override-own");
        Membership underAllRoles = new Membership(
                administrator.productionId(),
                administrator.code(),
                administrator.productionName(),
                administrator.zone(),
                administrator.currency(),
                administrator.personId(),
                "Another name",
                EnumSet.allOf(Role.class));
        assertThat(refusal(() -> overrides.approve(underAllRoles, request, "CARD-1")))
                .isEqualTo("verification.refused.override-own");
        assertThat(cardState()).isEqualTo(CardState.HELD);
    }

    @Test
    void theTableItselfRefusesAnApprovalByWhoAsked() {
        UUID request = overrides.request(post, roll, REASON);
        overrides.approve(production.as(Role.ADMINISTRATOR), request, "CARD-1");
        UUID another = oldRequest(Instant.now());
        UUID clearance = clearances.ofRoll(production.id, roll).get(0).id();
        assertThatThrownBy(() -> jdbc.sql(
                                "insert into verification_override_approval (request_id, requested_by, approved_at, approved_by, clearance_id) values (?, ?, now(), ?, ?)")
                        .params(another, wrangler.personId(), wrangler.personId(), clearance)
                        .update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("other_person");
        assertThatThrownBy(() -> jdbc.sql(
                                "insert into verification_override_approval (request_id, requested_by, approved_at, approved_by, clearance_id) values (?, ?, now(), ?, ?)")
                        .params(another, post.personId(), wrangler.personId(), clearance)
                        .update())
                .as("nor by who claims that somebody else asked")
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void everyRoleButAReaderAsksAndOnlyPostAndAdministratorsApprove() {
        assertThat(refusal(() -> overrides.request(production.as(Role.READER), roll, REASON)))
                .isEqualTo("verification.refused.override-role");
        UUID request = overrides.request(production.as(Role.OFFICE), roll, REASON);
        for (Role role : List.of(Role.READER, Role.WRANGLER)) {
            assertThat(refusal(() -> overrides.approve(production.as(role), request, "CARD-1")))
                    .as(role.name())
                    .isEqualTo("verification.refused.override-role");
        }
        assertThat(refusal(() -> overrides.withdraw(production.as(Role.READER), request, "no")))
                .isEqualTo("verification.refused.override-role");
        assertThat(cardState()).isEqualTo(CardState.HELD);
        overrides.approve(production.as(Role.ADMINISTRATOR), request, "CARD-1");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
    }

    @Test
    void aReasonOfFewWordsIsNone() {
        for (String reason : List.of("", "because", "a".repeat(19), " ".repeat(30), "a".repeat(1_001))) {
            assertThat(refusal(() -> overrides.request(wrangler, roll, reason)))
                    .as("[%s]", reason)
                    .isEqualTo("verification.refused.override-reason");
        }
    }

    @Test
    void theCardsOwnCodeIsTyped() {
        UUID request = overrides.request(wrangler, roll, REASON);
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-2")))
                .isEqualTo("verification.refused.other-code");
        assertThat(cardState()).isEqualTo(CardState.HELD);
    }

    @Test
    void aRequestIsApprovedOnce() throws Exception {
        UUID request = overrides.request(wrangler, roll, REASON);
        List<String> outcomes = atOnce(
                () -> {
                    overrides.approve(post, request, "CARD-1");
                    return "approved";
                },
                () -> {
                    overrides.approve(production.as(Role.ADMINISTRATOR), request, "CARD-1");
                    return "approved";
                });
        assertThat(outcomes).containsExactlyInAnyOrder("approved", "verification.refused.cleared-already");
        assertThat(clearances.ofRoll(production.id, roll)).hasSize(1);
    }

    @Test
    void whoeverComesFirstOfApprovalAndWithdrawalTheCardIsClearOnlyIfTheRequestStands() throws Exception {
        UUID request = overrides.request(wrangler, roll, REASON);
        List<String> outcomes = atOnce(
                () -> {
                    overrides.approve(post, request, "CARD-1");
                    return "approved";
                },
                () -> {
                    overrides.withdraw(wrangler, request, "the vault drive is here");
                    return "withdrawn";
                });
        // A withdrawal after the approval takes the clearance back; one before it leaves nothing to approve.
        assertThat(outcomes).contains("withdrawn");
        assertThat(outcomes.get(0)).isIn("approved", "verification.refused.override-withdrawn");
        assertThat(cardState()).isEqualTo(CardState.HELD);
        assertThat(clearances.ofRoll(production.id, roll)).noneMatch(Clearance::stands);
    }

    @Test
    void aCardIsNotErasedOnAWithdrawnOverride() {
        UUID request = overrides.request(wrangler, roll, REASON);
        overrides.approve(post, request, "CARD-1");
        UUID clearance = clearances.ofRoll(production.id, roll).get(0).id();
        overrides.withdraw(production.as(Role.OFFICE), clearance, "the producer says no");
        assertThat(cardState()).isEqualTo(CardState.HELD);
        assertThat(refusal(() -> clearances.recordErasure(wrangler, roll, "CARD-1")))
                .isEqualTo("verification.refused.not-cleared");
        assertThat(refusal(() -> overrides.approve(production.as(Role.ADMINISTRATOR), request, "CARD-1")))
                .isEqualTo("verification.refused.override-withdrawn");
        assertThat(refusal(() -> overrides.withdraw(wrangler, request, "again")))
                .isEqualTo("verification.refused.override-withdrawn");
    }

    @Test
    void whatIsErasedCanNotBeTakenBack() {
        UUID request = overrides.request(wrangler, roll, REASON);
        overrides.approve(post, request, "CARD-1");
        clearances.recordErasure(wrangler, roll, "CARD-1");
        assertThat(refusal(() -> overrides.withdraw(wrangler, request, "too late")))
                .isEqualTo("verification.refused.erased-already");
    }

    @Test
    void whatHoldsTheCardMustBeWhatWasAskedFor() throws IOException {
        UUID request = overrides.request(wrangler, roll, REASON);
        upload("vault.md5", "# vault\n" + ONE_FILE, Subject.COPY, vault);
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-1")))
                .isEqualTo("verification.refused.override-changed");
        assertThat(refusal(() -> overrides.request(wrangler, roll, REASON)))
                .as("and it waits until it is withdrawn or a day old")
                .isEqualTo("verification.refused.override-waits");
        overrides.withdraw(wrangler, request, "the vault drive failed since");
        overrides.approve(post, overrides.request(wrangler, roll, REASON), "CARD-1");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
    }

    @Test
    void aRequestAsOfAnotherPolicyIsNotApproved() {
        UUID request = overrides.request(wrangler, roll, REASON);
        plan.changePolicy(
                production.as(Role.ADMINISTRATOR),
                new ClearingPolicy(MediaKind.CARD, 3, 3, 1, 1, false, null, true, true, 0));
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-1")))
                .isEqualTo("verification.refused.override-changed");
    }

    @Test
    void aRequestIsGoodForOneDay() {
        UUID fresh = oldRequest(Instant.now().minusSeconds(24 * 3600 - 60));
        assertThat(overrides.waits(overrides.get(production.id, fresh))).isTrue();
        UUID old = oldRequest(Instant.now().minusSeconds(24 * 3600 + 1));
        assertThat(refusal(() -> overrides.approve(post, old, "CARD-1")))
                .isEqualTo("verification.refused.override-too-late");
        assertThat(cardState()).isEqualTo(CardState.HELD);
    }

    @Test
    void nothingIsApprovedOnceTheCardIsCopiedAgainOrHoldsAnotherRoll() throws IOException {
        UUID request = overrides.request(wrangler, roll, REASON);
        UUID session = offloads.start(wrangler, roll, reader, null, List.of(new Offloads.Destination(vault, null)));
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-1")))
                .isEqualTo("verification.refused.override-not-held");
        offloads.finish(wrangler, session, 1_000);
        upload("vault-1.md5", "# vault\n" + FILES, Subject.COPY, vault);
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-1")))
                .isEqualTo("verification.refused.override-changed");
        clearances.clear(wrangler, roll, "CARD-1");
        clearances.recordErasure(wrangler, roll, "CARD-1");
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-1")))
                .isEqualTo("verification.refused.not-on-card");
        rolls.pull(wrangler, rolls.load(wrangler, "A002", camera, day, card, format), BigDecimal.TEN);
        assertThat(refusal(() -> overrides.approve(post, request, "CARD-1")))
                .isEqualTo("verification.refused.not-on-card");
        assertThat(cardState()).isEqualTo(CardState.EXPOSED);
    }

    @Test
    void whatIsProvenIsClearedOnProof() throws IOException {
        upload("vault.md5", "# vault\n" + FILES, Subject.COPY, vault);
        assertThat(refusal(() -> overrides.request(wrangler, roll, REASON)))
                .isEqualTo("verification.refused.override-not-needed");
    }

    @Test
    void aCardThatNobodyCopiedIsNotClearedAtAll() {
        UUID blank = production.item("CARD-2", "CARD", production.place("Truck", false), null);
        UUID exposed = rolls.load(wrangler, "A009", camera, day, blank, format);
        assertThat(refusal(() -> overrides.request(wrangler, exposed, REASON)))
                .isEqualTo("verification.refused.override-not-held");
        rolls.pull(wrangler, exposed, BigDecimal.TEN);
        assertThat(refusal(() -> overrides.request(wrangler, exposed, REASON)))
                .isEqualTo("verification.refused.override-not-held");
    }

    @Test
    void thatNoCopyAtAllIsProvenStandsInTheRequest() throws IOException {
        upload("shuttle-again.md5", "# again\n" + ONE_FILE, Subject.COPY, shuttle);
        UUID request = overrides.request(wrangler, roll, REASON);
        assertThat(overrides.get(production.id, request).nothingProven()).isTrue();
    }

    @Test
    void aClearanceWithoutProofIsNotWithdrawnForWantOfProofButALostCopyRaisesTheAlarm() throws IOException {
        overrides.approve(post, overrides.request(wrangler, roll, REASON), "CARD-1");
        custody.move(wrangler, vault, production.place("Truck", false), "", "", 0);
        jobs.run();
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
        upload("recheck.md5", "# re-check\n" + ONE_FILE, Subject.COPY, shuttle);
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
        assertThat(summaries.of(production.id).alarms())
                .extracting(ProofSummary.Alarm::itemCode)
                .containsExactly("SHUTTLE-1");
    }

    @Test
    void noOtherProductionSeesApprovesOrWithdrawsIt() {
        UUID request = overrides.request(wrangler, roll, REASON);
        Membership stranger = fixtures.production().as(Role.ADMINISTRATOR);
        assertThatThrownBy(() -> overrides.get(stranger.productionId(), request))
                .isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> overrides.request(stranger, roll, REASON)).isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> overrides.approve(stranger, request, "CARD-1")).isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> overrides.withdraw(stranger, request, "no")).isInstanceOf(NotFoundException.class);
    }

    @Test
    void nothingOfItIsEverChangedOrDeleted() {
        UUID request = overrides.request(wrangler, roll, REASON);
        overrides.approve(post, request, "CARD-1");
        overrides.withdraw(wrangler, request, "no");
        for (String table : List.of("request", "approval", "withdrawal")) {
            String named = "verification_override_" + table;
            String column = table.equals("request") ? "reason" : "request_id";
            assertThatThrownBy(() -> jdbc.sql("update " + named + " set " + column + " = " + column)
                            .update())
                    .as("update %s", named)
                    .hasMessageContaining("evidence");
            assertThatThrownBy(() -> jdbc.sql("delete from " + named).update())
                    .as("delete from %s", named)
                    .hasMessageContaining("evidence");
        }
    }

    /** A request as if it had been made at another time, by the wrangler, for what holds the card now. */
    private UUID oldRequest(Instant at) {
        UUID id = UUID.randomUUID();
        String[] holds = clearances.proof(production.id, roll).holds().stream()
                .map(ClearingGate.Hold::onRecord)
                .toArray(String[]::new);
        jdbc.sql("""
                        insert into verification_override_request
                            (id, production_id, roll_id, card_id, requested_at, requested_by, reason, holds, holds_in_words, nothing_proven)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, false)
                        """)
                .param(id)
                .param(production.id)
                .param(roll)
                .param(card)
                .param(Timestamp.from(at))
                .param(wrangler.personId())
                .param(REASON)
                .param(holds)
                .param(holds)
                .update();
        return id;
    }

    private List<String> record() {
        return jdbc.sql("select action from audit_act where production_id = ? order by id")
                .param(production.id)
                .query(String.class)
                .list();
    }

    private void offload() {
        UUID session = offloads.start(
                wrangler,
                roll,
                reader,
                null,
                List.of(new Offloads.Destination(shuttle, null), new Offloads.Destination(vault, null)));
        offloads.finish(wrangler, session, 1_000);
    }

    private void upload(String name, String content, Subject subject, @Nullable UUID item) throws IOException {
        documents.store(
                wrangler, name, new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8)), subject, item);
        jobs.run();
    }

    private CardState cardState() {
        return items.get(production.id, card).cardState();
    }

    private static String refusal(ThrowingCallable action) {
        return Assertions.catchThrowableOfType(Refusal.class, action).key();
    }

    private static List<String> atOnce(Callable<String> one, Callable<String> other) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> both = threads.invokeAll(List.of(told(one), told(other)));
            return List.of(both.get(0).get(), both.get(1).get());
        } finally {
            threads.shutdownNow();
        }
    }

    private static Callable<String> told(Callable<String> action) {
        return () -> {
            try {
                return action.call();
            } catch (Refusal e) {
                return e.key();
            }
        };
    }
}
