package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static rollbook.verification.DocumentScene.parsed;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.manifest.Verdict;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

/** Digests that may be of two algorithms: asking a person, letting agreement or an empty file tell, and what follows. */
@PortalTest
class AlgorithmStatementsTests {
    private static final String ONE = "0123456789abcdef0123456789abcdef";
    private static final String OTHER = "fedcba98765432100123456789abcdef";
    private static final String EMPTY_XXH128 = "99aa06d3014798d86001c324468d497f";

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
    AlgorithmStatements statements;

    @Autowired
    JdbcClient jdbc;

    private DocumentScene scene;
    private UUID roll;

    @BeforeEach
    void makeProduction() {
        scene = new DocumentScene(fixtures, mvc, rolls);
        roll = scene.roll("A001");
    }

    @Test
    void aDocumentThatCannotTellIsAskedAboutOnItsPageAndInTheList() throws Exception {
        UUID asked = copyList(ONE);
        Document page = scene.see("documents/" + asked);

        assertThat(page.select("#algorithm h3").text()).isEqualTo("32 digits: MD5 or XXH128?");
        assertThat(page.select("#algorithm button").eachText()).containsExactly("They are MD5", "They are XXH128");
        assertThat(scene.see("documents").select("#documents td").text()).contains("32 digits: MD5 or XXH128?");
        assertThat(scene.see("documents/" + asked, Role.OFFICE).select("#algorithm form"))
                .as("others read the question only")
                .isEmpty();
    }

    @Test
    void eachLengthIsAskedAboutByItself() throws Exception {
        UUID document = scene.sendOne("", "copy.txt", ONE + "  A001/one.mxf\n0123456789abcdef  A001/one.mxf\n");
        jobs.run();
        assertThat(scene.see("documents/" + document).select("#algorithm h3").eachText())
                .containsExactly("16 digits: XXH64 or XXH3-64?", "32 digits: MD5 or XXH128?");

        say(document, Role.WRANGLER, "XXH128");
        assertThat(scene.see("documents/" + document).select("#algorithm h3").eachText())
                .containsExactly("16 digits: XXH64 or XXH3-64?", "32 digits: XXH128");
        assertThat(scene.see("documents").select("#documents td").text())
                .contains("XXH64 or XXH3-64?")
                .doesNotContain("MD5 or XXH128?");
        assertThat(statements.grounds(List.of(document)).open()).isTrue();
    }

    @Test
    void aDocumentThatTellsIsNotAskedAbout() throws Exception {
        UUID named = scene.sendOne("", "copy.md5", ONE + "  A001/one.mxf\n");
        UUID tagged = scene.sendOne("", "a.txt", "MD5 (A001/one.mxf) = " + ONE + "\n");
        UUID certain = scene.sendOne("", "b.txt", "0".repeat(40) + "  A001/one.mxf\n");
        UUID empty = scene.sendOne("", "c.txt", ONE + "  A001/one.mxf\n" + EMPTY_XXH128 + "  A001/none\n");
        jobs.run();

        for (UUID document : List.of(named, tagged, certain, empty)) {
            assertThat(scene.see("documents/" + document).select("#algorithm")).isEmpty();
            assertThat(say(document, Role.WRANGLER, "MD5")).hasStatus(404);
        }
        assertThat(scene.see("documents/" + empty).select("dl.facts").text())
                .contains("XXH128 The algorithm was concluded from an empty file in it.");
    }

    @Test
    void whatAPersonSaysIsJudgedByAndTakenBack() throws Exception {
        cardList(OTHER, "MD5");
        UUID document = copyList(ONE);
        assertThat(newest().verdict()).isEqualTo(Verdict.FAILED);
        assertThat(newest().reasons()).contains("ALL_DIFFER_ALGORITHM_ASSUMED");

        assertThat(submit(document, "They are XXH128")).hasStatus3xxRedirection();
        jobs.run();
        assertThat(newest().verdict()).as("MD5 and XXH128 can't be compared").isEqualTo(Verdict.UNKNOWN);
        assertThat(newest().reasons()).contains("NAME_ONLY", "ALGORITHM_SAID:WRANGLER");
        assertThat(scene.see("rolls/" + roll).text())
                .contains("Which algorithm made the digests of a list was said by WRANGLER.");
        Document page = scene.see("documents/" + document);
        assertThat(page.select("#algorithm h3").text()).isEqualTo("32 digits: XXH128");
        assertThat(page.select("#algorithm .quiet").text()).contains("XXH128, said by WRANGLER,");
        assertThat(page.select("#algorithm button").eachText())
                .containsExactly("They are MD5", "Take back what was said");
        assertThat(scene.see("documents").select("#documents td").text()).doesNotContain("MD5 or XXH128?");

        assertThat(submit(document, "Take back what was said")).hasStatus3xxRedirection();
        jobs.run();
        assertThat(newest().verdict()).isEqualTo(Verdict.FAILED);
        assertThat(verdicts.history(scene.wrangler.productionId(), roll))
                .as("each verdict stays on record")
                .extracting(CopyVerdict::verdict)
                .containsExactly(Verdict.FAILED, Verdict.UNKNOWN, Verdict.FAILED);
        assertThat(scene.see("documents").select("#documents td").text()).contains("MD5 or XXH128?");
    }

    @Test
    void aPersonsWordMakesADifferenceCertain() throws Exception {
        cardList(OTHER, "MD5");
        UUID document = copyList(ONE);
        say(document, Role.POST, "MD5");
        jobs.run();

        assertThat(newest().verdict()).isEqualTo(Verdict.FAILED);
        assertThat(newest().reasons()).doesNotContain("ALL_DIFFER_ALGORITHM_ASSUMED");
    }

    @Test
    void agreementTellsWhereNobodyDoesAndTheVerdictSaysSo() throws Exception {
        cardList(ONE, "XXH128");
        UUID document = copyList(ONE);
        assertThat(newest().verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(newest().reasons()).containsExactly("ALGORITHM_BY_AGREEMENT");
        assertThat(scene.see("rolls/" + roll).text()).contains("They equal those of one that does.");

        say(document, Role.WRANGLER, "XXH128");
        jobs.run();
        assertThat(newest().reasons()).containsExactly("ALGORITHM_SAID:WRANGLER");
    }

    /** Its file name tells, so there is nothing to say of it. */
    @Test
    void aVerdictOnAListThatTellsSaysNothingOfAlgorithms() throws Exception {
        cardList(ONE, "MD5");
        scene.sendOne(scene.shuttle.toString(), "copy.md5", ONE + "  A001/one.mxf\n");
        jobs.run();

        assertThat(newest().verdict()).isEqualTo(Verdict.PROVEN);
        assertThat(newest().reasons()).isEmpty();
    }

    @Test
    void anEmptyFileTellsOfTheLinesBeforeItToo() throws Exception {
        scene.sendOne(
                "CARD",
                "card.sums",
                "MD5 (A001/one.mxf) = " + OTHER + "\nMD5 (A001/none) = " + DocumentScene.EMPTY_MD5 + "\n");
        scene.sendOne(scene.shuttle.toString(), "copy.txt", ONE + "  A001/one.mxf\n" + EMPTY_XXH128 + "  A001/none\n");
        jobs.run();

        assertThat(newest().verdict())
                .as("an XXH128 digest is no other MD5 digest")
                .isEqualTo(Verdict.UNKNOWN);
        assertThat(newest().reasons()).contains("NAME_ONLY").doesNotContain("DIFFERENT_BYTES");
    }

    @Test
    void whoeverSawLessThanWasSaidIsRefused() throws Exception {
        UUID document = copyList(ONE);
        assertThat(say(document, Role.WRANGLER, "MD5")).hasStatus3xxRedirection();

        assertThat(say(document, Role.POST, "XXH128")).hasStatus(409);
        assertThat(say(document, Role.OFFICE, "XXH128")).hasStatus(403);
        assertThat(say(document, Role.WRANGLER, "SHA1")).hasStatus(404);
    }

    @Test
    void whatWasSaidIsEvidenceAndOnTheRecord() throws Exception {
        UUID document = copyList(ONE);
        say(document, Role.WRANGLER, "MD5");

        assertThat(scene.see("record").text()).contains("said which algorithm made its digests", "copy.txt");
        assertThatExceptionOfType(DataAccessException.class)
                .isThrownBy(() -> jdbc.sql("delete from verification_algorithm_statement where document_id = ?")
                        .param(document)
                        .update());
    }

    private void cardList(String digest, String tag) throws Exception {
        scene.sendOne("CARD", "card.sums", tag + " (A001/one.mxf) = " + digest + "\n");
        jobs.run();
    }

    private UUID copyList(String digest) throws Exception {
        UUID document = scene.sendOne(scene.shuttle.toString(), "copy.txt", digest + "  A001/one.mxf\n");
        jobs.run();
        return document;
    }

    private CopyVerdict newest() {
        return verdicts.history(scene.wrangler.productionId(), roll).get(0);
    }

    /** As somebody who has seen no statement yet. */
    private MvcTestResult say(UUID document, Role role, String algorithm) {
        return scene.post(
                "documents/" + document + "/algorithm",
                role,
                Map.of("digits", List.of("32"), "algorithm", List.of(algorithm)));
    }

    /** Presses a button of the page as a browser would. */
    private MvcTestResult submit(UUID document, String button) throws Exception {
        Document page = parsed(scene.get("documents/" + document, Role.WRANGLER));
        Element form = page.selectFirst("#algorithm form");
        Element pressed = form.select("button").stream()
                .filter(one -> one.text().equals(button))
                .findFirst()
                .orElseThrow();
        Map<String, String> sent =
                pressed.hasAttr("name") ? Map.of(pressed.attr("name"), pressed.attr("value")) : Map.of();
        return scene.submit(form, sent);
    }
}
