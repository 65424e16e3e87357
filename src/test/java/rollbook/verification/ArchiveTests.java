package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.verification.DocumentScene.file;
import static rollbook.verification.DocumentScene.sentence;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

/** Zip archives through the pages: histories, bags, broken ones. */
@PortalTest
class ArchiveTests {
    private static final String EXAMPLE = "/manifest/examples/R001_CU01/ascmhl/";
    private static final String FIRST = "0001_R001_CU01_2026-03-04_180512Z.mhl";
    private static final String SECOND = "0002_R001_CU01_2026-03-05_074000Z.mhl";
    private static final String CHAIN = "ascmhl_chain.xml";
    private static final String ABC_MD5 = "900150983cd24fb0d6963f7d28e17f72";
    private static final String ABC_SHA1 = "a9993e364706816aba3e25717850c26c9cd0d89d";
    private static final String DECLARATION = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
    /** What the example's two clips and its report have for digests (computed when the example was made). */
    private static final String CARD = """
            XXH64 (Clips/R001C001_260304.mxf) = 72dc241b4a0d650d
            XXH64 (Clips/R001C002_260304.mxf) = 6532dd39691a0392
            XXH64 (R001_report.txt) = 2da8fc0b0100d84e
            """;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    Copies copies;

    @Autowired
    Documents documents;

    @Autowired
    Verdicts verdicts;

    @Autowired
    Evidence evidence;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private DocumentScene scene;

    @BeforeEach
    void makeProduction() {
        scene = new DocumentScene(fixtures, mvc, rolls);
    }

    private static byte[] example(String name) throws Exception {
        try (InputStream in = Objects.requireNonNull(ArchiveTests.class.getResourceAsStream(EXAMPLE + name))) {
            return in.readAllBytes();
        }
    }

    private static Map<String, byte[]> history() throws Exception {
        Map<String, byte[]> files = new LinkedHashMap<>();
        // The chain first and the newest generation before the older one: the order in the archive says nothing.
        for (String name : List.of(CHAIN, SECOND, FIRST)) {
            files.put("R001_CU01/ascmhl/" + name, example(name));
        }
        return files;
    }

    private static byte[] zip(Map<String, byte[]> files) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                ZipEntry entry = new ZipEntry(file.getKey());
                entry.setTime(0);
                out.putNextEntry(entry);
                out.write(file.getValue());
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private MvcTestResult send(String describes, byte[] archive) {
        return scene.send(Role.WRANGLER, describes, file("R001.zip", archive));
    }

    private UUID sendAndRead(String describes, byte[] archive) throws Exception {
        UUID id = scene.documentOf(send(describes, archive));
        jobs.run();
        return id;
    }

    private Document page(UUID document) throws Exception {
        return scene.see("documents/" + document);
    }

    private UUID memberOf(UUID archive, String ending) throws Exception {
        Element link = page(archive).select("main th a").stream()
                .filter(one -> one.text().endsWith(ending))
                .findFirst()
                .orElseThrow();
        String address = link.attr("href");
        return UUID.fromString(address.substring(address.lastIndexOf('/') + 1));
    }

    private CopyVerdict verdict(UUID roll, UUID item) {
        Copy copy = copies.ofRoll(scene.production.id, roll).stream()
                .filter(one -> one.itemId().equals(item))
                .findFirst()
                .orElseThrow();
        return verdicts.newest(scene.production.id, copy.id()).orElseThrow();
    }

    private String nameOfPart(UUID part) {
        return jdbc.sql(
                        "select d.file_name from verification_part p join verification_document d on d.id = p.document_id where p.id = ?")
                .param(part)
                .query(String.class)
                .single();
    }

    @Test
    void eachGenerationBecomesADocumentAndTheNewestSpeaksForTheCopy() throws Exception {
        UUID roll = scene.roll("R001");
        scene.sendOne("CARD", "R001_card.xxh64", CARD);
        UUID archive = sendAndRead(scene.shuttle.toString(), zip(history()));

        assertThat(documents.count(scene.production.id)).isEqualTo(4);
        Document page = page(archive);
        assertThat(sentence(page))
                .isEqualTo("It was opened: 2 manifests belong to it. Nothing speaks against any of them.");
        assertThat(page.select("section:has(#members-title) tbody tr").eachText())
                .satisfiesExactly(
                        row -> assertThat(row).contains(FIRST, "1 nothing speaks against it read 3"),
                        row -> assertThat(row).contains(SECOND, "2 nothing speaks against it read 3"));

        List<Evidence.Piece> pieces = evidence.ofRoll(scene.production.id, roll);
        assertThat(pieces).extracting(Evidence.Piece::fileName).containsExactly("R001_card.xxh64", FIRST, SECOND);
        assertThat(pieces.get(1).uploadedAt())
                .as("one moment")
                .isEqualTo(pieces.get(2).uploadedAt());
        CopyVerdict verdict = verdict(roll, scene.shuttle);
        assertThat(verdict.verdict().name()).isEqualTo("PROVEN");
        assertThat(nameOfPart(verdict.evidencePartId())).isEqualTo(SECOND);

        Document second = page(memberOf(archive, SECOND));
        assertThat(second.select("section:has(#came-title)").text())
                .contains("Generation 2 in R001.zip", "nothing speaks against it");
        assertThat(second.select("#assigned").text()).contains("the copy of R001 on SHUTTLE-1");
        assertThat(scene.see("documents").select("tbody tr").eachText())
                .anySatisfy(row -> assertThat(row).contains("R001.zip", "opened: 2 manifests"))
                .anySatisfy(row -> assertThat(row).contains(SECOND, "generation 2 in R001.zip"));
    }

    @Test
    void theArchiveIsKeptByteForByte() throws Exception {
        byte[] sent = zip(history());
        UUID archive = sendAndRead("", sent);
        byte[] got = scene.get("documents/" + archive + "/content", Role.READER)
                .getResponse()
                .getContentAsByteArray();
        assertThat(got).isEqualTo(sent);
        assertThat(scene.get("documents/" + memberOf(archive, FIRST) + "/content", Role.READER)
                        .getResponse()
                        .getContentAsByteArray())
                .isEqualTo(example(FIRST));
    }

    @Test
    void theSameArchiveTwiceChangesNothing() throws Exception {
        UUID first = sendAndRead("", zip(history()));
        long before = documents.count(scene.production.id);
        MvcTestResult again = send("", zip(history()));
        jobs.run();
        assertThat(scene.documentOf(again)).isEqualTo(first);
        assertThat(sentence(scene.told(again))).startsWith("1 was here already and changes nothing.");
        assertThat(documents.count(scene.production.id)).isEqualTo(before);
        assertThat(jdbc.sql("select count(*) from verification_archive_member where archive_id = ?")
                        .param(first)
                        .query(Long.class)
                        .single())
                .isEqualTo(2);
    }

    @Test
    void aGenerationThatWasSentBeforeIsTheSameDocument() throws Exception {
        scene.roll("R001");
        UUID alone = scene.documentOf(scene.send(Role.WRANGLER, scene.vault.toString(), file(FIRST, example(FIRST))));
        jobs.run();
        UUID archive = sendAndRead(scene.shuttle.toString(), zip(history()));
        assertThat(memberOf(archive, FIRST)).isEqualTo(alone);
        assertThat(page(archive).select("main").text()).contains("was here before");
        assertThat(page(alone).select("#assigned").text())
                .as("what it describes isn't said anew")
                .contains("VAULT-1")
                .doesNotContain("SHUTTLE-1");
    }

    @Test
    void aGenerationThatIsNotWhatTheChainSaysCountsOnlyOnceAPersonSaysSo() throws Exception {
        UUID roll = scene.roll("R001");
        scene.sendOne("CARD", "R001_card.xxh64", CARD);
        Map<String, byte[]> files = history();
        files.compute(
                "R001_CU01/ascmhl/" + SECOND,
                (path, content) -> text(new String(content, StandardCharsets.UTF_8) + "\n"));
        UUID archive = sendAndRead(scene.shuttle.toString(), zip(files));
        assertThat(sentence(page(archive))).contains("1 has other bytes than are recorded of it", "1 part waits");

        CopyVerdict before = verdict(roll, scene.shuttle);
        assertThat(nameOfPart(before.evidencePartId())).isEqualTo(FIRST);
        UUID member = memberOf(archive, SECOND);
        Document page = page(member);
        assertThat(page.select("section:has(#came-title)").text())
                .contains("other bytes than are recorded of it", "it counts only once somebody");
        assertThat(page.select("#waiting")).hasSize(1);

        MvcTestResult confirmed = scene.submit(
                page.selectFirst("#waiting form[action$=/confirm]"), Map.of("describes", scene.shuttle.toString()));
        assertThat(confirmed).hasStatus3xxRedirection();
        jobs.run();
        assertThat(nameOfPart(verdict(roll, scene.shuttle).evidencePartId())).isEqualTo(SECOND);
    }

    @Test
    void aMissingGenerationIsSaid() throws Exception {
        Map<String, byte[]> files = history();
        files.remove("R001_CU01/ascmhl/" + FIRST);
        UUID archive = sendAndRead("", zip(files));
        Document page = page(archive);
        assertThat(sentence(page)).contains("2 manifests belong to it.", "1 is missing.");
        assertThat(page.select("section:has(#members-title) tbody tr").first().text())
                .as("what is wrong comes first")
                .contains(FIRST, "missing");
        assertThat(scene.told(send("", zip(files))).select("tbody").text())
                .contains("opened: 2 manifests, 1 of them with something wrong");
    }

    @Test
    void theManifestsOfABagSpeakTogether() throws Exception {
        UUID roll = scene.roll("A001");
        scene.sendOne("CARD", "card.sha1", ABC_SHA1 + "  A001/one.mxf\n");
        String md5 = ABC_MD5 + "  data/A001/one.mxf\n";
        UUID archive = sendAndRead(
                scene.shuttle.toString(),
                zip(new LinkedHashMap<>(Map.of(
                        "bag/bagit.txt", text(DECLARATION),
                        "bag/manifest-md5.txt", text(md5),
                        "bag/manifest-sha1.txt", text(ABC_SHA1 + "  data/A001/one.mxf\n")))));
        assertThat(evidence.ofRoll(scene.production.id, roll).stream()
                        .filter(piece -> piece.copyId() != null)
                        .map(Evidence.Piece::statementId)
                        .distinct())
                .hasSize(1);
        CopyVerdict verdict = verdict(roll, scene.shuttle);
        assertThat(verdict.verdict().name()).isEqualTo("PROVEN");
        assertThat(nameOfPart(verdict.evidencePartId())).isEqualTo("manifest-md5.txt");
        Document page = page(archive);
        assertThat(page.select("section:has(#findings-title)").text())
                .contains("The archive holds no payload", "The bag has no tag manifest");
        assertThat(page.select("main").text()).contains("Bag, zipped");
    }

    @Test
    void aBagBeforeVersionOneIsReadByItsOwnRule() throws Exception {
        UUID roll = scene.roll("A001");
        scene.sendOne("CARD", "card.md5", "# card\n" + ABC_MD5 + "  A001/a%25.mxf\n");
        Map<String, byte[]> bag = new LinkedHashMap<>();
        bag.put("bagit.txt", text(DECLARATION.replace("1.0", "0.97")));
        bag.put("manifest-md5.txt", text(ABC_MD5 + "  data/A001/a%25.mxf\n" + ABC_MD5 + "  data/B%25/b.mxf\n"));
        UUID archive = sendAndRead(scene.shuttle.toString(), zip(bag));
        assertThat(page(memberOf(archive, "manifest-md5.txt"))
                        .select("#waiting code")
                        .eachText())
                .containsExactly("B%25");
        CopyVerdict verdict = verdict(roll, scene.shuttle);
        assertThat(verdict.verdict().name()).isEqualTo("PROVEN");
        assertThat(verdict.counts().same()).isOne();
    }

    @Test
    void theManifestsOfABagContradictWithEither() throws Exception {
        UUID roll = scene.roll("A001");
        scene.sendOne("CARD", "card.md5", ABC_MD5 + "  A001/one.mxf\n");
        // Right by SHA-1, which the card's list doesn't have, and wrong by MD5, which it has.
        sendAndRead(
                scene.shuttle.toString(),
                zip(new LinkedHashMap<>(Map.of(
                        "bagit.txt", text(DECLARATION),
                        "manifest-md5.txt", text(DocumentScene.EMPTY_MD5 + "  data/A001/one.mxf\n"),
                        "manifest-sha1.txt", text(ABC_SHA1 + "  data/A001/one.mxf\n")))));
        assertThat(verdict(roll, scene.shuttle).verdict().name()).isEqualTo("FAILED");
    }

    @Test
    void aBagZippedTwiceIsStillOneStatementForTwoCopies() throws Exception {
        UUID roll = scene.roll("A001");
        scene.sendOne("CARD", "card.md5", "# card\n" + ABC_MD5 + "  A001/one.mxf\n");
        Map<String, byte[]> bag = new LinkedHashMap<>();
        bag.put("bagit.txt", text(DECLARATION));
        bag.put("manifest-md5.txt", text(ABC_MD5 + "  data/A001/one.mxf\n"));
        sendAndRead(scene.shuttle.toString(), zip(bag));
        bag.put("bag-info.txt", text("Contact-Name: Another zip\n"));
        UUID second = sendAndRead(scene.vault.toString(), zip(bag));
        assertThat(copies.ofRoll(scene.production.id, roll))
                .as("the manifest is known already, for the first copy")
                .hasSize(1);
        assertThat(page(second).select("main").text()).contains("was here before");
    }

    @Test
    void brokenArchivesAreRejectedWithAReasonAndLeaveNothingBut() throws Exception {
        byte[] whole = zip(history());
        Map<String, byte[]> slip = history();
        slip.put("../../x.md5", text(ABC_MD5 + "  x\n"));
        byte[] crc = whole.clone();
        // The CRC of the last file in the directory: it is found in the middle of opening, after others were stored.
        int directory = ByteBuffer.wrap(whole).order(ByteOrder.LITTLE_ENDIAN).getInt(whole.length - 6);
        crc[directory + 16] ^= 1;
        Map<String, byte[]> traps = new LinkedHashMap<>();
        traps.put("damaged or cut off", Arrays.copyOf(whole, whole.length - 10));
        traps.put("leads elsewhere", zip(slip));
        traps.put("A file in the zip archive is damaged", crc);
        traps.put("holds no manifest", zip(Map.of("clip.mxf", new byte[9])));
        traps.put("holds another one", zip(Map.of("a.zip", zip(history()))));
        traps.put("more than 200 times", zip(Map.of("a.md5", new byte[8 << 20])));
        for (Map.Entry<String, byte[]> trap : traps.entrySet()) {
            long before = documents.count(scene.production.id);
            MvcTestResult sent = send("CARD", trap.getValue());
            UUID id = scene.documentOf(sent);
            jobs.run();
            assertThat(sentence(page(id)))
                    .as(trap.getKey())
                    .startsWith("Rejected: ")
                    .contains(trap.getKey());
            assertThat(scene.told(sent).select("tbody").text()).contains("rejected: look why");
            assertThat(documents.count(scene.production.id)).isEqualTo(before + 1);
        }
        assertThat(scene.see("documents").select("tbody tr").eachText()).allMatch(row -> row.contains("rejected"));
    }

    @Test
    void namesOfMembersAreHarmless() throws Exception {
        UUID archive = sendAndRead(
                "", zip(Map.of("<script>alert(1)</script>/a\u202Eb.md5", text(ABC_MD5 + "  A001/x.mxf\n"))));
        Document page = page(archive);
        assertThat(page.select("main script")).isEmpty();
        assertThat(page.select("main").text()).contains("<script>alert(1)</script>/a\\u{202e}b.md5");
    }

    @Test
    void anArchiveIsUnknownInAnotherProductionAndItsPageTakesFewStatements() throws Exception {
        UUID archive = sendAndRead("", zip(history()));
        TestProduction other = fixtures.production();
        assertThat(mvc.get().uri(other.path("documents/" + archive)).with(other.signedInAs(Role.ADMINISTRATOR)))
                .hasStatus(404);
        for (UUID document : List.of(archive, memberOf(archive, FIRST))) {
            assertThat(statements.during(() -> page(document))).isLessThanOrEqualTo(12);
        }
    }

    @Test
    void theFormSaysThatFoldersMayBeSentZipped() throws Exception {
        assertThat(scene.see("documents").select("#file-hint").text()).contains("zip", "ascmhl folder", "bag");
    }
}
