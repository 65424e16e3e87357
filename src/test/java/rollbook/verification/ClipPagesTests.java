package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

@PortalTest
class ClipPagesTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    ClipSearch search;

    @Autowired
    JdbcClient jdbc;

    private DocumentScene scene;

    @BeforeEach
    void makeScene() {
        scene = new DocumentScene(fixtures, mvc, rolls);
    }

    @Test
    void aClipIsFoundByItsNameWithItsRollAndTheCopiesThatHoldIt() throws Exception {
        UUID roll = scene.roll("A014");
        send("CARD", "card.md5", list("A014", 1, 2, 3));
        send(scene.shuttle.toString(), "shuttle.md5", "# shuttle\n" + list("A014", 1, 2, 3));
        send(scene.vault.toString(), "vault.md5", "# vault\n" + list("A014", 1, 2));

        Document page = scene.see("clips?q=a014_c003");
        assertThat(DocumentScene.sentence(page)).isEqualTo("A014C003 belongs to roll A014 and is on 1 proven copy.");
        assertThat(page.select("tbody tr").eachText())
                .singleElement()
                .asString()
                .contains("A014C003", "Day 1", "SHUTTLE-1 proven", "VAULT-1 incomplete", "not in a list of it");
        assertThat(page.select("tbody a[href$=/rolls/" + roll + "]")).hasSize(1);
        assertThat(scene.see("clips?q=A014C").select("tbody tr")).hasSize(3);
        assertThat(scene.see("clips").select("tbody tr")).hasSize(3);
        assertThat(DocumentScene.sentence(scene.see("clips?q=B"))).isEqualTo("No list that was sent names a clip B.");
        assertThat(scene.see("clips?q=A014C003_260301_R1AB.mov").select("tbody tr"))
                .hasSize(1);
    }

    @Test
    void aCopyThatWasErasedIsNotNamedAmongThoseThatHoldTheClip() throws Exception {
        scene.roll("A014");
        send("CARD", "card.md5", list("A014", 1));
        send(scene.shuttle.toString(), "shuttle.md5", "# shuttle\n" + list("A014", 1));
        jdbc.sql("update offload_copy set erased_at = now() where item_id = ?")
                .param(scene.shuttle)
                .update();

        Document page = scene.see("clips?q=A014C001");
        assertThat(DocumentScene.sentence(page)).isEqualTo("A014C001 belongs to roll A014 and is on no proven copy.");
        assertThat(page.select("tbody").text()).contains("A014C001").doesNotContain("SHUTTLE-1");
    }

    @Test
    void theCodeBoxTakesClipsAndTheNamesOfTheirFiles() throws Exception {
        scene.roll("A014");
        send("CARD", "card.md5", list("A014", 1));
        for (String typed : List.of("a014c001", "A014C001_x.mxf")) {
            assertThat(scene.get("find?code=" + typed, Role.READER))
                    .as(typed)
                    .hasStatus3xxRedirection()
                    .redirectedUrl()
                    .endsWith("clips?q=" + typed);
        }
    }

    @Test
    void aClipWhoseDocumentNobodyAssignedLeadsToTheDocument() throws Exception {
        String document = scene.sendOne("", "loose.md5", list("Z009", 1)).toString();
        jobs.run();
        assertThat(scene.see("clips?q=Z009").select("tbody a[href$=" + document + "]"))
                .hasSize(1);
    }

    @Test
    void theNamesOfManyClipsComeInPages() throws Exception {
        scene.roll("A014");
        int[] clips = new int[ClipSearch.MOST + 7];
        for (int i = 0; i < clips.length; i++) {
            clips[i] = i + 1;
        }
        send("CARD", "card.md5", list("A014", clips));
        Document first = scene.see("clips?q=A014");
        assertThat(first.select("tbody tr")).hasSize(ClipSearch.MOST);
        String next = first.select("a[rel=next]").attr("href");
        Document second = scene.see(next.substring(scene.production.path("").length()));
        assertThat(second.select("tbody tr")).hasSize(7);
        assertThat(second.select("tbody th").first().text()).isEqualTo("A014C%03d".formatted(ClipSearch.MOST + 1));
        assertThat(second.select("a[rel=next]")).isEmpty();
    }

    @Test
    void aRollsPageSaysWhatToLookAtWithRangesAndKeepsSystemFilesApart() throws Exception {
        UUID first = scene.roll("A014");
        UUID second = scene.roll("A015");
        StringBuilder card = new StringBuilder();
        for (int frame = 1; frame <= 40; frame++) {
            if (frame < 11 || frame > 13) {
                card.append(line("A014/A014C001/A014C001.%07d.dpx".formatted(frame)));
            }
        }
        card.append(line("A014/.DS_Store")).append(line("A014/A015C001.mxf"));
        send("CARD", "card.md5", card.toString());
        send("CARD", "other.md5", list("A015", 1));

        Document page = scene.see("rolls/" + first + "/clips");
        assertThat(page.select("#warnings").text())
                .contains(
                        "3 frames are left out of a sequence. A014C001/A014C001.0000011–0000013.dpx",
                        "called by another roll’s code",
                        "A015C001 → A015",
                        "1 clip is listed for another roll too");
        assertThat(page.select("#warnings details").text()).contains("1 file is hidden", ".DS_Store");
        assertThat(page.select("tbody tr").first().text()).contains("A014C001", "37", "1–40", "3 missing", "11–13");
        assertThat(scene.see("rolls/" + second + "/clips").select("#warnings").text())
                .contains("A015C001 → A014");
        assertThat(scene.see("rolls/" + first).select("a[href$=/clips]")).isNotEmpty();
        assertThat(jdbc.sql("select gaps from verification_clip where production_id = ? and clip = 'A014C001'")
                        .param(scene.production.id)
                        .query(String.class)
                        .single())
                .isEqualTo("11–13");
    }

    @Test
    void aRollWhoseBytesDontFitItsMinutesSaysSo() throws Exception {
        UUID roll = scene.roll("A014");
        send("CARD", "card.mhl", mhl(1_000_000_000_000L));
        // Ten minutes at 24 MB/s are 14.4 GB; the card holds 1 TB.
        assertThat(scene.see("rolls/" + roll + "/clips").select("#warnings").text())
                .contains("but 10.0 minutes make 14.4 GB")
                .doesNotContain("holds only");
        UUID other = scene.roll("A015");
        send("CARD", "card2.mhl", mhl(1_000_000_000_001L).replace("A014", "A015"));
        assertThat(scene.see("rolls/" + other + "/clips").select("#warnings").text())
                .contains("but CARD-A015 holds only 1.00 TB");
    }

    /** 200 days of 500 clips, each listed by the card and two copies. */
    @Test
    void theSearchGoesByTheIndexAmongAllClipsOfALongShow() {
        TestProduction production = scene.production;
        UUID person = scene.wrangler.personId();
        jdbc.sql("""
                        with day as (select n, gen_random_uuid() as document from generate_series(1, 600) n),
                        documents as (
                            insert into verification_document (id, production_id, sha256, file_name, size_bytes, uploaded_at, uploaded_by)
                            select document, :production, sha256(document::text::bytea), 'day ' || n, 1, now(), :person from day
                            returning id),
                        parts as (
                            insert into verification_part (id, production_id, document_id, folder, entries, size_bytes, position)
                            select document, :production, document, '', 500, 1, 0 from day returning id)
                        insert into verification_clip (part_id, production_id, clip, folder, files, missing_frames, gaps)
                        select document, :production, to_char(n % 200, '"A"FM000') || to_char(c, '"C"FM000'), '', 1, 0, ''
                        from day cross join generate_series(1, 500) c
                        """).param("production", production.id).param("person", person).update();
        jdbc.sql("analyze verification_clip").update();
        List<String> plan = jdbc.sql("explain analyze " + ClipSearch.SEARCH)
                .param("production", production.id)
                .param("from", "A137C25")
                .param("to", "A137C25\uffff")
                .param("most", 51)
                .query(String.class)
                .list();

        assertThat(plan).anyMatch(line -> line.contains("verification_clip_name_ix"));
        assertThat(plan).noneMatch(line -> line.contains("Seq Scan on verification_clip"));
        assertThat(search.find(production.id, "A137C25", "").clips())
                .extracting(ClipSearch.Found::clip)
                .startsWith("A137C250")
                .endsWith("A137C259")
                .doesNotHaveDuplicates();
    }

    @Test
    void anotherProductionsClipsAreNotFound() throws Exception {
        scene.roll("A014");
        send("CARD", "card.md5", list("A014", 1));
        DocumentScene other = new DocumentScene(fixtures, mvc, rolls);
        assertThat(other.see("clips?q=A014").select("tbody tr")).isEmpty();
    }

    @Test
    void summariesOfClipsAreEvidence() throws Exception {
        scene.roll("A014");
        send("CARD", "card.md5", list("A014", 2));
        for (String table : List.of("verification_clip", "verification_part_warning")) {
            for (String change :
                    List.of("delete from " + table, "update " + table + " set production_id = production_id")) {
                assertThat(org.assertj.core.api.Assertions.catchThrowable(
                                () -> jdbc.sql(change).update()))
                        .as(change)
                        .hasMessageContaining("evidence");
            }
        }
    }

    private void send(String describes, String name, String content) throws Exception {
        scene.sendOne(describes, name, content);
        jobs.run();
    }

    private static String list(String roll, int... clips) {
        StringBuilder list = new StringBuilder();
        for (int clip : clips) {
            list.append(line("%s/%sC%03d_x.mxf".formatted(roll, roll, clip)));
        }
        return list.toString();
    }

    private static String line(String path) {
        return "%032x  %s\n".formatted(path.hashCode() & 0xffffffffL, path);
    }

    private static String mhl(long sizeBytes) {
        return """
                <?xml version="1.0" encoding="UTF-8"?>
                <hashlist version="2.0" xmlns="urn:ASC:MHL:v2.0">
                <creatorinfo><creationdate>2031-03-03T12:00:00+00:00</creationdate><hostname>cart</hostname><tool>t</tool></creatorinfo>
                <processinfo><process>in-place</process></processinfo>
                <hashes><hash><path size="%d">A014/A014C001.mxf</path><md5 action="original">900150983cd24fb0d6963f7d28e17f72</md5></hash></hashes>
                </hashlist>
                """.formatted(sizeBytes);
    }
}
