package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rollbook.verification.DocumentScene.file;
import static rollbook.verification.DocumentScene.list;
import static rollbook.verification.DocumentScene.parsed;
import static rollbook.verification.DocumentScene.sentence;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

/** Sending documents, what the sender is told, and the list. */
@PortalTest
class DocumentsControllerTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    Documents documents;

    @Autowired
    Deliveries deliveries;

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

    @Test
    void severalFilesAreStoredAtOnceAndTheSenderIsToldOfEach() throws Exception {
        Document told = scene.told(scene.send(
                Role.WRANGLER,
                "",
                file("card.md5", list("A001")),
                file("empty.md5", ""),
                file("drive.md5", "# drive\n" + list("A001"))));
        assertThat(sentence(told))
                .isEqualTo(
                        "2 documents are stored. 1 file was not stored. 2 wait for somebody to say what they describe.");
        assertThat(told.select("tbody tr").eachText())
                .satisfiesExactly(
                        row -> assertThat(row).contains("card.md5", "Stored, SHA-256", "read: 1 part waits for you"),
                        row -> assertThat(row).contains("empty.md5", "Not stored: the file is empty"),
                        row -> assertThat(row).contains("drive.md5", "Stored, SHA-256"));
        assertThat(told.select("#told").hasAttr("hx-get"))
                .as("nothing is being read any more")
                .isFalse();
        assertThat(documents.count(scene.production.id)).isEqualTo(2);

        String address = told.select("tbody a").first().attr("href");
        // What is shown of the digest is the beginning of what sha256sum of GNU coreutils prints for the same bytes.
        assertThat(told.selectFirst("main code").text())
                .isEqualTo(sha256sum(list("A001")).substring(0, 12));
        assertThat(address).startsWith(scene.production.path("documents/"));
    }

    private static String sha256sum(String content) throws IOException {
        Process tool = new ProcessBuilder("sha256sum").start();
        try (var out = tool.getOutputStream()) {
            out.write(content.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        }
        return new String(tool.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.US_ASCII);
    }

    @Test
    void aDocumentThatIsHereAlreadyChangesNothingAndTheSenderIsToldSinceWhen() throws Exception {
        UUID first = scene.sendOne("", "card.md5", list("A001"));
        MvcTestResult again = scene.send(Role.POST, "", file("again.md5", list("A001")));
        Document told = scene.told(again);
        assertThat(sentence(told)).startsWith("1 was here already and changes nothing.");
        assertThat(told.select("tbody").text())
                .contains("card.md5", "Already here since", "sent by WRANGLER", "Sent as again.md5")
                .doesNotContain("proves neither");
        assertThat(scene.documentOf(again)).isEqualTo(first);
    }

    @Test
    void aDocumentSentForASecondCopyLeadsToWhereThatCanBeSaid() throws Exception {
        UUID roll = scene.roll("A001");
        UUID first = scene.sendOne(scene.shuttle.toString(), "drive.md5", list("A001"));
        jobs.run();
        MvcTestResult again = scene.send(Role.WRANGLER, scene.vault.toString(), file("drive.md5", list("A001")));
        Document told = scene.told(again);
        assertThat(told.select("tbody").text())
                .contains("You sent it for VAULT-1", "One document for two copies proves neither");
        assertThat(told.select("tbody a[href$=" + first + "]")).hasSize(2);
        assertThat(told.select("#told").hasAttr("hx-get"))
                .as("nothing is being read any more")
                .isFalse();

        assertThat(scene.told(scene.send(Role.WRANGLER, "CARD", file("d", list("A001"))))
                        .select("tbody")
                        .text())
                .contains("You sent it for the card itself");
        assertThat(scene.told(scene.send(Role.WRANGLER, scene.shuttle.toString(), file("drive.md5", list("A001"))))
                        .select("tbody")
                        .text())
                .doesNotContain("You sent it for");
        assertThat(roll).isNotNull();
    }

    @Test
    void twoUploadsOfTheSameDocumentAtOnceGiveOneDocumentAndTwoClearAnswers() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Callable<MvcTestResult> sending =
                    () -> scene.send(Role.WRANGLER, "CARD", file("card.md5", list("A001", "A002")));
            List<String> told = new ArrayList<>();
            for (Future<MvcTestResult> answer : threads.invokeAll(List.of(sending, sending))) {
                told.add(scene.told(answer.get()).select("tbody tr td").first().text());
            }
            assertThat(told)
                    .satisfiesExactlyInAnyOrder(
                            text -> assertThat(text).startsWith("Stored, SHA-256"),
                            text -> assertThat(text).startsWith("Already here since"));
        } finally {
            threads.shutdownNow();
        }
        assertThat(documents.count(scene.production.id)).isEqualTo(1);
    }

    @Test
    void aBrowserThatSendsOneByOneIsToldOfAllTogether() throws Exception {
        MvcTestResult first = scene.send(Role.WRANGLER, "", file("1.md5", list("A001")));
        String address = first.getResponse().getRedirectedUrl();
        String delivery = address.substring(address.lastIndexOf('/') + 1);
        for (Role role : List.of(Role.WRANGLER, Role.POST)) {
            mvc.post()
                    .uri(scene.production.path("documents"))
                    .multipart()
                    .file(file("2.md5", list("A002", role.name())))
                    .param("delivery", delivery)
                    .with(scene.production.signedInAs(role))
                    .exchange();
        }
        assertThat(scene.told(first).select("tbody tr"))
                .as("another person's file is not among them")
                .hasSize(2);
    }

    @Test
    void nothingChosenOrAnUnknownMediumIsSaidInTheForm() throws Exception {
        MvcTestResult nothing = scene.send(Role.WRANGLER, "", file("", ""));
        assertThat(nothing).hasStatus(422);
        assertThat(parsed(nothing).select("#error-summary").text()).contains("Choose at least one file.");
        assertThat(parsed(nothing).title()).startsWith("Error:");
        assertThat(scene.send(Role.WRANGLER, "")).hasStatus(422);

        TestProduction other = fixtures.production();
        UUID foreign = other.item("SHUTTLE-1", "DRIVE", other.place("Set", false), null);
        for (String describes : List.of(
                UUID.randomUUID().toString(), foreign.toString(), scene.card.toString(), "NOT_A_ROLL", "anything")) {
            MvcTestResult unknown = scene.send(Role.WRANGLER, describes, file("card.md5", list("A001")));
            assertThat(unknown).as(describes).hasStatus(422);
            assertThat(parsed(unknown).select("#error-summary").text()).contains("Nothing was stored");
        }
        assertThat(documents.count(scene.production.id)).isZero();
    }

    /** The program failed to read it while it arrived: it is safe all the same, and the job reads it. */
    @Test
    void aDocumentThatWasNotReadWhileItArrivedIsReadInTheBackground() throws Exception {
        scene.roll("A001");
        UUID document = unread.store(scene.wrangler, Subject.CARD, "card.md5", list("A001"));
        MvcTestResult again = scene.send(Role.WRANGLER, "CARD", file("card.md5", list("A001")));

        Document told = scene.told(again);
        assertThat(told.select("#told").attr("hx-trigger")).isEqualTo("every 2s");
        assertThat(scene.see(told.select("#told")
                                .attr("hx-get")
                                .substring(scene.production.path("").length()))
                        .select("#told"))
                .hasSize(1);
        jobs.run();
        assertThat(sentence(scene.see("documents/" + document))).contains("which is assigned");
    }

    @Test
    void theSenderIsToldAtOnceThatADocumentWasRejectedAndGoesToTheReasonFromThere() throws Exception {
        Document told = scene.told(scene.send(Role.WRANGLER, "", file("cut.md5", list("A001") + "zzzz  A001/x\n")));
        assertThat(sentence(told)).isEqualTo("1 document is stored. 1 was rejected.");
        assertThat(told.select("tbody td a").text()).isEqualTo("rejected: look why");
    }

    @Test
    void whoMayNotSendGetsNoFormAndIsRefused() throws Exception {
        for (Role role : List.of(Role.READER, Role.OFFICE)) {
            assertThat(scene.send(role, "", file("card.md5", list("A001"))))
                    .as("%s", role)
                    .hasStatus(403);
            assertThat(scene.see("documents", role).select("main input[type=file]"))
                    .isEmpty();
        }
        for (Role role : List.of(Role.WRANGLER, Role.POST, Role.ADMINISTRATOR)) {
            assertThat(scene.send(role, "", file("card.md5", list(role.name()))))
                    .hasStatus3xxRedirection();
            assertThat(scene.see("documents", role).select("main input[type=file][multiple]"))
                    .hasSize(1);
        }
        assertThat(sentence(scene.see("documents", Role.READER))).contains("3 documents wait until a wrangler");
    }

    @Test
    void anotherProductionsDeliveryIsUnknown() throws Exception {
        String address = scene.send(Role.WRANGLER, "", file("card.md5", list("A001")))
                .getResponse()
                .getRedirectedUrl();
        TestProduction other = fixtures.production();
        String delivery = address.substring(address.lastIndexOf('/') + 1);
        for (String path : List.of(
                address,
                other.path("documents/deliveries/" + delivery),
                other.path("documents/deliveries/" + UUID.randomUUID()))) {
            assertThat(mvc.get().uri(path).with(other.signedInAs(Role.ADMINISTRATOR)))
                    .as(path)
                    .hasStatus(404);
        }
    }

    @Test
    void hostileNamesAreShownWithoutPathOrControlCharactersAndNothingOfThemIsLost() throws Exception {
        scene.send(
                Role.WRANGLER,
                "",
                file("../../x.md5", list("A001")),
                file("<script>alert(1)</script>.md5", list("A002")),
                file("a\u0000b\u202Ec\n.md5", list("A003")),
                file("n".repeat(5_000) + ".sha1", list("A004")),
                file("C:\\cards\\a.md5", list("A005")));
        Document page = scene.see("documents");
        assertThat(page.select("tbody th").eachText())
                .contains("x.md5", "script>.md5", "abc.md5", "a.md5")
                .anyMatch(name -> name.startsWith("nnn") && name.endsWith("n.sha1") && name.length() < 210);
        assertThat(page.html()).doesNotContain("<script>alert");
        assertThat(jdbc.sql("select sent_name from verification_delivery where production_id = ?")
                        .param(scene.production.id)
                        .query(String.class)
                        .list())
                .contains("../../x.md5", "<script>alert(1)</script>.md5", "a\\u{0}b\\u{202e}c\\u{a}.md5");
    }

    @Test
    void anUploadThatBreaksOffLeavesNothingBehind() {
        byte[] beginning = new byte[3 << 20];
        InputStream broken = new SequenceInputStream(new ByteArrayInputStream(beginning), new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("the connection was lost");
            }
        });
        MockMultipartFile file = new MockMultipartFile("file", "card.md5", null, new byte[] {1}) {
            @Override
            public InputStream getInputStream() {
                return broken;
            }
        };
        assertThatThrownBy(() -> deliveries.receive(scene.wrangler, null, List.of(file), Described.CARD))
                .isInstanceOf(IOException.class);
        assertThat(documents.count(scene.production.id)).isZero();
        assertThat(jdbc.sql(
                                "select count(*) from verification_document_chunk c where not exists (select 1 from verification_document d where d.id = c.document_id)")
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(jdbc.sql("select count(*) from verification_delivery where production_id = ?")
                        .param(scene.production.id)
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @Test
    void theMediumThatSomebodyComesFromIsPreselectedElseTheLastChoice() throws Exception {
        assertThat(chosen("documents")).isEmpty();
        assertThat(chosen("documents?item=shuttle-1")).isEqualTo(scene.shuttle.toString());
        assertThat(chosen("documents?item=" + scene.vault)).isEqualTo(scene.vault.toString());
        assertThat(chosen("documents?item=CARD-1")).isEqualTo("CARD");
        assertThat(chosen("documents?item=CARD")).isEqualTo("CARD");
        assertThat(chosen("documents?item=nothing")).isEmpty();

        var cookie = scene.send(Role.WRANGLER, scene.vault.toString(), file("a", list("A001")))
                .getResponse()
                .getCookie("rollbook-describes");
        assertThat(cookie.getPath()).isEqualTo(scene.production.path("documents"));
        MvcTestResult page = mvc.get()
                .uri(scene.production.path("documents"))
                .cookie(cookie)
                .with(scene.production.signedInAs(Role.WRANGLER))
                .exchange();
        assertThat(parsed(page).select("#describes option[selected]").val()).isEqualTo(scene.vault.toString());
        assertThat(parsed(page).select("#describes option").eachText())
                .contains("let each document tell", "the card itself", "SHUTTLE-1, drive, Set", "VAULT-1, array, Set")
                .doesNotContain("CARD-1");
    }

    private String chosen(String page) throws Exception {
        return scene.see(page).select("#describes option[selected]").val();
    }

    @Test
    void thoseThatWaitForPeopleComeFirstAndEachStateHasItsList() throws Exception {
        scene.roll("A001");
        assertThat(sentence(scene.see("documents"))).startsWith("No document yet.");
        scene.sendOne("", "waits.md5", list("A001", "elsewhere"));
        jobs.run();
        scene.sendOne("CARD", "assigned.md5", "# card\n" + list("A001"));
        scene.sendOne("", "bad.md5", "not a list\n");
        jobs.run();
        unread.store(scene.wrangler, null, "new.md5", "# new\n" + list("A001"));

        Document page = scene.see("documents");
        assertThat(sentence(page))
                .isEqualTo(
                        "1 document waits for you: say what it describes. 1 is being read. 1 was rejected in the last two days.");
        assertThat(sentence(scene.see("documents", Role.READER))).startsWith("1 document waits until a wrangler");
        assertThat(page.select("tbody th").eachText())
                .containsExactly("waits.md5", "new.md5", "bad.md5", "assigned.md5");
        assertThat(page.select("tbody tr").eachText().get(0)).contains("2 of 2 parts to assign", "GNU style");
        assertThat(page.select("tbody tr").eachText().get(2)).contains("rejected at line 1");
        assertThat(page.select("#documents").attr("hx-trigger")).isEqualTo("every 2s");
        assertThat(page.select("#filter-state option").eachText())
                .containsExactly("All (4)", "Waiting for people (1)", "Being read (1)", "Assigned (1)", "Rejected (1)");
        assertThat(page.select("#documents a[href]:contains(Look again)")).hasSize(1);
        for (String state : List.of("WAITS_FOR_PEOPLE", "BEING_READ", "ASSIGNED", "REJECTED")) {
            assertThat(scene.see("documents?state=" + state).select("tbody tr"))
                    .as(state)
                    .hasSize(1);
        }
        assertThat(scene.see("documents?q=AD.md5&sort=-document")
                        .select("tbody th")
                        .eachText())
                .containsExactly("bad.md5");
        assertThat(scene.see("documents?sort=document").select("tbody th").eachText())
                .containsExactly("assigned.md5", "bad.md5", "new.md5", "waits.md5");
        assertThat(scene.see("documents?state=ODD&page=x")
                        .select("#documents .count")
                        .text())
                .contains("left out: ODD, x");
        jobs.run();
        page = scene.see("documents");
        assertThat(page.select("#documents").hasAttr("hx-get")).isFalse();
        assertThat(page.text()).doesNotContain("Look again");
    }

    @Test
    void readingShowsItsProgress() throws Exception {
        UUID document = scene.sendOne("", "long.md5", list("A001", "A002"));
        jdbc.sql(
                        "update verification_reading set state = 'READING', bytes_read = 40, entries = 1 where document_id = ?")
                .param(document)
                .update();
        for (String path : List.of("documents", "documents/" + document)) {
            Document page = scene.see(path);
            assertThat(page.select("progress[aria-labelledby]").attr("value")).isEqualTo("40");
            assertThat(page.select("progress[aria-labelledby]").attr("max")).isEqualTo("94");
            assertThat(page.select(".progress").text()).isEqualTo("40 B of 94 B read, 1 file so far");
            assertThat(page.select("[hx-trigger='every 2s']").attr("hx-get")).startsWith(scene.production.path(path));
        }
    }

    @Test
    void theListIsPagedAndTakesFewStatementsHoweverLongItIs() throws Exception {
        scene.roll("A001");
        scene.sendOne("CARD", "first.md5", list("A001"));
        jobs.run();
        int one = statements.during(() -> scene.see("documents"));
        scene.send(
                Role.WRANGLER,
                "",
                IntStream.range(0, 54)
                        .mapToObj(i -> file("d" + i + ".md5", "# " + i + "\n" + list("A001", "B" + i)))
                        .toArray(MockMultipartFile[]::new));
        jobs.run();
        int many = statements.during(() -> scene.see("documents"));
        assertThat(many).isEqualTo(one).isLessThanOrEqualTo(12);
        Document second = scene.see("documents?page=2");
        assertThat(second.select("tbody tr")).hasSize(5);
        assertThat(second.select("tbody th").last().text())
                .as("assigned, so after those that wait")
                .isEqualTo("first.md5");
        assertThat(second.select("nav.pages").text()).contains("51 to 55 of 55");
        assertThat(scene.see("documents?state=ASSIGNED&page=1").select("tbody tr"))
                .hasSize(1);
    }
}
