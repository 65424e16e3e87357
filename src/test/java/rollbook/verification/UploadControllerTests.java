package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.verification.DocumentScene.list;
import static rollbook.verification.DocumentScene.sentence;
import static rollbook.verification.UploadScene.address;
import static rollbook.verification.UploadScene.bytes;
import static rollbook.verification.UploadScene.complete;
import static rollbook.verification.UploadScene.digest;
import static rollbook.verification.UploadScene.offset;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** Sending a file in parts: what is kept, what is refused and how the sender goes on. */
@PortalTest
class UploadControllerTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Documents documents;

    @Autowired
    DocumentContent content;

    @Autowired
    Uploads uploads;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    private DocumentScene scene;
    private TestProduction production;
    private UploadScene wrangler;
    private final byte[] file = bytes(list("A001", "A002", "A003"));

    @BeforeEach
    void makeProduction() {
        scene = new DocumentScene(fixtures, mvc, rolls);
        production = scene.production;
        wrangler = new UploadScene(mvc, production, Role.WRANGLER);
    }

    private byte[] from(int start) {
        return Arrays.copyOfRange(file, start, file.length);
    }

    private byte[] storedBytes() throws Exception {
        List<Document> stored = documents.newest(production.id, 0, 2);
        assertThat(stored).hasSize(1);
        return content.open(stored.get(0).id()).readAllBytes();
    }

    @Test
    void aFileInTwoPartsBecomesADocumentWithItsLastByte() throws Exception {
        MvcTestResult begun = wrangler.begin("three.md5", file, 50);
        assertThat(begun).hasStatus(201);
        assertThat(offset(begun)).isEqualTo(50);
        assertThat(complete(begun)).isFalse();
        assertThat(documents.count(production.id)).as("nothing counts yet").isZero();

        MvcTestResult ended = wrangler.part(address(begun), 50, from(50), true);
        assertThat(ended).hasStatus(201);
        assertThat(complete(ended)).isTrue();
        assertThat(storedBytes()).isEqualTo(file);
        org.jsoup.nodes.Document told =
                scene.see(address(ended).substring(production.path("").length()));
        assertThat(told.select("tbody tr").text()).contains("three.md5", "Stored, SHA-256");
    }

    @Test
    void aSmallFileIsADocumentWithOneRequest() throws Exception {
        MvcTestResult ended = wrangler.begin("three.md5", file, file.length);
        assertThat(ended).hasStatus(201);
        assertThat(complete(ended)).isTrue();
        assertThat(storedBytes()).isEqualTo(file);
        assertThat(scene.see("documents").select(".unfinished")).isEmpty();
    }

    @Test
    void theSameFileChosenAgainGoesOnWhereItStopped() throws Exception {
        String address = address(wrangler.begin("three.md5", file, 50));
        MvcTestResult again = wrangler.begin("three.md5", file, 20);
        assertThat(again).hasStatus(200);
        assertThat(address(again)).isEqualTo(address);
        assertThat(offset(again)).isEqualTo(50);
        assertThat(mvc.get().uri(address).with(production.signedInAs(Role.WRANGLER)))
                .bodyJson()
                .extractingPath("$.parts[0]")
                .isEqualTo(Map.of(
                        "startByte",
                        0,
                        "sizeBytes",
                        50,
                        "sha256",
                        HexFormat.of().formatHex(UploadScene.sha256(Arrays.copyOf(file, 50)))));
    }

    @Test
    void anotherFileOfTheSameNameOrForAnotherPurposeIsAnotherUpload() {
        String address = address(wrangler.begin("three.md5", file, 50));
        byte[] changed = bytes(list("B001", "B002", "B003"));
        assertThat(address(wrangler.begin("three.md5", changed, 50))).isNotEqualTo(address);
        assertThat(address(wrangler.begin("three.md5", bytes(list("A001")), 20)))
                .isNotEqualTo(address);
        assertThat(address(wrangler.begin("three.md5", file, 50, scene.shuttle.toString())))
                .isNotEqualTo(address);
    }

    @Test
    void aPartThatBeginsElsewhereIsRefusedWithTheRightOffset() throws Exception {
        String address = address(wrangler.begin("three.md5", file, 50));
        for (int wrong : new int[] {0, 49, 51, file.length}) {
            MvcTestResult refused = wrangler.part(address, wrong, from(wrong), true);
            assertThat(refused).as("from %d", wrong).hasStatus(409);
            assertThat(offset(refused)).isEqualTo(50);
            assertThat(refused).bodyJson().extractingPath("$.type").asString().endsWith("#mismatching-upload-offset");
        }
        assertThat(wrangler.part(address, 50, from(50), true)).hasStatus(201);
        assertThat(storedBytes()).isEqualTo(file);
    }

    @Test
    void aPartThatIsNotWhatItsDigestSaysIsNotKept() {
        String address = address(wrangler.begin("three.md5", file, 50));
        for (String wrong : List.of(digest(from(51)), "sha-256=:bm9uZQ==:", "sha-256=:bm9=uZQ:")) {
            MvcTestResult refused = wrangler.part(address, 50, from(50), true, wrong);
            assertThat(refused).as(wrong).hasStatus(409);
            assertThat(offset(refused)).isEqualTo(50);
        }
        assertThat(wrangler.part(address, 50, from(50), true, null))
                .as("one who says nothing of a digest is believed")
                .hasStatus(201);
    }

    @Test
    void aPartBeyondTheAnnouncedEndDiscardsTheUpload() {
        String address = address(wrangler.begin("three.md5", file, 50));
        assertThat(wrangler.part(address, 50, Arrays.copyOf(from(50), file.length), true))
                .hasStatus(409)
                .bodyJson()
                .extractingPath("$.type")
                .asString()
                .endsWith("#inconsistent-upload-length");
        assertThat(wrangler.look(address)).hasStatus(404);
        assertThat(documents.count(production.id)).isZero();
    }

    @Test
    void anEndThatIsSaidTooEarlyMakesNoDocument() {
        String address = address(wrangler.begin("three.md5", file, 50));
        MvcTestResult early = wrangler.part(address, 50, Arrays.copyOf(from(50), 10), true);
        assertThat(early).hasStatus(409);
        assertThat(offset(early)).isEqualTo(60);
        assertThat(complete(early)).isFalse();
        assertThat(documents.count(production.id)).isZero();
    }

    @Test
    void anAnswerThatWasLostIsFoundByLooking() {
        String address = address(wrangler.begin("three.md5", file, 50));
        String told = address(wrangler.part(address, 50, from(50), true));
        MvcTestResult looked = wrangler.look(address);
        assertThat(looked).hasStatusOk();
        assertThat(complete(looked)).isTrue();
        assertThat(address(looked)).isEqualTo(told);
        MvcTestResult repeated = wrangler.part(address, 50, from(50), true);
        assertThat(repeated).hasStatus(409);
        assertThat(complete(repeated)).isTrue();
        assertThat(address(repeated)).isEqualTo(told);
        assertThat(documents.count(production.id)).isOne();
    }

    @Test
    void whatIsHereAlreadyIsToldAsSuch() throws Exception {
        scene.sendOne("", "earlier.md5", list("A001", "A002", "A003"));
        MvcTestResult ended = wrangler.begin("three.md5", file, file.length);
        assertThat(complete(ended)).isTrue();
        assertThat(scene.see(address(ended).substring(production.path("").length()))
                        .text())
                .contains("Already here since");
        assertThat(documents.count(production.id)).isOne();
    }

    @Test
    void theEndCanBeSaidAfterTheLastPart() throws Exception {
        String address = address(wrangler.begin("three.md5", file, 50));
        assertThat(wrangler.part(address, 50, from(50), false)).hasStatus(204);
        assertThat(documents.count(production.id)).isZero();
        assertThat(wrangler.part(address, file.length, new byte[0], true)).hasStatus(201);
        assertThat(storedBytes()).isEqualTo(file);
    }

    @Test
    void twoTabsThatSendTheSameFileMakeOneDocument() throws Exception {
        String address = address(wrangler.begin("three.md5", file, 50));
        ExecutorService tabs = Executors.newFixedThreadPool(2);
        try {
            Callable<MvcTestResult> last = () -> wrangler.part(address, 50, from(50), true);
            for (Future<MvcTestResult> answer : tabs.invokeAll(List.of(last, last))) {
                assertThat(answer.get().getResponse().getStatus()).isIn(201, 409);
            }
        } finally {
            tabs.shutdown();
        }
        assertThat(complete(wrangler.look(address))).isTrue();
        assertThat(storedBytes()).isEqualTo(file);
    }

    @Test
    void whileAnotherRequestHoldsItNothingWaits() {
        String address = address(wrangler.begin("three.md5", file, 50));
        UUID id = UUID.fromString(address.substring(address.lastIndexOf('/') + 1));
        MvcTestResult refused = transaction.execute(status -> {
            assertThat(uploads.hold(scene.wrangler, id)).isPresent();
            return elsewhere(() -> wrangler.part(address, 50, from(50), true));
        });
        assertThat(refused).hasStatus(409);
        assertThat(offset(refused)).isEqualTo(50);
    }

    /** In a transaction of its own. */
    private static MvcTestResult elsewhere(Callable<MvcTestResult> act) {
        ExecutorService other = Executors.newSingleThreadExecutor();
        try {
            return other.submit(act).get();
        } catch (Exception e) {
            throw new AssertionError(e);
        } finally {
            other.shutdown();
        }
    }

    @Test
    void anUploadIsItsSendersOwn() {
        String address = address(wrangler.begin("three.md5", file, 50));
        UploadScene post = new UploadScene(mvc, production, Role.POST);
        assertThat(post.look(address)).hasStatus(404);
        assertThat(post.part(address, 50, from(50), true)).hasStatus(404);
        assertThat(post.discard(address)).hasStatus(404);
        assertThat(address(post.begin("three.md5", file, 50))).isNotEqualTo(address);
        TestProduction other = fixtures.production();
        String elsewhere = address.replace(production.code, other.code);
        assertThat(new UploadScene(mvc, other, Role.WRANGLER).look(elsewhere)).hasStatus(404);
        assertThat(new UploadScene(mvc, production, Role.READER).look(address)).hasStatus(403);
        assertThat(offset(wrangler.look(address))).isEqualTo(50);
    }

    @Test
    void whatIsDiscardedIsGone() throws Exception {
        String address = address(wrangler.begin("three.md5", file, 50));
        org.jsoup.nodes.Document page = scene.see("documents");
        assertThat(sentence(page)).contains("1 file is not all here yet");
        assertThat(page.selectFirst(".unfinished").text()).contains("three.md5", "50 B of", "Kept until");
        assertThat(scene.submit(page.selectFirst(".unfinished form"), Map.of())).hasStatus3xxRedirection();
        assertThat(wrangler.look(address)).hasStatus(404);
        assertThat(scene.see("documents").select(".unfinished")).isEmpty();
        assertThat(wrangler.discard(address(wrangler.begin("three.md5", file, 50))))
                .hasStatus(204);
    }

    @Test
    void whatNobodyGoesOnWithIsForgottenAfterAWeek() {
        String address = address(wrangler.begin("three.md5", file, 50));
        Instant now = clock.instant();
        uploads.forgetOld(now.plus(Upload.KEPT).minus(Duration.ofMinutes(1)));
        assertThat(wrangler.look(address)).hasStatusOk();
        uploads.forgetOld(now.plus(Upload.KEPT).plus(Duration.ofMinutes(1)));
        assertThat(wrangler.look(address)).hasStatus(404);
    }

    @Test
    void nobodyBeginsMoreThanTwoOfTheLargestFiles() {
        byte[] first = bytes(list("A001"));
        for (int i = 1; i <= 3; i++) {
            MvcTestResult begun = mvc.post()
                    .uri(production.path("documents/uploads"))
                    .queryParam("beginning", "00".repeat(32))
                    .header("Upload-Length", uploads.mostBytes())
                    .header("Upload-Complete", "?0")
                    .header("Content-Disposition", "inline; filename=" + i)
                    .content(first)
                    .with(production.signedInAs(Role.WRANGLER))
                    .exchange();
            assertThat(begun).hasStatus(i <= 2 ? 201 : 409);
        }
        assertThat(uploads.unfinished(scene.wrangler)).hasSize(2);
    }

    @Test
    void whatIsTooLargeIsRefusedWithTheLimits() {
        assertThat(mvc.post()
                        .uri(production.path("documents/uploads"))
                        .queryParam("beginning", "00".repeat(32))
                        .header("Upload-Length", uploads.mostBytes() + 1)
                        .header("Upload-Complete", "?0")
                        .with(production.signedInAs(Role.WRANGLER)))
                .hasStatus(413)
                .hasHeader("Upload-Limit", "max-size=4294967296, max-append-size=8388608");
        byte[] large = new byte[Uploads.MOST_PART_BYTES + 1];
        String address = address(wrangler.begin("large.md5", large, 50));
        assertThat(wrangler.part(address, 50, large, false)).hasStatus(413);
        assertThat(offset(wrangler.look(address))).isEqualTo(50);
    }

    @Test
    void aRequestThatSaysTooLittleIsRefused() {
        assertThat(mvc.post()
                        .uri(production.path("documents/uploads"))
                        .queryParam("beginning", "00".repeat(32))
                        .header("Upload-Complete", "?0")
                        .with(production.signedInAs(Role.WRANGLER)))
                .as("without a length")
                .hasStatus(400);
        assertThat(wrangler.begin("three.md5", file, 50, UUID.randomUUID().toString()))
                .as("for a medium that nobody knows")
                .hasStatus(404);
        assertThat(wrangler.begin("three.md5", file, 50, scene.card.toString()))
                .as("for a card as if it held copies")
                .hasStatus(404);
        String address = address(wrangler.begin("three.md5", file, 50));
        assertThat(mvc.patch()
                        .uri(address)
                        .contentType(UploadScene.PART)
                        .header("Upload-Complete", "?1")
                        .content(from(50))
                        .with(production.signedInAs(Role.WRANGLER)))
                .as("without an offset")
                .hasStatus(400);
        assertThat(mvc.patch()
                        .uri(address)
                        .contentType("text/plain")
                        .header("Upload-Offset", 50)
                        .header("Upload-Complete", "?1")
                        .content(from(50))
                        .with(production.signedInAs(Role.WRANGLER)))
                .as("of another type")
                .hasStatus(415);
        assertThat(offset(wrangler.look(address))).isEqualTo(50);
    }

    @Test
    void aNameMayBeAnything() throws Exception {
        MvcTestResult ended = wrangler.begin("%E2%80%AE%00a%2Fb%5Cc.md5", file, file.length);
        assertThat(complete(ended)).isTrue();
        assertThat(documents.newest(production.id, 0, 1).get(0).fileName()).isEqualTo("c.md5");
    }
}
