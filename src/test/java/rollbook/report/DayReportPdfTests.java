package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;

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

/** What PDF/UA (ISO 14289-1, from memory) asks for and a program can tell: tags, a language, a title that is shown, fonts inside. */
@PortalTest
class DayReportPdfTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Jobs jobs;

    private ReportScene scene;

    @BeforeEach
    void shoot() {
        scene = new ReportScene(fixtures, mvc, rolls, offloads, jobs);
    }

    private ReportPdf print(String name) throws Exception {
        var result = scene.get(scene.page() + ".pdf");
        assertThat(result).hasStatusOk().hasContentType("application/pdf");
        return new ReportPdf(result.getResponse().getContentAsByteArray(), name);
    }

    @Test
    void thePaperCanBeReadAloudAndLooksAlikeEverywhere() throws Exception {
        scene.proven("A001");
        scene.copied("A002");
        scene.wrap();
        scene.sign(Role.WRANGLER, scene.sha256(), "Ünïcödé & <tags>");
        try (ReportPdf pdf = print("day.pdf")) {
            assertThat(pdf.isTagged()).isTrue();
            assertThat(pdf.language()).isEqualTo("en-GB");
            assertThat(pdf.title()).isEqualTo("Report of day 1, Main");
            assertThat(pdf.showsItsTitle()).isTrue();
            assertThat(pdf.embedsItsFonts()).isTrue();
            assertThat(pdf.structure()).contains("H1", "H2", "P", "Table", "TR", "TH", "TD", "L", "LI");
            assertThat(pdf.text())
                    .contains(
                            "Day 1, Monday 3 March 2031: 2 rolls, 28.8 GB.",
                            "A002 isn’t.",
                            "WRANGLER signed on ",
                            "Ünïcödé & <tags>",
                            "Test " + scene.production.code + " (" + scene.production.code + "): Report of day 1, Main",
                            "1 / ");
        }
    }

    @Test
    void manyRollsRunOverPagesWithTheirTablesHeadsOnEach() throws Exception {
        for (int i = 1; i <= 45; i++) {
            scene.copied("A%03d".formatted(i));
        }
        try (ReportPdf pdf = print("day-long.pdf")) {
            assertThat(pdf.pages()).isBetween(3, 8);
            assertThat(pdf.text()).contains("A001", "A045", "2 / " + pdf.pages());
            assertThat(pdf.text().split("Roll Camera Card", -1).length - 1).isGreaterThan(1);
        }
    }
}
