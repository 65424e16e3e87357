package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Date;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

@PortalTest
class TrustPageTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Jobs jobs;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ForecastRequests requests;

    private StorageShow show;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        show.keptLeg("SHUTTLE");
    }

    /** So many days of 144 GB planned and 100 GB recorded, each forecast on its morning as 90 to 130 GB. */
    private void shoot(int days) {
        for (int number = 1; number <= days; number++) {
            UUID day = show.day(number, number - days - 1, "WRAPPED", 100);
            show.roll(day, 100 * StorageShow.GB, 70);
        }
        show.day(days + 1, 1, "PLANNED", 100);
        for (int number = 1; number <= days; number++) {
            keepForecast(number, show.date(number - days - 1));
        }
        requests.ask(show.production.id, Because.SCHEDULE);
        jobs.run();
    }

    private void keepForecast(int number, LocalDate today) {
        long gb = StorageShow.GB;
        RecordingOutlook recording = new RecordingOutlook(List.of(new RecordingOutlook.Point(
                new DayRef("Main", number, today),
                144 * gb,
                new Band(90 * gb, 95 * gb, 105 * gb, 120 * gb, 130 * gb),
                null)));
        jdbc.sql("""
                        insert into forecast_run (production_id, computed_at, today, because, method_id, inputs, results)
                        values (:production, now(), :today, '{}', :method, '{}',
                                jsonb_build_object('legs', '[]'::jsonb, 'recording', :recording::jsonb))
                        """)
                .param("production", show.production.id)
                .param("today", Date.valueOf(today))
                .param("method", "simulated-2")
                .param("recording", ForecastJson.write(recording))
                .update();
    }

    @Test
    void beforeAnyComparisonSaysThatThereIsNone() {
        assertThat(page().select("#sentence").text()).startsWith("No day that was forecast has been shot yet.");
        assertThat(page().select("table")).isEmpty();
    }

    @Test
    void withFewDaysSaysThatTheyAreTooFewToJudgeBy() {
        shoot(3);

        assertThat(page().select("#sentence").text())
                .isEqualTo("Only 3 forecasts of the next day can be compared with what was recorded."
                        + " With fewer than 10 the figures say too little to judge by.");
        assertThat(page().select("tbody tr").get(0).text()).contains("too few");
    }

    @Test
    void withEnoughDaysSaysHowManyLayInsideTheBandAndWhetherAPlainGuessWasAsNear() {
        shoot(12);

        Document page = page();
        assertThat(page.select("#sentence").text())
                .startsWith("Of 12 forecasts of the next day, 12 had what was recorded inside their 80 % band; 10 would"
                        + " be right.");
        List<String> cells = page.select("tbody tr").get(0).select("th, td").eachText();
        assertThat(cells.get(0)).isEqualTo("the next shooting day");
        assertThat(cells.get(2)).isEqualTo("12 of 12 (100 %)");
        // 100 against 90, 105, 130 of 144 planned: (0.1 x 10 + 0.5 x 5 + 0.1 x 30) / 3 / 144 = 1.5 %.
        assertThat(cells.get(3)).isEqualTo("1.5 %");
        // 144 against 100: (0.9 + 0.5 + 0.1) x 44 / 3 / 144 = 15 %.
        assertThat(cells.get(4)).isEqualTo("15 %");
        assertThat(cells.get(6)).isEqualTo("5 % too high");
    }

    private Document page() {
        MvcTestResult page = mvc.get()
                .uri(show.production.path("storage/trust"))
                .with(show.production.signedInAs(Role.READER))
                .exchange();
        assertThat(page).hasStatusOk();
        return Jsoup.parse(
                new String(page.getResponse().getContentAsByteArray(), java.nio.charset.StandardCharsets.UTF_8));
    }
}
