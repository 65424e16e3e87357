package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.verification.EvidenceScene.DIGEST_1;
import static rollbook.verification.EvidenceScene.DIGEST_2;
import static rollbook.verification.EvidenceScene.list;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

/** Tries to have a copy proven by a document that nobody made by reading that copy. */
@PortalTest
class IndependenceTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Copies copies;

    @Autowired
    Offloads offloads;

    @Autowired
    Jobs jobs;

    @Autowired
    Verdicts verdicts;

    @Autowired
    JdbcClient jdbc;

    private EvidenceScene scene;
    private UUID roll;

    @BeforeEach
    void makeARollWithAManifestOfItsCard() {
        scene = new EvidenceScene(fixtures, mvc, rolls, copies, jobs, verdicts, jdbc);
        roll = scene.roll("A001");
        scene.send("CARD", "card.md5", list("card", "A001", DIGEST_1, DIGEST_2));
    }

    @Test
    void anAscMhlDocumentWithAnotherHostAndDateProvesNoSecondCopyAndLowersTheFirst() {
        String verified = mhl("in-place", "verified");
        scene.send(scene.shuttle, "shuttle.mhl", verified);
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.PROVEN);

        scene.send(scene.vault, "vault.mhl", touchedUp(verified));

        for (UUID item : List.of(scene.shuttle, scene.vault)) {
            assertThat(scene.verdictOn(roll, item).verdict()).isEqualTo(Verdict.CONSISTENT);
            assertThat(scene.reasonsOn(roll, item)).containsExactly("SAME_READING_FOR_TWO_COPIES");
        }
    }

    @Test
    void datesOfHashingOrACommentThatNamesTheMediumTellTwoReadingsApart() {
        String first = mhl("in-place", "verified");
        scene.send(scene.shuttle, "shuttle.mhl", first.replace("<md5 ", "<md5 hashdate=\"2026-03-04T18:04:00Z\" "));
        scene.send(scene.vault, "vault.mhl", first.replace("<md5 ", "<md5 hashdate=\"2026-03-04T19:31:00Z\" "));
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.verdictOn(roll, scene.vault).verdict()).isEqualTo(Verdict.PROVEN);

        UUID second = scene.roll("A002");
        scene.send("CARD", "card2.md5", list("card", "A002", DIGEST_1, DIGEST_2));
        String of2 = first.replace("A001", "A002");
        scene.send(scene.shuttle, "s2.mhl", of2.replace("</tool>", "</tool><comment>SHUTTLE-1</comment>"));
        scene.send(scene.vault, "v2.mhl", of2.replace("</tool>", "</tool><comment>VAULT-1</comment>"));
        assertThat(scene.verdictOn(second, scene.shuttle).verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(scene.verdictOn(second, scene.vault).verdict()).isEqualTo(Verdict.PROVEN);
    }

    @Test
    void theCardsOwnAscMhlDocumentWithAnotherHostProvesNoCopy() {
        UUID second = scene.roll("A002");
        String ofCard = mhl("in-place", "original").replace("A001", "A002");
        scene.send("CARD", "card.mhl", ofCard);
        scene.send(scene.shuttle, "shuttle.mhl", touchedUp(ofCard));

        assertThat(scene.verdictOn(second, scene.shuttle).verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(scene.reasonsOn(second, scene.shuttle)).containsExactly("SAME_READING_AS_REFERENCE");
    }

    @Test
    void anOldDocumentWithANewDateProvesNothingOfACopyThatWasWrittenAgain() {
        String first = mhl("in-place", "verified");
        UUID reader = scene.production.item("READER-1", "READER", scene.set, null);
        copyTo(reader, scene.shuttle);
        scene.send(scene.shuttle, "shuttle.mhl", first);
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.PROVEN);

        copyTo(reader, scene.shuttle);
        scene.send(scene.shuttle, "again.mhl", touchedUp(first));
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(scene.reasonsOn(roll, scene.shuttle)).containsExactly("SAME_READING_AS_BEFORE");

        scene.send(scene.shuttle, "re-read.mhl", first.replace("</tool>", "</tool><comment>read again</comment>"));
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.PROVEN);
    }

    @Test
    void aListThatOnlyItsCommentsTellFromAnotherCopysIsToldAndStillProves() {
        scene.send(scene.shuttle, "shuttle.md5", list("shuttle", "A001", DIGEST_1, DIGEST_2));
        scene.send(
                scene.vault,
                "vault.md5",
                list("vault", "A001", DIGEST_1, DIGEST_2).replace("\n", "\r\n"));

        for (UUID item : List.of(scene.shuttle, scene.vault)) {
            assertThat(scene.verdictOn(roll, item).verdict()).isEqualTo(Verdict.PROVEN);
            assertThat(scene.reasonsOn(roll, item)).containsExactly("SAME_LINES_FOR_TWO_COPIES");
        }
        scene.send(scene.vault, "from-above.md5", list("vault", "VAULT-1/A001", DIGEST_1, DIGEST_2));
        assertThat(scene.reasonsOn(roll, scene.vault)).isEmpty();
    }

    @Test
    void whatACopyingProgramWroteWithoutReadingBackProvesNothing() {
        scene.send(scene.shuttle, "shuttle.mhl", mhl("transfer", "original"));
        assertThat(scene.verdictOn(roll, scene.shuttle).verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(scene.reasonsOn(roll, scene.shuttle)).containsExactly("NO_READ_BACK");
    }

    private void copyTo(UUID reader, UUID drive) {
        UUID session =
                offloads.start(scene.wrangler, roll, reader, null, List.of(new Offloads.Destination(drive, null)));
        offloads.finish(scene.wrangler, session, 1_000);
    }

    private static String mhl(String process, String action) {
        return EvidenceScene.mhl("cart-a.example", process, action, "A001", 1, DIGEST_1, DIGEST_2);
    }

    private static String touchedUp(String mhl) {
        return mhl.replace("cart-a.example", "cart-b.example").replace("2026-03-04T18:05:12Z", "2026-03-05T07:41:00Z");
    }
}
