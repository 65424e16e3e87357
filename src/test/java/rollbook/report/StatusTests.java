package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.burndown.Band;
import rollbook.forecast.Forecasts;
import rollbook.forecast.StorageStatus;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.verification.ProofSummary;

@PortalTest
class StatusTests {
    private static final String LONG_SENTENCE =
            "Shuttle drives run out on day 17, Thu 12 March, with bad luck on day 15, Tue 10 March. Order 6 drives by Thu 5 March. ";

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

    @Autowired
    Forecasts forecasts;

    @Autowired
    StatusViews views;

    @Autowired
    ReportPaper paper;

    private ReportScene scene;

    @BeforeEach
    void shoot() {
        scene = new ReportScene(fixtures, mvc, rolls, offloads, jobs);
    }

    @Test
    void withoutAForecastThePageSaysSoAndThereIsNoPaper() throws Exception {
        assertThat(scene.see("storage/status").select("main").text()).contains("There is no forecast yet");
        assertThat(scene.get("storage/status.pdf")).hasStatus(404);
    }

    @Test
    void eachPoolStandsOnThePageWithItsRoomItsFanAndItsChance() throws Exception {
        scene.production.plan(scene.day, scene.camera, scene.format, "30");
        scene.copied("A001");
        forecasts.compute(scene.production.id);
        var page = scene.see("storage/status");
        assertThat(page.select("table.status > tbody > tr > th .pool").eachText())
                .containsExactlyInAnyOrder("Shuttle", "Vault");
        assertThat(page.select("table.status > tbody > tr").first().text())
                .contains("Room: ", "Lasts for ", "Chance to run out: ");
        assertThat(page.select("svg.fan[role=img]"))
                .hasSize(2)
                .allSatisfy(fan -> assertThat(fan.attr("aria-label")).contains("today; at the end of the show"));
        assertThat(page.select("svg.cover[role=img]"))
                .hasSize(2)
                .allSatisfy(cover -> assertThat(cover.attr("aria-label")).startsWith("Lasts for "));
        assertThat(page.select("section[aria-labelledby=held]").text())
                .contains(
                        "Held until more is proven: 1. Not copied yet: 0.",
                        "CARD-A001 Roll A001. The copy for Shuttle is not proven.");
        try (ReportPdf pdf =
                print(scene.get("storage/status.pdf").getResponse().getContentAsByteArray(), "status.pdf")) {
            assertThat(pdf.pages()).isEqualTo(1);
            assertThat(pdf.isTagged()).isTrue();
            assertThat(pdf.embedsItsFonts()).isTrue();
            assertThat(pdf.title()).isEqualTo("Storage on one page");
            assertThat(pdf.structure()).contains("Figure", "Table", "H1");
        }
    }

    /** Whatever stands on it: long names and sentences, as many pools as there are, the most lines of held cards. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 7, 20})
    void thePaperIsOnePage(int pools) throws Exception {
        StorageStatus status = new StorageStatus(
                LONG_SENTENCE.repeat(2),
                LocalDate.of(2031, 3, 3),
                LocalDate.of(2031, 3, 12),
                Instant.parse("2031-03-03T10:00:00Z"),
                "The rest of the show was played 2,000 times, with what its days have taught. ".repeat(3),
                true,
                IntStream.rangeClosed(1, pools)
                        .mapToObj(i -> FanPictureTests.pool(
                                "Encoded copies on the tapes of the second vault " + i,
                                500,
                                LocalDate.of(2031, 3, 5),
                                FanPictureTests.point(4, new Band(300, 350, 400, 420, 450)),
                                FanPictureTests.point(7, new Band(-300, 100, 250, 300, 400))))
                        .toList());
        List<ProofSummary.RollLine> held = IntStream.rangeClosed(1, 30)
                .mapToObj(i -> new ProofSummary.RollLine(
                        UUID.randomUUID(),
                        "A%03d".formatted(i),
                        "CARD-OF.THE-2ND_UNIT-%03d".formatted(i),
                        "SHUTTLE-02 is encoded, and no round trip shows that the encoding lost nothing. ".repeat(2)))
                .toList();
        ProofSummary proof = new ProofSummary(
                60, List.of(), List.of(), held, held, List.of(), List.of(), Map.of(), 0, 0, 0, 0, List.of(), List.of(),
                List.of(), List.of());
        StatusView view = views.of(status, proof, scene.production.as(Role.OFFICE), true);
        byte[] bytes = paper.print("report/status-paper", view, "x.pdf").getBody();
        try (ReportPdf pdf = print(bytes, "status-%d.pdf".formatted(pools))) {
            assertThat(pdf.pages()).isEqualTo(1);
            assertThat(pdf.text()).contains("vault " + Math.min(pools, 7), "newer forecast is being computed");
        }
    }

    private static ReportPdf print(byte[] bytes, String name) throws Exception {
        return new ReportPdf(bytes, name);
    }
}
