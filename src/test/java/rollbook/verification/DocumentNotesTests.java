package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static rollbook.verification.DocumentScene.sentence;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.offload.Rolls;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

/** What an ASC MHL hash list says beside its files, as its page shows it. */
@PortalTest
class DocumentNotesTests {
    private static final String GENERATION = "0001_R001_CU01_2026-03-04_180512Z.mhl";
    private static final String CREATOR = "<creatorinfo><creationdate>2026-03-04T18:05:12Z</creationdate>"
            + "<hostname>cart</hostname><tool version=\"0.1\">writer</tool></creatorinfo>";
    private static final String ROOT = "<hashlist xmlns=\"urn:ASC:MHL:v2.0\" version=\"2.0\">";

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DocumentNotes notes;

    private DocumentScene scene;

    @BeforeEach
    void makeProduction() {
        scene = new DocumentScene(fixtures, mvc, rolls);
    }

    @Test
    void whatAHashListSaysOfItsMakingIsShown() throws Exception {
        String people = CREATOR.replace(
                "</creatorinfo>",
                "<author role=\"loader\" email=\"a@b.example\">Ann</author><location>Stage 3</location></creatorinfo>");
        Document page = read(example().replaceFirst("(?s)<creatorinfo>.*</creatorinfo>", people));

        assertThat(page.select("dl.facts").text())
                .contains(
                        "Written by writer 0.1",
                        "Author: Ann, loader, a@b.example",
                        "Location: Stage 3",
                        "Left out by its patterns: .DS_Store, ascmhl/",
                        "Directory hashes agree with the files listed: 2.");
        assertThat(page.select("#remarks")).isEmpty();
    }

    @Test
    void aDirectoryHashThatDiffersByNamesIsToldApartFromDamage() throws Exception {
        Document page = read(example().replace("ec1bc9dde64d5d27", "ef23ac02467b1720"));

        assertThat(page.select("#remarks").text())
                .contains(
                        "Directory hashes differ by names alone: 1, first in line 33: Clips (XXH64).",
                        "No file is damaged");
        assertThat(sentence(page)).startsWith("1 of 1 part waits");
    }

    @Test
    void whatDepartsFromTheStandardIsSaid() throws Exception {
        Document page = read(example().replace("R001_report.txt", "ascmhl/report.txt"));

        assertThat(page.select("#remarks li").eachText())
                .containsExactly(
                        "Files are listed that the document’s own patterns leave out: 1, first in line 42: ascmhl/report.txt",
                        "Directory hashes don’t agree with the files listed: 1, first in line 11: . (XXH64). The document "
                                + "doesn’t list all files below, or it was changed. Files are judged by digests of their own.");
    }

    @Test
    void aHashListThatOnlyRefersToOthersProvesNothing() throws Exception {
        String reference = "<references><hashlistreference><path>A001/ascmhl/0001.mhl</path><c4>c4" + "1".repeat(88)
                + "</c4></hashlistreference></references>";
        Document page = read(
                ROOT + CREATOR + "<processinfo><process>in-place</process></processinfo>" + reference + "</hashlist>");

        assertThat(sentence(page))
                .isEqualTo(
                        "It lists no file itself, it only refers to 1 further hash list. Nothing is proven by it: send "
                                + "that one too.");
        assertThat(page.select("dl.facts").text()).contains("Refers to A001/ascmhl/0001.mhl", "no file in no part");
    }

    @Test
    void aHostileNoteCannotWriteIntoThePage() throws Exception {
        Document page = read(example().replace("example-writer", "&lt;script&gt;{0}&lt;/script&gt;{9}'"));

        assertThat(page.select("dl.facts").text()).contains("Written by <script>{0}</script>{9}' 0.1");
        assertThat(page.select("script:not([src])")).isEmpty();
    }

    @Test
    void directoriesAreCheckedOnceAndNotesStay() throws Exception {
        UUID document = scene.sendOne("", GENERATION, example());
        jobs.run();
        int before = count(document);
        notes.checkDirectories(document);

        assertThat(count(document)).isEqualTo(before);
        assertThatExceptionOfType(DataAccessException.class)
                .isThrownBy(() -> jdbc.sql("delete from verification_note where document_id = ?")
                        .param(document)
                        .update());
    }

    private int count(UUID document) {
        return jdbc.sql("select count(*) from verification_note where document_id = ?")
                .param(document)
                .query(Integer.class)
                .single();
    }

    private Document read(String content) throws Exception {
        UUID document = scene.sendOne("", GENERATION, content);
        jobs.run();
        return scene.see("documents/" + document);
    }

    private static String example() throws Exception {
        String name = "/manifest/examples/R001_CU01/ascmhl/" + GENERATION;
        try (InputStream in = Objects.requireNonNull(DocumentNotesTests.class.getResourceAsStream(name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
