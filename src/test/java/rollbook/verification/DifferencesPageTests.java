package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

@PortalTest
class DifferencesPageTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Rolls rolls;

    @Autowired
    Verdicts verdicts;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private DocumentScene scene;
    private UUID roll;

    @BeforeEach
    void makeScene() throws Exception {
        scene = new DocumentScene(fixtures, mvc, rolls);
        roll = scene.roll("A014");
        send("CARD", "card.md5", frames(1_000, 1_200, 0, 0) + file("A014/A014C002.mxf", 0));
    }

    @Test
    void missingFramesAreOneSentenceWithTheMediaThatHoldThem() throws Exception {
        send(
                scene.shuttle.toString(),
                "s.md5",
                "# s\n" + frames(1_000, 1_200, 1_043, 1_187) + file("A014/A014C002.mxf", 1));
        send(scene.vault.toString(), "v.md5", "# v\n" + frames(1_000, 1_200, 0, 0) + file("A014/A014C002.mxf", 2));

        Document page = scene.see(address("SHUTTLE-1"));
        assertThat(DocumentScene.sentence(page))
                .isEqualTo("146 files on SHUTTLE-1 must be copied again. Good versions are known.");
        assertThat(page.select("section h2").eachText()).startsWith("A014C001", "A014C002");
        assertThat(page.select(".lines > li").eachText())
                .containsExactly(
                        "Frames 1043–1187 of A014C001 are missing on SHUTTLE-1."
                                + " Good on VAULT-1 (Set), the card CARD-A014. A014C001/A014C001.#######.dpx",
                        "A014C002.mxf has other bytes on SHUTTLE-1. Good on the card CARD-A014. A014C002.mxf");
    }

    @Test
    void aCopyThatWasErasedHoldsNoGoodVersion() throws Exception {
        send(scene.shuttle.toString(), "s.md5", "# s\n" + frames(1_000, 1_200, 0, 0) + file("A014/A014C002.mxf", 1));
        send(scene.vault.toString(), "v.md5", "# v\n" + frames(1_000, 1_200, 0, 0) + file("A014/A014C002.mxf", 0));
        String line = "A014C002.mxf has other bytes on SHUTTLE-1. Good on ";
        assertThat(scene.see(address("SHUTTLE-1")).select(".lines > li").text())
                .startsWith(line + "VAULT-1 (Set), the card CARD-A014.");

        jdbc.sql("update offload_copy set erased_at = now() where item_id = ?")
                .param(scene.vault)
                .update();
        assertThat(scene.see(address("SHUTTLE-1")).select(".lines > li").text())
                .startsWith(line + "the card CARD-A014.");
    }

    @Test
    void whatIsGoodNowhereIsSaidInPlainWords() throws Exception {
        send(scene.shuttle.toString(), "s.md5", "# s\n" + frames(1_000, 1_200, 0, 0) + file("A014/A014C002.mxf", 1));
        jdbc.sql(
                        "update inventory_item set card_state = 'BLANK' where id = (select card_id from offload_roll where id = ?)")
                .param(roll)
                .update();

        Document page = scene.see(address("SHUTTLE-1"));
        assertThat(DocumentScene.sentence(page)).endsWith("1 file is good nowhere that is known.");
        assertThat(page.select(".error").text()).isEqualTo("A good version is known nowhere.");
    }

    @Test
    void theFilesToCopyAgainAreListsThatToolsTake() throws Exception {
        send(
                scene.shuttle.toString(),
                "s.md5",
                "# s\n" + frames(1_000, 1_200, 1_043, 1_044) + file("A014/A014C002.mxf", 0));
        String address = address("SHUTTLE-1");

        MvcTestResult list = scene.get(address + "/again/checksums/MD5", Role.READER);
        assertThat(list).hasStatusOk();
        assertThat(list.getResponse().getHeader(HttpHeaders.CONTENT_DISPOSITION))
                .contains("attachment", "A014-SHUTTLE-1-again.md5");
        assertThat(list.getResponse().getContentAsString())
                .isEqualTo((frame(1_043) + frame(1_044)).replace("A014/", ""));
        assertThat(scene.get(address + "/again/paths", Role.READER)
                        .getResponse()
                        .getContentAsString())
                .isEqualTo("A014C001/A014C001.0001043.dpx\nA014C001/A014C001.0001044.dpx\n");
        assertThat(scene.get(address + "/again/paths0", Role.READER)
                        .getResponse()
                        .getContentAsString())
                .isEqualTo("A014C001/A014C001.0001043.dpx\0A014C001/A014C001.0001044.dpx\0");
        assertThat(scene.get(address + "/again/checksums/SHA1", Role.READER)).hasStatus(404);
        assertThat(scene.get(address + "/again/checksums/nothing", Role.READER)).hasStatus(404);
        assertThat(scene.see(address).select(".actions a").eachText())
                .containsExactly("Files to copy again, MD5 (2)", "Their paths (2)", "Paths ended by NUL");
    }

    @Test
    void countsStayExactWhereNotAllDifferencesAreKeptAndThatIsSaid() throws Exception {
        send(scene.shuttle.toString(), "s.md5", "# s\n" + frames(1_000, 1_000, 0, 0) + frames(2_000, 12_100, 0, 0));

        Document page = scene.see(address("SHUTTLE-1"));
        assertThat(DocumentScene.sentence(page)).startsWith("201 files on SHUTTLE-1 must be copied again.");
        assertThat(page.text()).contains("302 more files that don’t agree were counted but not kept");
        assertThat(page.text()).contains("Frames 2000–");
    }

    @Test
    void anEarlierVerdictLeadsToTheNewest() throws Exception {
        send(scene.shuttle.toString(), "s.md5", "# s\n" + frames(1_000, 1_100, 0, 0));
        String earlier = address("SHUTTLE-1");
        send(
                scene.shuttle.toString(),
                "s2.md5",
                "# again\n" + frames(1_000, 1_200, 0, 0) + file("A014/A014C002.mxf", 0));

        assertThat(scene.see(earlier).text()).contains("This is an earlier verdict. The newest one: proven");
        assertThat(DocumentScene.sentence(scene.see(address("SHUTTLE-1")))).isEqualTo("Every file agrees.");
    }

    @Test
    void thePageTakesFewStatements() throws Exception {
        send(scene.shuttle.toString(), "s.md5", "# s\n" + frames(1_000, 1_100, 0, 0));
        send(scene.vault.toString(), "v.md5", "# v\n" + frames(1_000, 1_100, 0, 0));
        String address = address("SHUTTLE-1");
        assertThat(statements.during(() -> scene.see(address))).isLessThanOrEqualTo(8);
    }

    /** Where the newest verdict on the copy on that medium is shown. */
    private String address(String itemCode) {
        long verdict = jdbc.sql("""
                        select max(v.id) from verification_verdict v join offload_copy c on c.id = v.copy_id
                        join inventory_item i on i.id = c.item_id where i.code = ? and v.roll_id = ?
                        """).params(itemCode, roll).query(Long.class).single();
        return "rolls/" + roll + "/verdicts/" + verdict;
    }

    private void send(String describes, String name, String content) throws Exception {
        scene.sendOne(describes, name, content);
        jobs.run();
    }

    private static String frames(int first, int last, int outFrom, int outTo) {
        StringBuilder list = new StringBuilder();
        for (int frame = first; frame <= last; frame++) {
            if (frame < outFrom || frame > outTo) {
                list.append(frame(frame));
            }
        }
        return list.toString();
    }

    private static String frame(int number) {
        return "%032x  A014/A014C001/A014C001.%07d.dpx\n".formatted(number, number);
    }

    private static String file(String path, int content) {
        return "f%031x  %s\n".formatted(content, path);
    }
}
