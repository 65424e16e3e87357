package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.verification.EvidenceScene.DIGEST_1;
import static rollbook.verification.EvidenceScene.DIGEST_2;
import static rollbook.verification.EvidenceScene.OTHER_1;
import static rollbook.verification.EvidenceScene.OTHER_2;
import static rollbook.verification.EvidenceScene.list;
import static rollbook.verification.EvidenceScene.mhl;

import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

/** A roll's page tells how each copy came to its verdict, and what became of its encoding. */
@PortalTest
class RollHistoryTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Copies copies;

    @Autowired
    Jobs jobs;

    @Autowired
    Verdicts verdicts;

    @Autowired
    Assignments assignments;

    @Autowired
    Documents documents;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private EvidenceScene scene;
    private UUID roll;

    @BeforeEach
    void makeARoll() {
        scene = new EvidenceScene(fixtures, mvc, rolls, copies, jobs, verdicts, jdbc);
        roll = scene.roll("A001");
    }

    @Test
    void aCardManifestThatComesAfterTheCopiesJudgesThemAllAgainAndThePageTellsIt() throws Exception {
        scene.send(scene.shuttle, "shuttle.md5", list("shuttle", "SHUTTLE/A001", DIGEST_1, DIGEST_2));
        scene.send(scene.vault, "vault.md5", list("vault", "VAULT/A001", DIGEST_1, DIGEST_2));
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.CONSISTENT);
        scene.send("CARD", "card.md5", list("card", "A001", DIGEST_1, DIGEST_2));

        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.verdictOn(roll, scene.vault).verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(verdicts.history(scene.production.id, roll))
                .as("appended, none replaced")
                .hasSize(4);

        List<String> shuttle = story(scene.see("rolls/" + roll), "Copy on SHUTTLE-1");
        assertThat(shuttle).hasSize(2);
        assertThat(shuttle.get(0))
                .contains("consistent", "The first document that speaks of it", "No hash from the card", "shuttle.md5");
        assertThat(shuttle.get(1))
                .contains(
                        "proven",
                        "arrived",
                        "compared with the card’s card.md5 sent by",
                        "2 files, all with the same hash");
    }

    @Test
    void aCorrectionIsToldWithItsAuthorAndReasonAndStaysOnThePage() throws Exception {
        scene.send("CARD", "card.md5", list("card", "A001", DIGEST_1, DIGEST_2));
        scene.send(scene.shuttle, "wrong.md5", list("vault", "X/A001", DIGEST_1, DIGEST_2));
        UUID document = documents.newest(scene.production.id, 0, 1).get(0).id();
        PartView part = partOf(document);
        assignments.assign(
                scene.production.as(Role.POST),
                part.id(),
                new Assignments.Statement(
                        Subject.COPY, roll, scene.vault, part.current().get(0).id(), "It was read from VAULT-1"),
                part.newestSeen());
        jobs.run();

        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.UNKNOWN);
        Document page = scene.see("rolls/" + roll);
        assertThat(story(page, "Copy on SHUTTLE-1").get(1))
                .contains("unknown", "wrong.md5 no longer speaks of it", "“It was read from VAULT-1”");
        assertThat(story(page, "Copy on VAULT-1")).hasSize(1);
        assertThat(page.select("s").eachText()).contains("the copy of A001 on SHUTTLE-1");
    }

    @Test
    void aCopyOfWhichNoDocumentSpeaksSaysSo() throws Exception {
        UUID copy = UUID.randomUUID();
        jdbc.sql("""
                        insert into offload_copy (id, production_id, roll_id, item_id, rendition, written_from, created_at)
                        values (?, ?, ?, ?, 'AS_RECORDED', now(), now())
                        """).params(copy, scene.production.id, roll, scene.shuttle).update();
        Element heading = scene.see("rolls/" + roll).selectFirst("h3:contains(Copy on SHUTTLE-1)");
        assertThat(heading).isNotNull();
        assertThat(heading.nextElementSibling().text()).isEqualTo("No document speaks of this copy yet.");
    }

    @Test
    void thePageSaysWhetherTheEncodingIsProvenAndWhatItLeaves() throws Exception {
        for (int i = 2; i <= 6; i++) {
            scene.roll("A00" + i);
            scene.send("CARD", "c" + i, mhl("cart", "in-place", "original", "A00" + i, 1_000, DIGEST_1, DIGEST_2));
            scene.send(
                    "ENCODED_OUTPUT", "e" + i, mhl("coder", "in-place", "original", "A00" + i, 600, OTHER_1, OTHER_2));
        }
        scene.send("CARD", "card.mhl", mhl("cart", "in-place", "original", "A001", 1_000, DIGEST_1, DIGEST_2));
        scene.send("ENCODED_OUTPUT", "out.mhl", mhl("coder", "in-place", "original", "A001", 990, OTHER_1, OTHER_2));
        Document before = scene.see("rolls/" + roll);
        assertThat(encoding(before))
                .contains(
                        "Not shown yet that decoding gives",
                        "0.990 of what was recorded",
                        "Look: far from what this show’s encoding leaves, 0.600 give or take 0.0300 (median of 5 other rolls)");
        UUID second =
                rolls.findByCode(scene.production.id, "A002").orElseThrow().id();
        assertThat(encoding(scene.see("rolls/" + second)))
                .contains("0.600 of what was recorded")
                .doesNotContain("Look");

        scene.send("DECODED", "decoded.md5", list("decoded", "A001", DIGEST_1, DIGEST_2));
        Document after = scene.see("rolls/" + roll);
        assertThat(encoding(after)).contains("2 decoded files have the same hash as on the card");
        assertThat(story(after, "Decoded files, for the encoding")).hasSize(1);
        assertThat(statements.during(() -> scene.see("rolls/" + roll))).isLessThanOrEqualTo(12);
    }

    private static String encoding(Document page) {
        Element section = page.selectFirst("section[aria-labelledby=encoding-title]");
        assertThat(section).isNotNull();
        return section.text();
    }

    private static List<String> story(Document page, String title) {
        return page.select("h3:containsOwn(" + title + ") + table tbody tr").eachText();
    }

    private PartView partOf(UUID document) {
        List<Assignment> said = assignments.ofDocument(scene.production.id, document);
        Part part = assignments.parts(scene.production.id, document).get(0);
        return new PartView(part, said, null, Described.UNSAID, "");
    }
}
