package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.verification.Clearances;
import rollbook.verification.Overrides;

@PortalTest
class DayReportTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Clearances clearances;

    @Autowired
    Overrides overrides;

    @Autowired
    Jobs jobs;

    @Autowired
    JdbcClient jdbc;

    private ReportScene scene;

    @BeforeEach
    void shoot() {
        scene = new ReportScene(fixtures, mvc, rolls, offloads, jobs);
    }

    @Test
    void theSentenceSaysHowManyRollsAreProvenAndWhichAreNot() throws Exception {
        scene.proven("A001");
        scene.copied("A002");
        scene.send("CARD", "card.md5", ReportScene.list("A002", "card", ReportScene.GOOD));
        scene.send(scene.shuttle, "shuttle.md5", ReportScene.list("A002", "shuttle", ReportScene.GOOD));
        scene.send(scene.vault, "vault.md5", ReportScene.list("A002", "vault", ReportScene.BAD));
        assertThat(scene.see().select(".sentence").text())
                .isEqualTo("Day 1, Monday 3 March 2031: 2 rolls, 28.8 GB."
                        + " One is proven on two copies. A002 isn’t. 1 file differs on VAULT-1."
                        + " 1 copy is bad: A002 on VAULT-1.");
    }

    @Test
    void aDayWithoutRollsHasAReportTooThatSaysSo() throws Exception {
        Document page = scene.see();
        assertThat(page.select(".sentence").text()).isEqualTo("Day 1, Monday 3 March 2031: no roll is logged.");
        assertThat(page.select("main").text())
                .contains(
                        "Nothing differs, nothing is missing, and nothing needs a look.",
                        "No roll is logged for this day.",
                        "Nothing was planned, and nothing is recorded.",
                        "No medium holds a copy of this day’s rolls.",
                        "Nobody has signed this report here.");
    }

    @Test
    void problemsAreListedTheWorstFirst() throws Exception {
        scene.pulled("A003");
        scene.copied("A001");
        scene.send("CARD", "card.md5", ReportScene.list("A001", "card", ReportScene.GOOD));
        scene.send(scene.vault, "vault.md5", "# vault\n0cc175b9c0f1b6a831c399e269772661  A001/Clips/A001C001.mxf\n");
        scene.copied("A002");
        scene.send("CARD", "card2.md5", ReportScene.list("A002", "card", ReportScene.GOOD));
        scene.send(scene.vault, "vault2.md5", ReportScene.list("A002", "vault", ReportScene.BAD));
        List<String> problems =
                scene.see().select("section[aria-labelledby=problems] li").eachText();
        assertThat(problems.subList(0, 3))
                .containsExactly(
                        "A002 VAULT-1 is failed. 1 file differs",
                        "A001 VAULT-1 is incomplete. 1 file is missing",
                        "A003 No document speaks of it: nothing is proven.");
    }

    @Test
    void whatTheRollsOwnPageWarnsOfStandsAmongTheProblems() throws Exception {
        scene.copied("A001");
        scene.send("CARD", "card.md5", "d41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf\n");
        scene.send(scene.vault, "vault.md5", "# vault\nd41d8cd98f00b204e9800998ecf8427e  A001/Clips/A001C001.mxf\n");
        assertThat(scene.see().select("section[aria-labelledby=problems] li").eachText())
                .containsExactly("A001 1 file has not a single byte.");
    }

    /** 30 min at 24 MB/s make 43.2 GB, of which 14.4 GB are a third; worked by hand. */
    @Test
    void whatWasPlannedStandsBesideWhatWasRecorded() throws Exception {
        scene.production.plan(scene.day, scene.camera, scene.format, "30");
        scene.copied("A001");
        assertThat(scene.see().select("section[aria-labelledby=plan]").text())
                .contains(
                        "Planned were 30 min and 43.2 GB; recorded are 10 min and 14.4 GB (33 % of the planned bytes).");
    }

    @Test
    void whatIsClearedAndErasedIsToldWithWhoDidItAndTheMediaWithWhatIsOnThem() throws Exception {
        UUID roll = scene.proven("A001");
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        Document page = scene.see();
        assertThat(page.select("section[aria-labelledby=acts] tbody tr").eachText())
                .satisfiesExactly(
                        cleared -> assertThat(cleared).endsWith("CARD-A001 A001 cleared to erase WRANGLER"),
                        erased -> assertThat(erased).endsWith("CARD-A001 A001 erased WRANGLER"));
        assertThat(page.select("section[aria-labelledby=held]").text())
                .contains("Every card of the day is cleared or erased.");
        assertThat(page.select("section[aria-labelledby=media] tbody tr").eachText())
                .containsExactly(
                        "SHUTTLE-1 drive Set 14.4 GB 14.4 GB 1.00 TB 1.4 %",
                        "VAULT-1 drive Set 14.4 GB 14.4 GB 1.00 TB 1.4 %");
    }

    @Test
    void aCardThatWasClearedWithoutProofStandsFirstForGood() throws Exception {
        UUID roll = scene.copied("A001");
        UUID request = overrides.request(scene.wrangler, roll, "The camera burnt and the insurer wants the card.");
        overrides.approve(scene.production.as(Role.POST), request, "CARD-A001");
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        assertThat(scene.see()
                        .select("section[aria-labelledby=problems] li")
                        .first()
                        .text())
                .isEqualTo("A001 CARD-A001: cleared without proof: asked for by WRANGLER, because: "
                        + "The camera burnt and the insurer wants the card.");
    }

    @Test
    void theDigestOnThePageIsTheOneOfTheCsvFile() throws Exception {
        scene.proven("A001");
        byte[] csv = scene.get(scene.page() + ".csv").getResponse().getContentAsByteArray();
        byte[] again = scene.get(scene.page() + ".csv").getResponse().getContentAsByteArray();
        assertThat(again).isEqualTo(csv);
        assertThat(scene.sha256())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(csv)));
        assertThat(FactSheet.parse(new String(csv, java.nio.charset.StandardCharsets.UTF_8))
                        .facts())
                .extracting(Fact::kind)
                .containsExactly(FactKind.DAY, FactKind.ROLL, FactKind.COPY, FactKind.COPY);
    }

    @Test
    void aSignatureSaysOfWhomAndThatNothingHasChangedSince() throws Exception {
        scene.proven("A001");
        scene.wrap();
        assertThat(scene.sign(Role.WRANGLER, scene.sha256(), "All in order.")).hasStatus3xxRedirection();
        assertThat(scene.sign(Role.POST, scene.sha256(), "")).hasStatus3xxRedirection();
        assertThat(scene.see()
                        .select("section[aria-labelledby=signatures] article")
                        .eachText())
                .satisfiesExactly(
                        first -> assertThat(first)
                                .startsWith("WRANGLER signed on ")
                                .contains("Remark: All in order.", "Nothing has changed since."),
                        second -> assertThat(second).startsWith("POST signed on "));
        assertThat(jdbc.sql("select count(*) from audit_act where production_id = ? and action = 'report.signed'")
                        .param(scene.production.id)
                        .query(Long.class)
                        .single())
                .isEqualTo(2);
    }

    @Test
    void aSignatureFromBeforeAVerdictChangedSaysWhatChanged() throws Exception {
        UUID roll = scene.proven("A014");
        scene.wrap();
        scene.sign(Role.WRANGLER, scene.sha256(), "");
        clearances.clear(scene.wrangler, roll, "CARD-A014");
        scene.send(scene.vault, "again.md5", ReportScene.list("A014", "vault again", ReportScene.BAD));
        String signature = scene.see()
                .select("section[aria-labelledby=signatures] article")
                .text();
        assertThat(signature)
                .contains(
                        "Signed before the verdict on A014 on VAULT-1 changed.",
                        "A014 on VAULT-1: the copy was proven and is failed now.",
                        "CARD-A014 (roll A014) was cleared by WRANGLER.",
                        "The clearance of CARD-A014 (roll A014) no longer stands.",
                        "An alarm was raised: the copy of roll A014 on VAULT-1 was relied on and is proven no longer.");
    }

    @Test
    void clearingACardAfterwardsIsToldAndDoesNotTouchWhatWasSigned() throws Exception {
        UUID roll = scene.proven("A001");
        scene.wrap();
        scene.sign(Role.WRANGLER, scene.sha256(), "");
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        assertThat(scene.see()
                        .select("section[aria-labelledby=signatures] article")
                        .text())
                .contains("What was signed stands; 2 things came after it.");
    }

    @Test
    void whatWasSignedCanBeHadAgainToTheByte() throws Exception {
        UUID roll = scene.proven("A001");
        scene.wrap();
        byte[] then = scene.get(scene.page() + ".csv").getResponse().getContentAsByteArray();
        scene.sign(Role.WRANGLER, scene.sha256(), "");
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        String facts = scene.see().select("a[href$=facts.csv]").attr("href");
        assertThat(mvc.get()
                        .uri(facts)
                        .with(scene.production.signedInAs(Role.READER))
                        .exchange()
                        .getResponse()
                        .getContentAsByteArray())
                .isEqualTo(then)
                .isNotEqualTo(scene.get(scene.page() + ".csv").getResponse().getContentAsByteArray());
    }

    @Test
    void nobodySignsWhatTheyHaveNotSeen() throws Exception {
        scene.proven("A001");
        scene.wrap();
        String seen = scene.sha256();
        scene.send(scene.vault, "again.md5", ReportScene.list("A001", "vault again", ReportScene.BAD));
        assertThat(scene.sign(Role.WRANGLER, seen, "")).hasStatus(409);
        assertThat(scene.see().select("section[aria-labelledby=signatures] article"))
                .isEmpty();
    }

    @Test
    void aDayThatIsStillBeingShotIsNotSigned() throws Exception {
        scene.proven("A001");
        assertThat(scene.see().select("form[action$=sign-offs]")).isEmpty();
        assertThat(scene.sign(Role.WRANGLER, scene.sha256(), "")).hasStatus(409);
    }

    @Test
    void theSameReportIsSignedOnceByAPersonAndAgainWhenItChanged() throws Exception {
        UUID roll = scene.proven("A001");
        scene.wrap();
        String sha256 = scene.sha256();
        assertThat(scene.sign(Role.WRANGLER, sha256, "")).hasStatus3xxRedirection();
        assertThat(scene.sign(Role.WRANGLER, sha256, "")).hasStatus(409);
        assertThat(scene.see().select("form[action$=sign-offs]")).isEmpty();
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        assertThat(scene.sign(Role.WRANGLER, scene.sha256(), "")).hasStatus3xxRedirection();
    }

    @Test
    void aRemarkThatIsTooLongIsToldAtItsFieldAndKept() throws Exception {
        scene.wrap();
        String remark = "x".repeat(501);
        var result = scene.sign(Role.WRANGLER, scene.sha256(), remark);
        assertThat(result).hasStatus(422);
        Document page = org.jsoup.Jsoup.parse(result.getResponse().getContentAsString());
        assertThat(page.select("textarea[name=remark]").text()).isEqualTo(remark);
        assertThat(page.select(".error-summary a[href=#remark]")).hasSize(1);
    }

    @Test
    void aPersonTakesTheirOwnSignatureBackOnceAndItStaysOnTheReport() throws Exception {
        scene.wrap();
        scene.sign(Role.WRANGLER, scene.sha256(), "");
        String withdrawal =
                scene.see().select("a[href$=withdrawal]").attr("href").replace(scene.production.path(""), "");
        assertThat(scene.post(Role.POST, withdrawal, "reason", "Not mine.")).hasStatus(409);
        assertThat(scene.post(Role.WRANGLER, withdrawal, "reason", " ")).hasStatus(422);
        assertThat(scene.see(withdrawal).select("form textarea")).hasSize(1);
        assertThat(scene.post(Role.WRANGLER, withdrawal, "reason", "Two rolls were missing."))
                .hasStatus3xxRedirection();
        assertThat(scene.post(Role.WRANGLER, withdrawal, "reason", "Again.")).hasStatus(409);
        assertThat(scene.see()
                        .select("section[aria-labelledby=signatures] article")
                        .text())
                .contains("WRANGLER signed on ", "Taken back: Two rolls were missing.")
                .doesNotContain("Nothing has changed since.");
        assertThat(scene.see(withdrawal).select("form textarea")).isEmpty();
        assertThat(scene.sign(Role.WRANGLER, scene.sha256(), ""))
                .as("signed anew")
                .hasStatus3xxRedirection();
    }

    @Test
    void signaturesAreNeitherChangedNorDeletedEvenBySql() throws Exception {
        scene.wrap();
        scene.sign(Role.WRANGLER, scene.sha256(), "");
        String withdrawal =
                scene.see().select("a[href$=withdrawal]").attr("href").replace(scene.production.path(""), "");
        scene.post(Role.WRANGLER, withdrawal, "reason", "A mistake.");
        for (String table : List.of("report_facts", "report_sign_off", "report_sign_off_withdrawal")) {
            assertThatThrownBy(() -> jdbc.sql("delete from " + table).update())
                    .as(table)
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("evidence");
        }
    }
}
