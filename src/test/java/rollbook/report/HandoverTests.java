package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.verification.Clearances;
import rollbook.verification.Overrides;

@PortalTest
class HandoverTests {
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
    StatementCount statements;

    private ReportScene scene;

    @BeforeEach
    void shoot() {
        scene = new ReportScene(fixtures, mvc, rolls, offloads, jobs);
    }

    private byte[] csv() {
        return scene.get("handover.csv").getResponse().getContentAsByteArray();
    }

    private List<Fact> facts(FactKind kind) {
        return FactSheet.parse(new String(csv(), StandardCharsets.UTF_8)).facts().stream()
                .filter(fact -> fact.kind() == kind)
                .toList();
    }

    @Test
    void aShowWithoutAnythingHasAHandoverReportTooThatSaysSo() throws Exception {
        Document page = scene.see("handover");
        assertThat(page.select(".sentence").text()).isEqualTo("No roll is logged.");
        assertThat(page.select("main").text())
                .contains(
                        "Every roll is proven on as many copies as are asked for.",
                        "Nothing was ever cleared without proof.",
                        "No copy that was relied on was ever found bad afterwards.",
                        "No medium holds any file.",
                        "No document speaks of any copy.");
        assertThat(page.select("section[aria-labelledby=days] tbody tr")).hasSize(1);
    }

    @Test
    void itTellsOfEachRollWhereItsCopiesAreAndWhatProvesThem() throws Exception {
        scene.proven("A001");
        scene.copied("A002");
        Document page = scene.see("handover");
        assertThat(page.select(".sentence").text())
                .isEqualTo("2 rolls of 1 shooting day, 28.8 GB. One is proven on two copies."
                        + " A002 isn’t. The copy for Shuttle is not proven.");
        assertThat(page.select("section[aria-labelledby=rolls] tbody tr")
                        .first()
                        .text())
                .isEqualTo("A001 A CARD-A001 10 14.4 GB 2 proven SHUTTLE-1 Set by document 1 against 2"
                        + " proven VAULT-1 Set by document 3 against 2");
        assertThat(page.select("section[aria-labelledby=rolls] a.path").eachText())
                .containsExactly("A001-shuttle.md5", "A001-card.md5", "A001-vault.md5");
        byte[] shuttleList =
                ReportScene.list("A001", "shuttle", ReportScene.GOOD).getBytes(StandardCharsets.UTF_8);
        assertThat(page.select("code.digest").first().text())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(shuttleList)));
        assertThat(facts(FactKind.COPY))
                .extracting(copy -> copy.at(Column.ROLL) + " " + copy.at(Column.ITEM) + " " + copy.at(Column.PLACE)
                        + " " + copy.at(Column.VERDICT))
                .containsExactly(
                        "A001 SHUTTLE-1 Set proven",
                        "A001 VAULT-1 Set proven",
                        "A002 SHUTTLE-1 Set unknown",
                        "A002 VAULT-1 Set unknown");
    }

    @Test
    void whatWasClearedWithoutProofAndEveryAlarmStandOnItForGood() throws Exception {
        UUID proven = scene.proven("A001");
        clearances.clear(scene.wrangler, proven, "CARD-A001");
        clearances.recordErasure(scene.wrangler, proven, "CARD-A001");
        scene.send(scene.vault, "again.md5", ReportScene.list("A001", "vault again", ReportScene.BAD));
        scene.send(scene.vault, "good.md5", ReportScene.list("A001", "vault made again", ReportScene.GOOD));
        UUID roll = scene.copied("A002");
        UUID request = overrides.request(scene.wrangler, roll, "The camera burnt and the insurer wants the card.");
        overrides.approve(scene.production.as(Role.POST), request, "CARD-A002");
        Document page = scene.see("handover");
        assertThat(page.select("section[aria-labelledby=without-proof] tbody tr")
                        .eachText())
                .singleElement()
                .asString()
                .endsWith("CARD-A002 A002 cleared without proof: asked for by WRANGLER, because: "
                        + "The camera burnt and the insurer wants the card. POST");
        assertThat(page.select("section[aria-labelledby=alarms] tbody tr").eachText())
                .singleElement()
                .asString()
                .endsWith("VAULT-1 A001 alarm: this copy was relied on and is proven no longer; the card is erased");
    }

    @Test
    void oneDigestIsOfAllOfItAndAnyChangeMakesAnother() throws Exception {
        UUID roll = scene.proven("A001");
        byte[] csv = csv();
        assertThat(csv()).isEqualTo(csv);
        String digest =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(csv));
        assertThat(scene.see("handover").select("p.quiet > code.path").text()).isEqualTo(digest);
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        assertThat(scene.see("handover").select("p.quiet > code.path").text()).isNotEqualTo(digest);
    }

    @Test
    void signaturesBelowTheDaysReportsStandOnItWithWhatTheySigned() throws Exception {
        scene.wrap();
        String signed = scene.sha256();
        scene.sign(Role.POST, signed, "");
        assertThat(scene.see("handover")
                        .select("section[aria-labelledby=days] tbody td")
                        .last()
                        .text())
                .isEqualTo("POST");
        assertThat(facts(FactKind.SIGNATURE))
                .singleElement()
                .satisfies(fact -> assertThat(fact.at(Column.SHA256)).isEqualTo(signed));
    }

    @Test
    void aLongShowTakesNoMoreStatementsThanAShortOne() throws Exception {
        scene.proven("A001");
        int few = statements.during(() -> scene.get("handover.csv"));
        int fewOnPage = statements.during(() -> scene.get("handover"));
        int fewOfDay = statements.during(() -> scene.get(scene.page()));
        // Of these one reads the account for the test; reading and noting a session would take two.
        assertThat(List.of(few, fewOnPage, fewOfDay))
                .allSatisfy(count -> assertThat(count).isLessThanOrEqualTo(11));
        for (int i = 2; i <= 6; i++) {
            scene.proven("A%03d".formatted(i));
        }
        assertThat(statements.during(() -> scene.get("handover.csv"))).isEqualTo(few);
        assertThat(statements.during(() -> scene.get("handover"))).isEqualTo(fewOnPage);
        assertThat(statements.during(() -> scene.get(scene.page()))).isEqualTo(fewOfDay);
    }

    @Test
    void aDayOfAnotherShowIsUnknown() {
        ReportScene other = new ReportScene(fixtures, mvc, rolls, offloads, jobs);
        assertThat(scene.get("handover?day=" + other.day)).hasStatus(404);
        assertThat(scene.get("handover?day=" + scene.day)).hasStatusOk();
    }

    @Test
    void onPaperEveryRollIsListedAndEveryDocumentWithItsDigest() throws Exception {
        scene.proven("A001");
        scene.copied("A002");
        var result = scene.get("handover.pdf");
        assertThat(result).hasStatusOk().hasContentType("application/pdf");
        try (ReportPdf pdf = new ReportPdf(result.getResponse().getContentAsByteArray(), "handover.pdf")) {
            assertThat(pdf.isTagged()).isTrue();
            assertThat(pdf.embedsItsFonts()).isTrue();
            assertThat(pdf.title()).isEqualTo("Handover report");
            assertThat(pdf.language()).isEqualTo("en-GB");
            String digest = HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256")
                            .digest(ReportScene.list("A001", "vault", ReportScene.GOOD)
                                    .getBytes(StandardCharsets.UTF_8)));
            assertThat(pdf.text()).contains("A001", "A002", "A001-vault.md5", digest, "Taken over by");
            assertThat(pdf.text())
                    .contains(HexFormat.of()
                            .formatHex(MessageDigest.getInstance("SHA-256").digest(csv())));
        }
    }
}
