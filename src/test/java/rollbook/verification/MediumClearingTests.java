package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
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
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.Custody;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
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

/** Attacks the erasing of drives, arrays and tapes: only what is proven elsewhere, and gone is gone. */
@PortalTest
class MediumClearingTests {
    private static final String FILES = """
            d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf
            900150983cd24fb0d6963f7d28e17f72  A001/Clips/A001C002.mxf
            """;
    private static final String ONE_FILE = "d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf\n";

    @Autowired
    Fixtures fixtures;

    @Autowired
    Jobs jobs;

    @Autowired
    Documents documents;

    @Autowired
    MediumClearances media;

    @Autowired
    Clearances clearances;

    @Autowired
    ProofSummaries summaries;

    @Autowired
    Rolls rolls;

    @Autowired
    Copies copies;

    @Autowired
    Offloads offloads;

    @Autowired
    Custody custody;

    @Autowired
    CopyPlan plan;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership wrangler;
    private UUID set;
    private UUID camera;
    private UUID day;
    private UUID format;
    private UUID card;
    private UUID reader;
    private UUID shuttle;
    private UUID vault;
    private UUID tape;
    private UUID roll;

    @BeforeEach
    void copyARollToThreeMediaAndProveThemAll() throws IOException {
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        card = production.item("CARD-1", "CARD", set, null);
        reader = production.item("READER-1", "READER", set, null);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, null);
        vault = production.item("VAULT-1", "DRIVE", set, null);
        tape = production.item("TAPE-1", "TAPE", set, null);
        roll = rolls.load(wrangler, "A001", camera, day, card, format);
        rolls.pull(wrangler, roll, new BigDecimal("10"));
        offload(roll, shuttle, vault, tape);
        upload("card.md5", FILES, Subject.CARD, null);
        upload("shuttle.md5", "# shuttle\n" + FILES, Subject.COPY, shuttle);
        upload("vault.md5", "# vault\n" + FILES, Subject.COPY, vault);
        upload("tape.md5", "# tape\n" + FILES, Subject.COPY, tape);
    }

    @Test
    void aDriveWhoseRollsAreProvenElsewhereIsClearedAndItsCopiesAreGoneAfterTheErasure() {
        media.clear(wrangler, shuttle, "shuttle-1");
        assertThat(media.cleared(production.id)).containsExactly(shuttle);
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");

        assertThat(media.cleared(production.id)).isEmpty();
        assertThat(clearances.proof(production.id, roll).states())
                .extracting(ClearingGate.CopyState::itemCode)
                .containsExactlyInAnyOrder("VAULT-1", "TAPE-1");
        assertThat(copies.onItem(production.id, shuttle)).allMatch(copy -> copy.isErased());
        assertThat(copies.usedBytes(production.id))
                .extracting(Copies.Used::itemId)
                .doesNotContain(shuttle);
        assertThat(jdbc.sql(
                                "select action from audit_act where production_id = ? and action like 'medium.%' order by id")
                        .param(production.id)
                        .query(String.class)
                        .list())
                .containsExactly("medium.cleared", "medium.erased");
    }

    @Test
    void theCopyOnTheMediumItselfDoesNotCount() {
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        assertThat(refusal(() -> media.clear(wrangler, vault, "VAULT-1")))
                .as("only the tape is left besides")
                .isEqualTo("verification.refused.medium-held");
    }

    @Test
    void everyRollOnTheMediumMustBeProvenElsewhere() {
        UUID another = load("A002", "CARD-2");
        offload(another, shuttle, vault);
        assertThat(refusal(() -> media.clear(wrangler, shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.medium-held");
        assertThat(media.ofItem(production.id, shuttle)).isEmpty();
    }

    @Test
    void twoMediaThatLeanOnEachOtherAreNotBothErased() throws Exception {
        List<String> outcomes = atOnce(() -> erase(shuttle, "SHUTTLE-1"), () -> erase(vault, "VAULT-1"));
        // The second finds too little left to be cleared, or its clearance already taken back.
        assertThat(outcomes).containsOnlyOnce("erased");
        assertThat(outcomes).containsAnyOf("verification.refused.medium-held", "verification.refused.not-cleared");
        assertThat(clearances.proof(production.id, roll).counting()).hasSize(2);
    }

    @Test
    void whatIsWrittenToAClearedMediumTakesTheClearanceBack() {
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        offload(load("A002", "CARD-2"), shuttle);
        assertThat(media.ofItem(production.id, shuttle))
                .singleElement()
                .satisfies(clearance -> assertThat(clearance.withdrawnReason()).isEqualTo("WRITTEN_TO"));
        assertThat(refusal(() -> media.recordErasure(wrangler, shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.not-cleared");
    }

    @Test
    void aReCheckThatFailsElsewhereTakesTheClearanceBack() throws IOException {
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        upload("vault-2.md5", "# re-check\n" + ONE_FILE, Subject.COPY, vault);
        assertThat(media.cleared(production.id)).isEmpty();
        assertThat(refusal(() -> media.recordErasure(wrangler, shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.not-cleared");
    }

    @Test
    void aMediumInQuarantineOrAStricterPolicyTakesTheClearanceBack() {
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        custody.quarantine(wrangler, vault, "it fell");
        assertThat(refusal(() -> media.recordErasure(wrangler, shuttle, "SHUTTLE-1")))
                .as("even before anybody looked again")
                .isEqualTo("verification.refused.medium-held");
        jobs.run();
        assertThat(media.cleared(production.id)).isEmpty();
        custody.release(wrangler, vault, "it is fine");

        media.clear(wrangler, shuttle, "SHUTTLE-1");
        plan.changePolicy(
                production.as(Role.ADMINISTRATOR),
                new ClearingPolicy(MediaKind.DRIVE, 3, 3, 1, 1, false, null, true, true, 0));
        jobs.run();
        assertThat(media.cleared(production.id)).isEmpty();
    }

    @Test
    void thePolicyOfItsOwnKindDecides() {
        plan.changePolicy(
                production.as(Role.ADMINISTRATOR),
                new ClearingPolicy(MediaKind.TAPE, 1, 1, 1, 1, false, null, true, true, 0));
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        media.clear(wrangler, tape, "TAPE-1");
        assertThat(media.cleared(production.id)).containsExactly(tape);
    }

    @Test
    void aLateDocumentDoesNotBringAnErasedCopyBackButWritingItAgainDoes() throws IOException {
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        upload("late.md5", "# made before, sent late\n" + FILES, Subject.COPY, shuttle);
        assertThat(clearances.proof(production.id, roll).states())
                .extracting(ClearingGate.CopyState::itemCode)
                .doesNotContain("SHUTTLE-1");

        offload(roll, shuttle);
        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.UNKNOWN);
        upload("new.md5", "# written anew\n" + FILES, Subject.COPY, shuttle);
        assertThat(verdictOn("SHUTTLE-1")).isEqualTo(Verdict.PROVEN);
    }

    @Test
    void erasingADriveInOrderRaisesNoAlarmAboutTheCardsThatLeanedOnIt() throws IOException {
        clearances.clear(wrangler, roll, "CARD-1");
        clearances.recordErasure(wrangler, roll, "CARD-1");
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        assertThat(summaries.of(production.id).alarms()).isEmpty();

        upload("vault-2.md5", "# re-check\n" + ONE_FILE, Subject.COPY, vault);
        assertThat(summaries.of(production.id).alarms())
                .as("but a copy that card and drive were erased on and that fails does")
                .extracting(ProofSummary.Alarm::itemCode)
                .contains("VAULT-1");
    }

    @Test
    void erasingADriveRaisesTheAlarmWhereTheCardsPolicyIsNoLongerMetWithoutIt() {
        plan.changePolicy(
                production.as(Role.ADMINISTRATOR),
                new ClearingPolicy(MediaKind.CARD, 3, 3, 1, 1, false, null, true, true, 0));
        clearances.clear(wrangler, roll, "CARD-1");
        clearances.recordErasure(wrangler, roll, "CARD-1");
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        assertThat(summaries.of(production.id).alarms())
                .extracting(ProofSummary.Alarm::itemCode)
                .containsExactly("SHUTTLE-1");
    }

    @Test
    void aMediumWhoseCopiesAreErasedMayLeave() {
        assertThat(refusal(() -> {
                    custody.quarantine(wrangler, tape, "old");
                    custody.quarantine(wrangler, vault, "old");
                    custody.retire(production.as(Role.OFFICE), shuttle, "old");
                }))
                .isEqualTo("inventory.refused.needed");
        custody.release(wrangler, tape, "fine");
        custody.release(wrangler, vault, "fine");
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        custody.quarantine(wrangler, tape, "old");
        custody.quarantine(wrangler, vault, "old");
        custody.retire(production.as(Role.OFFICE), shuttle, "old");
    }

    @Test
    void nothingIsClearedTwiceWithoutItsCodeOrWithoutAnythingOnIt() {
        assertThat(refusal(() -> media.clear(wrangler, shuttle, "SHUTTLE-2")))
                .isEqualTo("verification.refused.other-code");
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        assertThat(refusal(() -> media.clear(wrangler, shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.cleared-already");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        assertThat(refusal(() -> media.clear(wrangler, shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.medium-empty");
        assertThatThrownBy(() -> media.clear(wrangler, card, "CARD-1")).isInstanceOf(NotFoundException.class);
        Membership stranger = fixtures.production().as(Role.ADMINISTRATOR);
        assertThatThrownBy(() -> media.clear(stranger, vault, "VAULT-1")).isInstanceOf(NotFoundException.class);
    }

    @Test
    void nothingOfItIsEverChangedOrDeleted() {
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        media.clear(production.as(Role.ADMINISTRATOR), shuttleWithRoll(), "SHUTTLE-2");
        offload(load("A009", "CARD-9"), shuttleWithRoll);
        for (String table : List.of("clearance", "erasure", "withdrawal")) {
            String named = "verification_medium_" + table;
            String column = table.equals("clearance") ? "policy" : "clearance_id";
            assertThatThrownBy(() -> jdbc.sql("update " + named + " set " + column + " = " + column)
                            .update())
                    .as("update %s", named)
                    .hasMessageContaining("evidence");
            assertThatThrownBy(() -> jdbc.sql("delete from " + named).update())
                    .as("delete from %s", named)
                    .hasMessageContaining("evidence");
        }
    }

    private UUID shuttleWithRoll;

    /** Another drive with a copy of the roll, which is proven on vault and tape. */
    private UUID shuttleWithRoll() {
        shuttleWithRoll = production.item("SHUTTLE-2", "DRIVE", set, null);
        offload(roll, shuttleWithRoll);
        return shuttleWithRoll;
    }

    private String erase(UUID item, String code) {
        media.clear(wrangler, item, code);
        media.recordErasure(wrangler, item, code);
        return "erased";
    }

    private UUID load(String code, String cardCode) {
        UUID other = production.item(cardCode, "CARD", set, null);
        UUID loaded = rolls.load(wrangler, code, camera, day, other, format);
        rolls.pull(wrangler, loaded, BigDecimal.TEN);
        return loaded;
    }

    private void offload(UUID of, UUID... to) {
        List<Offloads.Destination> destinations = Arrays.stream(to)
                .map(item -> new Offloads.Destination(item, null))
                .toList();
        offloads.finish(wrangler, offloads.start(wrangler, of, reader, null, destinations), 1_000);
    }

    private void upload(String name, String content, Subject subject, @Nullable UUID item) throws IOException {
        documents.store(
                wrangler, name, new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8)), subject, item);
        jobs.run();
    }

    private Verdict verdictOn(String itemCode) {
        return clearances.proof(production.id, roll).states().stream()
                .filter(copy -> copy.itemCode().equals(itemCode))
                .findFirst()
                .orElseThrow()
                .verdict();
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
