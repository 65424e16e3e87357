package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.CardState;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.manifest.Verdict;
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

/** Attacks the rules of erasing: only on proof, proof checked in the transaction, evidence never changed. */
@PortalTest
class ClearingTests {
    private static final String FILE_1 = "d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf\n";
    private static final String FILE_2 = "900150983cd24fb0d6963f7d28e17f72  A001/Clips/A001C002.mxf\n";
    private static final String FILE_2_BAD = "900150983cd24fb0d6963f7d28e17f73  A001/Clips/A001C002.mxf\n";

    @Autowired
    Fixtures fixtures;

    @Autowired
    Jobs jobs;

    @Autowired
    Documents documents;

    @Autowired
    Assignments assignments;

    @Autowired
    Verdicts verdicts;

    @Autowired
    Clearances clearances;

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
    private UUID card;
    private UUID reader;
    private UUID shuttle;
    private UUID vault;
    private UUID roll;

    @BeforeEach
    void copyARollToTwoDrives() {
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        UUID set = production.place("Set", false);
        UUID unit = production.unit("Main");
        card = production.item("CARD-1", "CARD", set, null);
        reader = production.item("READER-1", "READER", set, null);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, null);
        vault = production.item("VAULT-1", "DRIVE", set, null);
        production.policy(2);
        roll = rolls.load(
                wrangler,
                "A001",
                production.camera(unit, "A"),
                production.day(unit, 1, "SHOOTING"),
                card,
                production.format("F"));
        rolls.pull(wrangler, roll, new BigDecimal("10"));
        offload();
    }

    @Test
    void aCardIsClearedOnceEveryCopyThatThePolicyAsksForIsProvenAndIsBlankAfterItsErasure() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        upload("shuttle.md5", "# shuttle\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        upload("vault.md5", "# vault\n" + FILE_1 + FILE_2, Subject.COPY, vault);

        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.PROVEN);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.PROVEN);
        clearances.clear(wrangler, roll, "card-1");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
        clearances.recordErasure(wrangler, roll, "CARD-1");
        assertThat(cardState()).isEqualTo(CardState.BLANK);
    }

    @Test
    void aCopyWithOtherBytesHoldsTheCardUntilItIsMadeAgainAndProven() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        upload("shuttle.md5", "# shuttle\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        upload("vault.md5", "# vault\n" + FILE_1 + FILE_2_BAD, Subject.COPY, vault);

        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.FAILED);
        assertThat(refusal(() -> clearances.clear(wrangler, roll, "CARD-1"))).isEqualTo("verification.refused.held");

        offload();
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.UNKNOWN);
        upload("vault-again.md5", "# vault again\n" + FILE_1 + FILE_2, Subject.COPY, vault);
        upload("shuttle-again.md5", "# shuttle again\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        clearances.clear(wrangler, roll, "CARD-1");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
    }

    @Test
    void nothingIsProvenWithoutAManifestOfTheCardItself() throws IOException {
        upload("shuttle.md5", "# shuttle\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        upload("vault.md5", "# vault\n" + FILE_1 + FILE_2, Subject.COPY, vault);

        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.CONSISTENT);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.CONSISTENT);
        assertThat(refusal(() -> clearances.clear(wrangler, roll, "CARD-1"))).isEqualTo("verification.refused.held");

        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.PROVEN);
    }

    @Test
    void aCardsManifestsOfSeveralAlgorithmsAreOneReference() throws IOException {
        upload("card.md5", FILE_1, Subject.CARD, null);
        upload("card.sha1", "a9993e364706816aba3e25717850c26c9cd0d89d  A001/Clips/A001C001.mxf\n", Subject.CARD, null);
        upload(
                "shuttle.sha1",
                "a9993e364706816aba3e25717850c26c9cd0d89d *A001/Clips/A001C001.mxf\n",
                Subject.COPY,
                shuttle);
        upload("vault.md5", "# vault\n" + FILE_1, Subject.COPY, vault);
        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.PROVEN);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.PROVEN);
    }

    @Test
    void aGapInTheClipNumbersIsToldBesideTheVerdictAndDoesNotLowerIt() throws IOException {
        String gap = FILE_1 + FILE_2.replace("C002", "C003");
        upload("card.md5", gap, Subject.CARD, null);
        upload("vault.md5", "# vault\n" + gap, Subject.COPY, vault);
        CopyVerdict judged = verdicts.history(production.id, roll).get(0);
        assertThat(judged.verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(judged.reasons()).containsExactly("CLIP_GAP", "EMPTY_FILE");
    }

    @Test
    void cardManifestsThatContradictEachOtherProveNothing() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        upload("card-again.md5", FILE_1 + FILE_2_BAD, Subject.CARD, null);
        upload("vault.md5", "# vault\n" + FILE_1 + FILE_2, Subject.COPY, vault);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.FAILED);
    }

    @Test
    void theSameDocumentSentTwiceIsKeptOnceAndChangesNothing() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        upload("shuttle.md5", "# shuttle\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        int before = verdicts.history(production.id, roll).size();

        assertThatThrownBy(() -> upload("other-name.md5", "# shuttle\n" + FILE_1 + FILE_2, Subject.COPY, vault))
                .isInstanceOf(Documents.AlreadyHere.class);
        jobs.run();
        assertThat(documents.count(production.id)).isEqualTo(2);
        assertThat(verdicts.history(production.id, roll)).hasSize(before);
        assertThat(jdbc.sql(
                                "select count(*) from verification_document_chunk c where not exists (select 1 from verification_document d where d.id = c.document_id)")
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @Test
    void oneDocumentForTwoCopiesProvesNeither() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        UUID document = upload("both.md5", "# both\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        Assignment first = assignments.ofDocument(production.id, document).get(0);
        assignments.assign(
                wrangler, first.partId(), new Assignments.Statement(Subject.COPY, roll, vault, null, ""), first.id());
        jobs.run();
        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.CONSISTENT);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.CONSISTENT);
    }

    @Test
    void aCorrectedAssignmentTakesTheVerdictBackAndStaysOnRecord() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        UUID document = upload("drive.md5", "# drive\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        Assignment wrong = assignments.ofDocument(production.id, document).get(0);
        assignments.assign(
                wrangler,
                wrong.partId(),
                new Assignments.Statement(Subject.COPY, roll, vault, wrong.id(), "wrong drive"),
                wrong.id());
        jobs.run();
        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.UNKNOWN);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.PROVEN);
        assertThat(assignments.ofDocument(production.id, document))
                .extracting(Assignment::replaced)
                .containsExactly(true, false);
        assertThat(refusal(() -> assignments.assign(
                        wrangler,
                        wrong.partId(),
                        new Assignments.Statement(Subject.CARD, roll, null, wrong.id(), ""),
                        wrong.id())))
                .isEqualTo("verification.refused.assigned-meanwhile");
    }

    @Test
    void aReCheckThatFailsWithdrawsAClearanceThatStands() throws IOException {
        proveAndClear();
        upload("recheck.md5", "# re-check\n" + FILE_1, Subject.COPY, vault);
        assertThat(verdictOn("VAULT-1")).isEqualTo(Verdict.INCOMPLETE);
        assertThat(cardState()).isEqualTo(CardState.HELD);
        assertThat(clearances.ofRoll(production.id, roll).get(0).withdrawnAt()).isNotNull();
        assertThat(refusal(() -> clearances.recordErasure(wrangler, roll, "CARD-1")))
                .isEqualTo("verification.refused.not-cleared");
    }

    @Test
    void whatWasSentOfACopyCountsFromThenOnWhetherOrNotAJobHasComeToIt() throws IOException {
        proveAndClear();
        documents.store(wrangler, "recheck.md5", bytes("# re-check\n" + FILE_1), Subject.COPY, vault);
        assertThat(refusal(() -> clearances.recordErasure(wrangler, roll, "CARD-1")))
                .isEqualTo("verification.refused.unjudged");
        jobs.run();
        assertThat(cardState()).isEqualTo(CardState.HELD);
    }

    @Test
    void whatWasSentOfAnotherMediumDelaysNothing() throws IOException {
        prove();
        UUID other = production.item(
                "DRIVE-9", "DRIVE", items.get(production.id, vault).placeId(), null);
        documents.store(wrangler, "other.md5", bytes(FILE_1.replace("A001", "B777")), Subject.COPY, other);
        clearances.clear(wrangler, roll, "CARD-1");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
    }

    @Test
    void aCorrectionThatIsNotJudgedYetDelaysTheClearing() throws IOException {
        prove();
        UUID document = documents.newest(production.id, 0, 1).get(0).id();
        Assignment said = assignments.ofDocument(production.id, document).get(0);
        assignments.assign(
                wrangler,
                said.partId(),
                new Assignments.Statement(Subject.NOT_A_ROLL, null, null, said.id(), "of a rehearsal"),
                said.id());
        assertThat(refusal(() -> clearances.clear(wrangler, roll, "CARD-1")))
                .isEqualTo("verification.refused.unjudged");
        jobs.run();
        assertThat(refusal(() -> clearances.clear(wrangler, roll, "CARD-1"))).isEqualTo("verification.refused.held");
    }

    @Test
    void aReCheckThatFailsAfterTheErasureRaisesAnAlarmOnce() throws IOException {
        proveAndClear();
        clearances.recordErasure(wrangler, roll, "CARD-1");
        upload("recheck.md5", "# re-check\n" + FILE_1, Subject.COPY, vault);
        upload("shuttle-2.md5", "# re-check of the other\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        assertThat(jdbc.sql("select card_erased from verification_alarm where production_id = ?")
                        .param(production.id)
                        .query(Boolean.class)
                        .list())
                .containsExactly(true);
        assertThat(cardState()).isEqualTo(CardState.BLANK);
    }

    @Test
    void aQuarantinedDriveCountsForNothingWhenTheErasureIsRecorded() throws IOException {
        proveAndClear();
        jdbc.sql("update inventory_item set condition = 'QUARANTINED' where id = ?")
                .param(vault)
                .update();
        assertThat(refusal(() -> clearances.recordErasure(wrangler, roll, "CARD-1")))
                .isEqualTo("verification.refused.held");
        assertThat(cardState()).isEqualTo(CardState.CLEAR_TO_ERASE);
    }

    @Test
    void aClearanceIsWithdrawnWhenADriveItReliedOnIsQuarantined() throws IOException {
        proveAndClear();
        custody.quarantine(wrangler, vault, "it fell");
        jobs.run();
        assertThat(cardState()).isEqualTo(CardState.HELD);
        assertThat(clearances.ofRoll(production.id, roll).get(0).withdrawnAt()).isNotNull();
    }

    @Test
    void aClearanceIsWithdrawnWhenThePolicyAsksForMore() throws IOException {
        proveAndClear();
        plan.changePolicy(
                production.as(Role.ADMINISTRATOR),
                new ClearingPolicy(MediaKind.CARD, 3, 3, 1, 1, false, null, true, true, 0));
        jobs.run();
        assertThat(cardState()).isEqualTo(CardState.HELD);
    }

    @Test
    void theCardsOwnCodeMustBeTyped() throws IOException {
        prove();
        assertThat(refusal(() -> clearances.clear(wrangler, roll, "CARD-2")))
                .isEqualTo("verification.refused.other-code");
        assertThat(cardState()).isEqualTo(CardState.HELD);
    }

    @Test
    void twoWranglersWhoClearTheSameCardAtOnceGetOneClearance() throws Exception {
        prove();
        List<String> outcomes = atOnce(() -> {
            clearances.clear(wrangler, roll, "CARD-1");
            return "cleared";
        });
        assertThat(outcomes).containsExactlyInAnyOrder("cleared", "verification.refused.cleared-already");
        assertThat(clearances.ofRoll(production.id, roll)).hasSize(1);
    }

    @Test
    void twoUploadsOfTheSameDocumentAtOnceGiveOneDocument() throws Exception {
        List<String> outcomes = atOnce(() -> {
            documents.store(wrangler, "card.md5", bytes(FILE_1 + FILE_2), Subject.CARD, null);
            return "stored";
        });
        assertThat(outcomes).containsExactlyInAnyOrder("stored", "already here");
        assertThat(documents.count(production.id)).isEqualTo(1);
    }

    @Test
    void noOtherProductionSeesOrClearsTheRoll() throws IOException {
        prove();
        TestProduction other = fixtures.production();
        assertThatThrownBy(() -> clearances.clear(other.as(Role.ADMINISTRATOR), roll, "CARD-1"))
                .isInstanceOf(NotFoundException.class);
        assertThat(verdicts.ofRoll(other.id, roll)).isEmpty();
        assertThatThrownBy(() -> documents.store(other.as(Role.WRANGLER), "x.md5", bytes(FILE_1), Subject.COPY, vault))
                .isInstanceOf(NotFoundException.class);
    }

    @Test
    void evidenceCanBeNeitherChangedNorDeletedEvenBySql() throws IOException {
        proveAndClear();
        clearances.recordErasure(wrangler, roll, "CARD-1");
        for (String table : List.of(
                "verification_document",
                "verification_document_chunk",
                "verification_part",
                "verification_assignment",
                "verification_verdict",
                "verification_clearance",
                "verification_erasure",
                "inventory_custody",
                "audit_act")) {
            String column = jdbc.sql(
                            "select column_name from information_schema.columns where table_name = ? and is_generated = 'NEVER' and is_identity = 'NO' limit 1")
                    .param(table)
                    .query(String.class)
                    .single();
            assertThatThrownBy(() -> jdbc.sql("update " + table + " set " + column + " = " + column)
                            .update())
                    .as("update %s", table)
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("evidence");
            assertThatThrownBy(() -> jdbc.sql("delete from " + table).update())
                    .as("delete from %s", table)
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("evidence");
        }
    }

    private void prove() throws IOException {
        upload("card.md5", FILE_1 + FILE_2, Subject.CARD, null);
        upload("shuttle.md5", "# shuttle\n" + FILE_1 + FILE_2, Subject.COPY, shuttle);
        upload("vault.md5", "# vault\n" + FILE_1 + FILE_2, Subject.COPY, vault);
    }

    private void proveAndClear() throws IOException {
        prove();
        clearances.clear(wrangler, roll, "CARD-1");
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

    private UUID upload(String name, String content, Subject subject, @Nullable UUID item) throws IOException {
        UUID document =
                documents.store(wrangler, name, bytes(content), subject, item).documentId();
        jobs.run();
        return document;
    }

    private static ByteArrayInputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private Verdict verdictOn(String itemCode) {
        return clearances.proof(production.id, roll).states().stream()
                .filter(copy -> copy.itemCode().equals(itemCode))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    private CardState cardState() {
        return items.get(production.id, card).cardState();
    }

    private static String refusal(org.assertj.core.api.ThrowableAssert.ThrowingCallable action) {
        return org.assertj.core.api.Assertions.catchThrowableOfType(Refusal.class, action)
                .key();
    }

    private static List<String> atOnce(Callable<String> action) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Callable<String> told = () -> {
                try {
                    return action.call();
                } catch (Refusal e) {
                    return e.key();
                } catch (Documents.AlreadyHere e) {
                    return "already here";
                }
            };
            List<Future<String>> both = threads.invokeAll(List.of(told, told));
            return List.of(both.get(0).get(), both.get(1).get());
        } finally {
            threads.shutdownNow();
        }
    }
}
