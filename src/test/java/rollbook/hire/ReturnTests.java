package rollbook.hire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static rollbook.hire.HireScene.TODAY;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.offload.Copies;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.supplier.Suppliers;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.verification.ManifestIntake;
import rollbook.verification.MediumClearances;
import rollbook.web.Display;
import rollbook.web.Refusal;

/** Attacks the way back of hired items: nothing leaves with the only proven copy of anything. */
@PortalTest
class ReturnTests {
    private static final String FILES = """
            d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf
            900150983cd24fb0d6963f7d28e17f72  A001/Clips/A001C002.mxf
            """;
    private static final String OTHER_BYTES = FILES.replace("900150983cd2", "000000000000");

    @Autowired
    Fixtures fixtures;

    @Autowired
    Suppliers suppliers;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Copies copies;

    @Autowired
    ManifestIntake intake;

    @Autowired
    MediumClearances media;

    @Autowired
    Custody custody;

    @Autowired
    MediaItems items;

    @Autowired
    Hires hires;

    @Autowired
    AgreementBook book;

    @Autowired
    Jobs jobs;

    @Autowired
    Display display;

    @Autowired
    TransactionTemplate transaction;

    private TestProduction production;
    private Membership wrangler;
    private Membership office;
    private UUID reader;
    private UUID shuttle;
    private UUID spare;
    private UUID vault;
    private UUID roll;

    /** Two hired drives and one that is the production's own. */
    @BeforeEach
    void copyARollToThreeDrives() throws IOException {
        HireScene scene = new HireScene(fixtures, suppliers, jdbc);
        production = scene.production;
        office = scene.office;
        wrangler = production.as(Role.WRANGLER);
        reader = scene.hired("READER-1", "READER", TODAY.plusDays(2));
        shuttle = scene.hired("SHUTTLE-1", "DRIVE", TODAY.plusDays(2));
        spare = scene.hired("SHUTTLE-2", "DRIVE", TODAY.plusDays(2));
        vault = production.item("VAULT-1", "DRIVE", scene.set, null);
        UUID unit = production.unit("Main");
        roll = rolls.load(
                wrangler,
                "A001",
                production.camera(unit, "A"),
                production.day(unit, 1, "SHOOTING"),
                production.item("CARD-1", "CARD", scene.set, null),
                production.format("F"));
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        offload(shuttle, vault);
        intake.storeForCards(wrangler, "card.md5", bytes(FILES));
        prove(shuttle, "shuttle");
    }

    @Test
    void aDriveWithTheOnlyProvenCopyStaysWithTheReasonAndTheWayOut() throws Exception {
        MvcTestResult answer = send("SHUTTLE-1");
        assertThat(answer).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = Jsoup.parse(answer.getResponse().getContentAsString());
        assertThat(page.select("#codes-error").text())
                .contains(
                        "SHUTTLE-1 can’t leave.",
                        "A001 has no proven copy on another medium that is in good condition.",
                        "Of the copy on VAULT-1 nothing is known.",
                        "Make and prove another copy first.");
        assertThat(page.select("main table").first().text()).contains("SHUTTLE-1", "A001");
        assertThat(page.select("main a").eachAttr("href"))
                .contains(
                        production.path("rolls/" + roll),
                        production.path("media/" + shuttle + "/clear"),
                        production.path("hire/new?item=" + shuttle));
        assertThat(page.select(".caution").text()).contains("A001: no proven copy elsewhere");
        assertThat(page.select("#codes").text()).as("what was typed is kept").isEqualTo("SHUTTLE-1");
        assertHere(shuttle);
    }

    @Test
    void itGoesBackOnceAnotherCopyIsProvenAndWhatItCameToIsKept() throws Exception {
        prove(vault, "vault");
        assertThat(send("shuttle-1")).hasStatus(HttpStatus.FOUND);
        assertThat(items.get(production.id, shuttle).condition()).isEqualTo(Condition.RETURNED);
        assertThat(items.get(production.id, shuttle).holder()).isEqualTo("hire house");
        assertThat(hires.get(production.id, office.zone(), shuttle).end().totalMinorUnits())
                .isEqualTo(4_500);
    }

    @Test
    void itGoesBackOnceItsCopiesAreErased() throws Exception {
        prove(vault, "vault");
        offload(spare);
        prove(spare, "spare");
        media.clear(wrangler, shuttle, "SHUTTLE-1");
        media.recordErasure(wrangler, shuttle, "SHUTTLE-1");
        custody.quarantine(wrangler, vault, "noise");
        assertThat(send("SHUTTLE-2")).as("the last that is proven").hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(send("SHUTTLE-1")).hasStatus(HttpStatus.FOUND);
    }

    @Test
    void ofSeveralAllGoBackOrNone() throws Exception {
        MvcTestResult answer = send("READER-1 SHUTTLE-1");
        assertThat(answer).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(answer).bodyText().contains("SHUTTLE-1 can’t leave.", "None of the items went back.");
        assertHere(reader);
        assertThat(hires.get(production.id, office.zone(), reader).end()).isNull();
        assertThat(send("READER-1")).hasStatus(HttpStatus.FOUND);
    }

    @Test
    void twoDrivesThatProveEachOtherDoNotGoBackTogether() throws Exception {
        offload(spare);
        prove(spare, "spare");
        assertThat(send("SHUTTLE-1 to SHUTTLE-2")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertHere(shuttle);
        assertHere(spare);
        assertThat(send("SHUTTLE-1")).as("one of them may").hasStatus(HttpStatus.FOUND);
        assertThat(send("SHUTTLE-2")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void aReCheckThatFailsKeepsItFromTheMomentItWasSent() throws Exception {
        prove(vault, "vault");
        intake.storeForCopies(wrangler, "vault-2.md5", bytes("# re-check\n" + OTHER_BYTES), vault);
        MvcTestResult answer = send("SHUTTLE-1");
        assertThat(answer).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(answer).bodyText().contains("Not everything has been judged yet");
        jobs.run();
        assertThat(send("SHUTTLE-1")).bodyText().contains("On VAULT-1 files differ.");
        assertHere(shuttle);
    }

    @Test
    void whatIsNotRelatedToItDoesNotWaitForTheJudging() throws Exception {
        intake.storeForCopies(wrangler, "vault.md5", bytes("# vault\n" + FILES), vault);
        assertThat(send("READER-1")).hasStatus(HttpStatus.FOUND);
        assertThat(send("SHUTTLE-2")).as("nothing is on it").hasStatus(HttpStatus.FOUND);
    }

    /** The judging holds the roll's lock; who gives the drive back waits for it and must see what it found. */
    @Test
    void aReturnThatMeetsAFailingReCheckWaitsForItsVerdict() throws Exception {
        prove(vault, "vault");
        CountDownLatch judging = new CountDownLatch(1);
        ExecutorService people = Executors.newSingleThreadExecutor();
        try {
            Future<String> answer = transaction.execute(status -> {
                rolls.lock(production.id, roll);
                Future<String> returning = people.submit(() -> {
                    judging.countDown();
                    return giveBack(shuttle);
                });
                awaitWaiter(judging, returning);
                failed(vault);
                return returning;
            });
            assertThat(answer.get()).isEqualTo("inventory.refused.needed");
        } finally {
            people.shutdownNow();
        }
        assertHere(shuttle);
    }

    /** Until another session waits for a lock, or the other one is through, which then fails the test. */
    private void awaitWaiter(CountDownLatch begun, Future<String> returning) {
        try {
            begun.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        while (!returning.isDone() && jdbc.sql("""
                                select count(*) from pg_stat_activity
                                where wait_event_type = 'Lock' and pg_backend_pid() = any (pg_blocking_pids(pid))
                                """).query(Integer.class).single() == 0) {
            Thread.onSpinWait();
        }
    }

    private void failed(UUID item) {
        UUID copy = copies.onItem(production.id, item).get(0).id();
        jdbc.sql("""
                        insert into verification_verdict (production_id, copy_id, roll_id, verdict, reasons, same, different,
                            missing, extra, moved, size_only, name_only, listed_twice, judged_at)
                        values (?, ?, ?, 'FAILED', '{}', 1, 1, 0, 0, 0, 0, 0, 0, now())
                        """).params(production.id, copy, roll).update();
    }

    /** Clearing locks the rolls and then the medium, as the return does: neither ends the other. */
    @Test
    void aReturnAndAClearingOfTheSameDriveAtOnceBothGetAnAnswer() throws Exception {
        prove(vault, "vault");
        offload(spare);
        prove(spare, "spare");
        UUID another = production.item(
                "VAULT-2", "DRIVE", items.get(production.id, vault).placeId(), null);
        offload(another);
        prove(another, "another");
        for (UUID drive : List.of(shuttle, spare)) {
            List<String> outcomes = AgreementTests.atOnce(() -> giveBack(drive), () -> {
                media.clear(wrangler, drive, items.get(production.id, drive).code());
                return "cleared";
            });
            assertThat(outcomes.get(0)).isEqualTo("returned");
            assertThat(outcomes.get(1)).isIn("cleared", "verification.refused.medium-away");
            // Who leaned on a clearance is looked at again, and nothing leaves while that waits.
            jobs.run();
        }
    }

    @Test
    void ofTwoDrivesThatProveEachOtherOneGoesBackAtMostEvenAtOnce() throws Exception {
        offload(spare);
        prove(spare, "spare");
        List<String> outcomes = AgreementTests.atOnce(() -> giveBack(shuttle), () -> giveBack(spare));
        assertThat(outcomes).containsExactlyInAnyOrder("returned", "inventory.refused.needed");
    }

    @Test
    void whatAnOffloadRunsThroughAndACardWithARollStay() throws Exception {
        UUID card = production.item(
                "CARD-2", "CARD", items.get(production.id, vault).placeId(), null);
        jdbc.sql("update inventory_item set ownership = 'HIRED', card_state = 'EXPOSED' where id = ?")
                .param(card)
                .update();
        assertThat(send("CARD-2")).bodyText().contains("it may hold the only original of a roll");
        prove(vault, "vault");
        offloads.start(wrangler, roll, reader, null, List.of(new Offloads.Destination(spare, null)));
        assertThat(send("READER-1")).bodyText().contains("An offload of roll A001 runs through it.");
        assertThat(send("SHUTTLE-2")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void anEncodedCopyWithoutARoundTripIsNoOther() throws Exception {
        prove(vault, "vault");
        jdbc.sql("update offload_copy set rendition = 'ENCODED' where item_id = ?")
                .param(vault)
                .update();
        Refusal refused = catchThrowableOfType(Refusal.class, () -> custody.giveBack(office, shuttle, ""));
        assertThat(display.text(refused)).contains("no round trip shows that the encoding lost nothing");
    }

    @Test
    void whatCannotGoBackIsSaidBesideTheField() throws Exception {
        assertThat(error(send(""), "codes")).isNotEmpty();
        assertThat(error(send("VAULT-1"), "codes")).contains("VAULT-1 is none of the items");
        assertThat(error(send("NOPE-1, READER-1"), "codes")).contains("NOPE-1");
        assertThat(error(send("READER-1", TODAY.plusDays(1).toString()), "returnedOn"))
                .contains("still to come");
        assertThat(error(send("READER-1", TODAY.minusDays(1).toString()), "returnedOn"))
                .contains("The hire of READER-1 starts on");
        assertThat(error(send("READER-1", ""), "returnedOn")).isNotEmpty();
        assertThat(error(send("READER-1", "tomorrow"), "returnedOn")).isNotEmpty();
        assertHere(reader);
        send("READER-1");
        assertThat(error(send("READER-1"), "codes")).as("it is back already").contains("READER-1");
        assertThat(mvc.post()
                        .uri(production.path("hire/return"))
                        .param("codes", "SHUTTLE-2")
                        .param("returnedOn", TODAY.toString())
                        .with(production.signedInAs(Role.WRANGLER)))
                .hasStatus(HttpStatus.FORBIDDEN);
    }

    private String giveBack(UUID item) {
        try {
            custody.giveBack(office, item, "");
            return "returned";
        } catch (Refusal refused) {
            return refused.key();
        }
    }

    private void assertHere(UUID item) {
        assertThat(items.get(production.id, item).condition()).isEqualTo(Condition.GOOD);
    }

    private MvcTestResult send(String codes) {
        return send(codes, TODAY.toString());
    }

    private MvcTestResult send(String codes, String returnedOn) {
        return mvc.post()
                .uri(production.path("hire/return"))
                .param("codes", codes)
                .param("returnedOn", returnedOn)
                .with(production.signedInAs(Role.OFFICE))
                .exchange();
    }

    private static String error(MvcTestResult answer, String field) throws Exception {
        assertThat(answer).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return Jsoup.parse(answer.getResponse().getContentAsString())
                .select("#" + field + "-error")
                .text();
    }

    private void offload(UUID... to) {
        List<Offloads.Destination> destinations = Arrays.stream(to)
                .map(item -> new Offloads.Destination(item, null))
                .toList();
        offloads.finish(wrangler, offloads.start(wrangler, roll, reader, null, destinations), 1_000);
    }

    private void prove(UUID item, String name) throws IOException {
        intake.storeForCopies(wrangler, name + ".md5", bytes("# " + name + "\n" + FILES), item);
        jobs.run();
    }

    private static ByteArrayInputStream bytes(String content) {
        return new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8));
    }
}
