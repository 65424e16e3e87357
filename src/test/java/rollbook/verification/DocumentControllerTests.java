package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.verification.DocumentScene.EMPTY_MD5;
import static rollbook.verification.DocumentScene.file;
import static rollbook.verification.DocumentScene.list;
import static rollbook.verification.DocumentScene.parsed;
import static rollbook.verification.DocumentScene.sentence;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.manifest.Verdict;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

/** A document's page: what it says, and saying what its parts describe. */
@PortalTest
class DocumentControllerTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    Assignments assignments;

    @Autowired
    DocumentReader reader;

    @Autowired
    Verdicts verdicts;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    @Autowired
    DocumentContent content;

    @Autowired
    SchedulerClient scheduler;

    @Autowired
    TransactionTemplate transaction;

    private DocumentScene scene;
    private UnreadDocuments unread;

    @BeforeEach
    void makeProduction() {
        scene = new DocumentScene(fixtures, mvc, rolls);
        unread = new UnreadDocuments(jdbc, content, scheduler, transaction);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 20_261_125, -7})
    void theDownloadEqualsWhatWasSentByteForByte(long seed) throws Exception {
        byte[] sent = new byte[3_000_000];
        new SplittableRandom(seed).nextBytes(sent);
        UUID document = scene.documentOf(scene.send(Role.WRANGLER, "", file("a \"b\";c=ü.bin", sent)));
        jobs.run();
        MvcTestResult answer = scene.get("documents/" + document + "/content", Role.READER);
        assertThat(answer.getResponse().getContentAsByteArray())
                .as("seed %d", seed)
                .isEqualTo(sent);
        assertThat(answer)
                .hasHeader("Content-Type", "application/octet-stream")
                .hasHeader("X-Content-Type-Options", "nosniff")
                .hasHeader("Content-Length", "3000000");
        // RFC 6266 and RFC 8187: a quoted ASCII form and a percent-encoded UTF-8 form, nothing that ends the header.
        assertThat(answer.getResponse().getHeader("Content-Disposition"))
                .startsWith("attachment; filename=")
                .contains("filename*=UTF-8''a%20%22b%22%3Bc%3D%C3%BC.bin")
                .doesNotContain("\n");
    }

    @Test
    void whatADocumentSaysOfItselfIsShown() throws Exception {
        scene.roll("A001");
        UUID document = scene.sendOne("CARD", "dir/card.md5", list("A001"));
        jobs.run();
        Document page = scene.see("documents/" + document);
        assertThat(sentence(page)).isEqualTo("It lists 1 file in 1 part, which is assigned.");
        assertThat(page.select("dl.facts").text())
                .contains(
                        "card.md5",
                        "Sent as dir/card.md5",
                        "47 bytes",
                        "by WRANGLER",
                        "the card itself",
                        "Checksum list, GNU style",
                        "MD5 The algorithm was concluded from the document’s name.",
                        "1 file in 1 part",
                        "not said");
        assertThat(page.select("dl.facts code").text()).hasSize(64);
    }

    @Test
    void aRejectedDocumentSaysFileLineColumnReasonAndWhatToDo() throws Exception {
        UUID document = scene.sendOne(
                "", "bad.md5", list("A001") + list("A002") + "zz" + EMPTY_MD5 + "  A003/x\n" + list("A004"));
        jobs.run();
        Document page = scene.see("documents/" + document);
        assertThat(sentence(page)).startsWith("Rejected at line 3, column 1: This is not a line of a checksum list");
        assertThat(page.select("#document section").first().text())
                .contains("bad.md5", "line 3, column 1", "Send a GNU or BSD style checksum list", "It stays on record");
        Element excerpt = page.selectFirst(".excerpt");
        assertThat(excerpt.select(".line-number").eachText()).containsExactly("1", "2", "3", "4");
        assertThat(excerpt.select(".bad").text()).contains("zz" + EMPTY_MD5);
        assertThat(excerpt.select("mark").text()).isEqualTo("z");
        assertThat(page.select("form[action$=read-again]"))
                .as("it would be rejected again")
                .isEmpty();
        assertThat(scene.post("documents/" + document + "/read-again", Role.WRANGLER, Map.of()))
                .hasStatus(409);
    }

    @Test
    void aHostileDocumentCannotWriteIntoThePage() throws Exception {
        UUID document = scene.sendOne("", "bad.mhl", "<hashlist><script>alert(1)</script>\u0007</hashlist>");
        jobs.run();
        Document page = scene.see("documents/" + document);
        assertThat(page.select(".excerpt").text()).contains("<script>alert(1)");
        assertThat(page.select("main script")).isEmpty();
    }

    @Test
    void aDocumentRejectedForAFaultIsReadAgainOnce() throws Exception {
        scene.roll("A001");
        UUID document = unread.store(scene.wrangler, Subject.CARD, "card.md5", list("A001"));
        reader.rejectForFault(document);
        jobs.run();
        Document page = scene.see("documents/" + document);
        assertThat(sentence(page)).contains("stored safely", "fault of this program");
        assertThat(scene.see("documents/" + document, Role.READER).select("form[action$=read-again]"))
                .isEmpty();
        assertThat(scene.submit(page.selectFirst("form[action$=read-again]"), Map.of()))
                .hasStatus3xxRedirection();
        assertThat(scene.submit(page.selectFirst("form[action$=read-again]"), Map.of()))
                .hasStatus(409);
        jobs.run();
        assertThat(sentence(scene.see("documents/" + document))).contains("which is assigned");
    }

    @Test
    void partsWithAGuessAreConfirmedAllAtOnce() throws Exception {
        UUID first = scene.roll("A001");
        UUID second = scene.roll("A002");
        UUID document = scene.sendOne("", "SHUTTLE_1.md5", list("A001", "A002", "other"));
        jobs.run();
        Document page = scene.see("documents/" + document);
        assertThat(sentence(page)).isEqualTo("3 of 3 parts wait: say what they describe.");
        Element confirm = page.selectFirst("form[action$=confirm]");
        assertThat(confirm.select("option[selected]").text()).isEqualTo("SHUTTLE-1, drive, Set");
        assertThat(confirm.select("button").text()).isEqualTo("Confirm all 2");

        assertThat(scene.submit(confirm, Map.of("describes", ""))).hasStatus(422);
        assertThat(scene.submit(confirm, Map.of())).hasStatus3xxRedirection();
        jobs.run();
        page = scene.see("documents/" + document);
        assertThat(sentence(page)).isEqualTo("1 of 3 parts waits: say what it describes.");
        assertThat(page.select("#assigned tbody tr").eachText())
                .satisfiesExactly(
                        row -> assertThat(row).contains("A001", "the copy of A001 on SHUTTLE-1", "said by WRANGLER"),
                        row -> assertThat(row).contains("A002", "the copy of A002 on SHUTTLE-1"));
        assertThat(page.select("a[href=" + scene.production.path("rolls/" + first) + "]"))
                .isNotEmpty();
        assertThat(page.select("a[href=" + scene.production.path("rolls/" + second) + "]"))
                .isNotEmpty();

        MvcTestResult again = scene.submit(confirm, Map.of());
        assertThat(again).hasStatus(409);
        assertThat(parsed(again).text()).contains("Somebody else has said meanwhile");
    }

    @Test
    void ofTwoWhoConfirmAtOnceOneIsToldThatTheOtherDid() throws Exception {
        scene.roll("A001");
        scene.roll("A002");
        UUID document = scene.sendOne("", "SHUTTLE-1.md5", list("A001", "A002"));
        jobs.run();
        Element confirm = scene.see("documents/" + document).selectFirst("form[action$=confirm]");
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Callable<Integer> confirming =
                    () -> scene.submit(confirm, Map.of()).getResponse().getStatus();
            assertThat(threads.invokeAll(List.of(confirming, confirming)).stream()
                            .map(answer -> {
                                try {
                                    return answer.get();
                                } catch (Exception e) {
                                    throw new AssertionError(e);
                                }
                            }))
                    .containsExactlyInAnyOrder(302, 409);
        } finally {
            threads.shutdownNow();
        }
        assertThat(assignments.ofDocument(scene.production.id, document)).hasSize(2);
    }

    @Test
    void foldersThatNobodyKnowsAreAssignedByHandAndNothingIsDropped() throws Exception {
        UUID roll = scene.roll("A001");
        UUID document =
                scene.sendOne("", "day.md5", list("A001", "sound", "MISC", "A001/Clips") + EMPTY_MD5 + "  top\n");
        jobs.run();
        List<Part> parts = assignments.parts(scene.production.id, document);
        assertThat(parts.stream().mapToLong(Part::entries).sum())
                .isEqualTo(jdbc.sql("select entries from verification_reading where document_id = ?")
                        .param(document)
                        .query(Long.class)
                        .single())
                .isEqualTo(5);
        Document page = scene.see("documents/" + document);
        assertThat(page.select("article.part")).hasSameSizeAs(parts);
        Element sound = page.select("article.part:contains(sound) form").first();

        MvcTestResult nothing = scene.submit(sound, Map.of());
        assertThat(nothing).hasStatus(422);
        assertThat(parsed(nothing).select("#error-summary a").eachText())
                .containsExactly("Choose what it describes.", "Write the roll’s code.");
        MvcTestResult unknown = scene.submit(sound, Map.of("subject", "COPY", "roll", "<b>X9</b>", "medium", "CARD-1"));
        assertThat(unknown).hasStatus(422);
        Document wrong = parsed(unknown);
        assertThat(wrong.select("#error-summary a").eachText())
                .containsExactly(
                        "This production has no roll <b>X9</b>. Log the roll first, or write another code.",
                        "This production has no medium CARD-1 that holds copies.");
        assertThat(wrong.select("article.part:contains(sound) input[name=roll]").val())
                .isEqualTo("<b>X9</b>");
        assertThat(wrong.select(wrong.select("#error-summary a").first().attr("href")))
                .hasSize(1);

        assertThat(scene.submit(sound, Map.of("subject", "NOT_A_ROLL"))).hasStatus3xxRedirection();
        Element misc = page.select("article.part:contains(MISC) form").first();
        assertThat(scene.submit(misc, Map.of("subject", "COPY", "roll", "a001", "medium", "vault-1")))
                .hasStatus3xxRedirection();
        jobs.run();
        page = scene.see("documents/" + document);
        assertThat(page.select("#assigned").text())
                .contains("no roll: not camera media", "the copy of A001 on VAULT-1");
        assertThat(verdicts.ofRoll(scene.production.id, roll).values())
                .extracting(CopyVerdict::verdict)
                .hasSize(1)
                .doesNotContain(Verdict.PROVEN);
    }

    @Test
    void aCorrectionIsANewEntryWithItsReasonAndTheOldOneStaysStruckThrough() throws Exception {
        scene.roll("A001");
        UUID document = scene.sendOne(scene.shuttle.toString(), "drive.md5", list("A001"));
        jobs.run();
        Document page = openPart(document);
        Element correct = page.select("form.saying:has(input[name=replaces])").first();
        assertThat(correct.select("input[name=roll]").val()).isEqualTo("A001");
        assertThat(correct.select("input[name=medium]").val()).isEqualTo("SHUTTLE-1");

        MvcTestResult silent = scene.submit(correct, Map.of("medium", "VAULT-1"));
        assertThat(silent).hasStatus(422);
        assertThat(parsed(silent).select("#error-summary").text()).contains("Write why it is corrected.");
        assertThat(parsed(silent)
                        .select("#assigned form:has(input[name=replaces]) input[name=medium]")
                        .val())
                .isEqualTo("VAULT-1");
        assertThat(scene.submit(correct, Map.of("medium", "VAULT-1", "note", "wrong <drive>")))
                .hasStatus3xxRedirection();

        page = scene.see("documents/" + document);
        assertThat(page.select("#assigned s").eachText()).containsExactly("the copy of A001 on SHUTTLE-1");
        assertThat(page.select("#assigned").text())
                .contains("corrected", "the copy of A001 on VAULT-1", "“wrong <drive>”");

        MvcTestResult stale = scene.submit(correct, Map.of("medium", "SHUTTLE-1", "note", "no"));
        assertThat(stale).hasStatus(409);
        assertThat(parsed(stale).text())
                .contains("Somebody else has said meanwhile what this part of drive.md5 describes.");
        assertThat(assignments.ofDocument(scene.production.id, document)).hasSize(2);
    }

    @Test
    void aDocumentThatSpeaksForAnotherCopyTooIsSaidToProveNeither() throws Exception {
        UUID roll = scene.roll("A001");
        scene.sendOne("CARD", "card.md5", list("A001"));
        UUID document = scene.sendOne(scene.shuttle.toString(), "drive.md5", "# drive\n" + list("A001"));
        jobs.run();
        Document page = openPart(document);
        Element add = page.select("form.saying:not(:has(input[name=replaces]))").first();
        assertThat(page.select("#assigned").text()).contains("One document for two copies proves neither");
        assertThat(add.select("input[name=roll]").val()).isEqualTo("A001");
        assertThat(scene.submit(add, Map.of("medium", "SHUTTLE-1")))
                .as("it says so already")
                .hasStatus(409);
        assertThat(scene.submit(add, Map.of("medium", "VAULT-1"))).hasStatus3xxRedirection();
        jobs.run();
        page = scene.see("documents/" + document);
        assertThat(page.select("#assigned").text()).contains("so it proves none of them");
        assertThat(verdicts.ofRoll(scene.production.id, roll).values())
                .extracting(CopyVerdict::verdict)
                .containsExactly(Verdict.CONSISTENT, Verdict.CONSISTENT);
        assertThat(page.select("section:contains(Judged from it) tbody tr").eachText())
                .satisfiesExactly(
                        row -> assertThat(row).contains("A001", "SHUTTLE-1", "consistent", "what speaks of the copy"),
                        row -> assertThat(row).contains("A001", "VAULT-1", "consistent"));
    }

    private Document openPart(UUID document) throws Exception {
        Element link = scene.see("documents/" + document).selectFirst("#assigned a[href*=part]");
        String address = link.attr("href");
        return scene.see(address.substring(scene.production.path("").length(), address.indexOf('#')));
    }

    @Test
    void anotherPartsOrProductionsAssignmentIsNotCorrected() throws Exception {
        scene.roll("A001");
        UUID document = scene.sendOne("CARD", "card.md5", list("A001"));
        DocumentScene other = new DocumentScene(fixtures, mvc, rolls);
        other.roll("A001");
        UUID theirs = other.sendOne("CARD", "card.md5", list("A001"));
        jobs.run();
        Assignment own = assignments.ofDocument(scene.production.id, document).get(0);
        Assignment foreign = assignments.ofDocument(other.production.id, theirs).get(0);
        Map<String, List<String>> fields = Map.of(
                "subject", List.of("NOT_A_ROLL"),
                "note", List.of("mine now"),
                "replaces", List.of(String.valueOf(foreign.id())),
                "newestSeen", List.of(String.valueOf(own.id())));
        assertThat(scene.post("documents/" + document + "/parts/" + own.partId(), Role.WRANGLER, fields))
                .hasStatus(404);
        assertThat(assignments.ofDocument(other.production.id, theirs))
                .extracting(Assignment::replaced)
                .containsExactly(false);
    }

    @Test
    void whoMayNotAssignSeesNoFormsAndIsRefused() throws Exception {
        scene.roll("A001");
        UUID document = scene.sendOne("", "drive.md5", list("A001"));
        jobs.run();
        UUID part = assignments.parts(scene.production.id, document).get(0).id();
        for (Role role : List.of(Role.READER, Role.OFFICE)) {
            assertThat(scene.see("documents/" + document, role).select("#document form"))
                    .isEmpty();
            for (String path : List.of("/parts/" + part, "/confirm", "/read-again")) {
                assertThat(scene.post(
                                "documents/" + document + path,
                                role,
                                Map.of("subject", List.of("NOT_A_ROLL"), "part", List.of(part.toString()))))
                        .as("%s %s", role, path)
                        .hasStatus(403);
            }
        }
        assertThat(scene.post(
                        "documents/" + document + "/parts/" + part,
                        Role.POST,
                        Map.of("subject", List.of("NOT_A_ROLL"))))
                .hasStatus3xxRedirection();
    }

    @Test
    void unknownAndForeignDocumentsAndPartsAreNotFound() throws Exception {
        UUID document = scene.sendOne("", "drive.md5", list("A001"));
        UUID second = scene.sendOne("", "second.md5", list("A002"));
        jobs.run();
        UUID part = assignments.parts(scene.production.id, document).get(0).id();
        TestProduction other = fixtures.production();
        for (String path : List.of("", "/content")) {
            assertThat(mvc.get()
                            .uri(other.path("documents/" + document + path))
                            .with(other.signedInAs(Role.ADMINISTRATOR)))
                    .hasStatus(404);
            assertThat(mvc.get()
                            .uri(scene.production.path("documents/" + document + path))
                            .with(other.signedInAs(Role.ADMINISTRATOR)))
                    .hasStatus(404);
            assertThat(scene.get("documents/" + UUID.randomUUID() + path, Role.WRANGLER))
                    .hasStatus(404);
        }
        Map<String, List<String>> fields = Map.of(
                "subject", List.of("NOT_A_ROLL"), "part", List.of(part.toString()), "describes", List.of("CARD"));
        for (UUID wrong : List.of(second, UUID.randomUUID())) {
            for (String path : List.of("/parts/" + part, "/confirm")) {
                assertThat(scene.post("documents/" + wrong + path, Role.WRANGLER, fields))
                        .as(path)
                        .hasStatus(404);
            }
        }
        for (String path : List.of("/parts/" + part, "/confirm", "/read-again")) {
            assertThat(mvc.post()
                            .uri(other.path("documents/" + document + path))
                            .param("subject", "NOT_A_ROLL")
                            .param("part", part.toString())
                            .with(other.signedInAs(Role.ADMINISTRATOR)))
                    .as(path)
                    .hasStatus(404);
        }
        assertThat(assignments.ofDocument(scene.production.id, document)).isEmpty();
    }

    @Test
    void aRollThatIsLoggedAfterItsDocumentWasReadIsGuessedAllTheSame() throws Exception {
        UUID document = scene.sendOne("", "SHUTTLE-1.md5", list("a007", "b"));
        jobs.run();
        assertThat(scene.see("documents/" + document).select("form[action$=confirm]"))
                .isEmpty();
        UUID roll = scene.roll("A007");
        Element confirm = scene.see("documents/" + document).selectFirst("form[action$=confirm]");
        assertThat(confirm.select("button").text()).isEqualTo("Confirm it");
        assertThat(scene.submit(confirm, Map.of())).hasStatus3xxRedirection();
        assertThat(assignments.ofDocument(scene.production.id, document))
                .extracting(Assignment::rollId)
                .containsExactly(roll);
    }

    @Test
    void thePageTakesFewStatementsHoweverManyPartsThereAre() throws Exception {
        IntStream.range(1, 31).forEach(number -> scene.roll("A%03d".formatted(number)));
        UUID small = scene.sendOne(scene.shuttle.toString(), "small.md5", list("A001"));
        UUID large = scene.sendOne(
                scene.shuttle.toString(),
                "large.md5",
                list(IntStream.range(1, 31).mapToObj("A%03d"::formatted).toArray(String[]::new)) + list("other"));
        jobs.run();
        int few = statements.during(() -> scene.see("documents/" + small));
        int many = statements.during(() -> scene.see("documents/" + large));
        assertThat(many).isEqualTo(few).isLessThanOrEqualTo(12);
    }
}
