package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.burndown.DayRef;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

@PortalTest
class StoragePageTests {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMMM", Locale.UK);
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);

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

    @Autowired
    ForecastRuns runs;

    @Autowired
    Forecasts forecasts;

    @Autowired
    StatementCount statements;

    private StorageShow show;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
    }

    /**
     * Every day of the week is a working day. Yesterday 1,440 GB were recorded for 1,440 planned, so the ratio is 1.
     * Ten days to come of 1,000 minutes: 1,440 GB each. SHUTTLE holds 10,000 GB x 95 % = 9,500 GB, of which 1,440 are
     * used: 8,060 left, enough for 5 days (7,200), not for 6 (8,640): full on the sixth, in 6 days. Lead time 2, safety
     * 1: needed by day 5, comes by 4, ordered by 2. Lacks 14,400 - 8,060 = 6,340 GB: 4 x 1,900.
     */
    private void runShort() {
        jdbc.sql(
                        "update production_production set working_days = 'MONDAY,TUESDAY,WEDNESDAY,THURSDAY,FRIDAY,SATURDAY,SUNDAY' where id = ?")
                .param(show.production.id)
                .update();
        UUID shuttle = show.keptLeg("SHUTTLE");
        UUID array = show.keptLeg("ARRAY");
        UUID drive = show.drive("SHUTTLE-1", shuttle, 10_000);
        UUID big = show.drive("ARRAY-1", array, 90_000);
        UUID roll = show.roll(show.day(1, -1, "WRAPPED", 1000), 1440 * StorageShow.GB, 1000);
        show.copy(roll, drive, shuttle);
        show.copy(roll, big, array);
        for (int number = 2; number <= 11; number++) {
            show.day(number, number - 1, "PLANNED", 1000);
        }
        show.supply(shuttle, 2000, 1, 2, 1, 18_050);
        compute();
    }

    @Test
    void saysFirstWhichPoolRunsOutWhenAndWhatToOrderByWhen() {
        runShort();

        Document page = page();
        assertThat(page.select("#sentence").text())
                .isEqualTo(
                        "SHUTTLE: full on Day 7, %s. Order 4 items by %s. The other pool lasts to the end of the show."
                                .formatted(DAY.format(show.date(6)), DAY.format(show.date(2))));
        assertThat(page.select("section h2").eachText())
                .startsWith("SHUTTLE order by " + SHORT_DAY.format(show.date(2)), "ARRAY lasts");
        assertThat(facts(page.select("section").first()))
                .contains(
                        "Room now: 8.06 TB (7.33 TiB)",
                        "Cover: 5 of the 10 shooting days to come",
                        "Shortfall: 6.34 TB (5.77 TiB)",
                        "Order: 4 items, room for 7.60 TB, €722.00");
        assertThat(page.text()).contains("1.00: 1.44 TB recorded for 1.44 TB planned, on 1 wrapped day");
    }

    @Test
    void drawsTheRunOutAndTheOrderFlagInALargeAndASmallPicture() {
        runShort();

        List<Element> pictures = page().select("section").first().select("svg");
        assertThat(pictures).extracting(Element::className).containsExactly("large", "small");
        assertThat(pictures).allSatisfy(picture -> {
            assertThat(picture.select(".run-out")).hasSize(1);
            assertThat(picture.select(".flag text").text()).isEqualTo("order by " + SHORT_DAY.format(show.date(2)));
            assertThat(picture.select("text").eachText())
                    .contains("full " + SHORT_DAY.format(show.date(6)), "today", "holds 9.50 TB");
            assertThat(picture.select("polyline.line").attr("points")).isNotBlank();
            assertThat(picture.select("[style], style, script")).isEmpty();
        });
    }

    @Test
    void aPoolThatLastsHasNeitherRunOutNorFlag() {
        runShort();

        Element lasting = page().select("section").get(1);
        assertThat(lasting.select(".run-out, .flag")).isEmpty();
        assertThat(lasting.text()).contains("ARRAY: lasts to the end of the show.");
    }

    @Test
    void theTableAndTheDownloadGiveTheFiguresOfThePureMethod() {
        runShort();
        LegForecast shuttle = SimpleRatioForecast.of(
                        runs.standing(show.production.id).newest().inputs())
                .legs()
                .get(0);

        List<Element> rows = page().select("section").first().select("tbody tr");
        assertThat(rows).hasSameSizeAs(shuttle.burnDown().points());
        BurnDown.Point sixth = shuttle.burnDown().points().get(7);
        assertThat(rows.get(7).select("data").eachAttr("value"))
                .containsExactly(
                        Long.toString(sixth.plannedBytes()),
                        Long.toString(sixth.expectedBytes()),
                        Long.toString(sixth.leftBytes()));
        assertThat(sixth.leftBytes()).isEqualTo(-580 * StorageShow.GB);

        MvcTestResult csv = get("storage.csv", Role.READER);
        assertThat(csv).hasStatusOk().hasContentTypeCompatibleWith("text/csv");
        assertThat(body(csv).lines())
                .contains("SHUTTLE,%s,Main 7,1440000000000,0,1440000000000,0,0,0,-580000000000".formatted(show.date(6)))
                .hasSize(1 + 2 * 12);
    }

    @Test
    void aNameThatASpreadsheetWouldReckonWithStaysAName() {
        show.keptLeg("=1+1");
        show.day(1, 1, "PLANNED", 1);
        compute();

        assertThat(body(get("storage.csv", Role.READER))).contains("'=1+1,").doesNotContain("\n=1+1,");
    }

    @Test
    void tellsTodaysPageTheSameWorstLegFirst() {
        runShort();

        StorageOutlook outlook = forecasts.latest(show.production.id).orElseThrow();
        assertThat(outlook.sentence()).startsWith("SHUTTLE: full on Day 7");
        assertThat(outlook.legs()).extracting(StorageOutlook.Leg::name).containsExactly("SHUTTLE", "ARRAY");
        StorageOutlook.Leg shuttle = outlook.legs().get(0);
        assertThat(shuttle.flag()).isEqualTo(OrderFlag.ORDER_BY);
        assertThat(shuttle.runOutOn()).isEqualTo(show.date(6));
        assertThat(shuttle.runOutDay()).isEqualTo(new DayRef("Main", 7, show.date(6)));
        assertThat(shuttle.orderBy()).isEqualTo(show.date(2));
        assertThat(shuttle.items()).isEqualTo(4);
        assertThat(shuttle.cost()).isEqualByComparingTo("722");
        assertThat(outlook.legs().get(1).runOutOn()).isNull();
    }

    @Test
    void drawsThePastAsEarlierForecastsFoundIt() {
        runShort();
        UUID shuttle = runs.standing(show.production.id)
                .newest()
                .inputs()
                .legs()
                .get(0)
                .id();
        jdbc.sql("""
                        insert into forecast_run (production_id, computed_at, today, because, method_id, inputs, results)
                        select production_id, computed_at, today - 1, because, method_id, '{}',
                               jsonb_set(results, '{legs,0,roomNowBytes}', '7777000000000')
                        from forecast_run where production_id = ?
                        """).param(show.production.id).update();
        assertThat(runs.roomOnPastDates(show.production.id, show.today).get(shuttle))
                .containsExactly(java.util.Map.entry(show.date(-1), 7_777_000_000_000L));
    }

    @Test
    void withoutAScheduleOrACopyPlanSaysWhatToDoFirst() {
        assertThat(page().select(".empty").text()).contains("First the schedule");
        assertThat(forecasts.latest(show.production.id)).isEmpty();

        show.day(1, 1, "PLANNED", 100);
        compute();
        assertThat(page().select(".empty").text()).contains("First the copy plan");
        assertThat(forecasts.latest(show.production.id)).isEmpty();
    }

    @Test
    void aPoolWithoutMediaOrSupplySaysWhatIsMissing() {
        UUID leg = show.keptLeg("SHUTTLE");
        show.day(1, 2, "PLANNED", 100);
        compute();

        Document page = page();
        assertThat(page.select("#sentence").text())
                .isEqualTo(
                        "SHUTTLE: no media to write on, needed from Day 1, %s on. Say how more can be had to learn when to order."
                                .formatted(DAY.format(show.date(2))));
        assertThat(page.select("main a").eachAttr("href"))
                .contains(show.production.path("media"), show.production.path("storage/supply/" + leg));
    }

    @Test
    void saysWhatAnEncodedLegKeepsOfTheBytesAndWhetherThatWasMeasured() {
        show.leg("CODED", null, 60);
        UUID day = show.day(1, -1, "WRAPPED", 100);
        show.day(2, 2, "PLANNED", 100);
        show.encoded(show.roll(day, 100 * StorageShow.GB, 70), 61 * StorageShow.GB);
        compute();
        assertThat(facts(page().select("section").first()))
                .contains("Encoded to: 0.600 of recorded, as the plan says; 1 roll is measured yet, 5 are needed");

        for (int i = 0; i < 4; i++) {
            show.encoded(show.roll(day, 100 * StorageShow.GB, 70), 61 * StorageShow.GB);
        }
        compute();
        assertThat(facts(page().select("section").first()))
                .contains("Encoded to: 0.610 of recorded, measured on 5 rolls; the plan says 0.600");
    }

    @Test
    void whileAForecastIsComputedAgainThePageSaysSo() {
        runShort();
        assertThat(page().select("[role=status][hx-get]")).isEmpty();

        assertThat(post("storage/forecasts", Role.POST)).hasStatus3xxRedirection();
        assertThat(page().select("[role=status][hx-get]").text()).startsWith("Something has changed since.");

        jobs.run();
        assertThat(page().select("[role=status][hx-get]")).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void everyRoleSeesThePageAndOfficePostAndAdministratorsComputeAgain(Role role) {
        runShort();
        boolean may = role == Role.OFFICE || role == Role.POST || role == Role.ADMINISTRATOR;
        String recompute = show.production.path("storage/forecasts");

        Document page = Jsoup.parse(body(get("storage", role)));
        assertThat(page.select("form[action=" + recompute + "]")).hasSize(may ? 1 : 0);
        assertThat(post("storage/forecasts", role)).hasStatus(may ? HttpStatus.FOUND : HttpStatus.FORBIDDEN);
    }

    @Test
    void aStrangerFindsNothing() {
        runShort();
        UUID leg = runs.standing(show.production.id)
                .newest()
                .inputs()
                .legs()
                .get(0)
                .id();
        StorageShow other = new StorageShow(fixtures, jdbc);

        for (String path : List.of("storage", "storage.csv", "storage/supply/" + leg, "storage/fill-level")) {
            assertThat(mvc.get()
                            .uri(show.production.path(path))
                            .with(other.production.signedInAs(Role.ADMINISTRATOR))
                            .exchange())
                    .as(path)
                    .hasStatus(HttpStatus.NOT_FOUND);
        }
        assertThat(mvc.get()
                        .uri(other.production.path("storage/supply/" + leg))
                        .with(other.production.signedInAs(Role.ADMINISTRATOR))
                        .exchange())
                .as("another production's leg under one's own")
                .hasStatus(HttpStatus.NOT_FOUND);
        assertThat(mvc.post()
                        .uri(show.production.path("storage/forecasts"))
                        .with(other.production.signedInAs(Role.ADMINISTRATOR))
                        .exchange())
                .hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void takesFewStatementsHoweverManyRowsThereAre() throws Exception {
        runShort();
        int few = statements.during(this::page);
        for (int i = 1; i <= 8; i++) {
            UUID leg = show.keptLeg("LEG-" + i);
            show.supply(leg, 2000, 1, 2, 1, 100);
            show.drive("DRIVE-" + i, leg, 4000);
            show.roll(show.day(11 + i, 10 + i, "PLANNED", 500), 10 * StorageShow.GB, 10);
        }
        compute();

        assertThat(page().select("svg")).hasSize(20);
        assertThat(statements.during(this::page)).isEqualTo(few).isLessThanOrEqualTo(12);
    }

    private void compute() {
        requests.ask(show.production.id, Because.SCHEDULE);
        jobs.run();
    }

    private Document page() {
        MvcTestResult page = get("storage", Role.OFFICE);
        assertThat(page).hasStatusOk();
        return Jsoup.parse(body(page));
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(role))
                .exchange();
    }

    private MvcTestResult post(String path, Role role) {
        return mvc.post()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(role))
                .exchange();
    }

    private static String body(MvcTestResult result) {
        return new String(result.getResponse().getContentAsByteArray(), java.nio.charset.StandardCharsets.UTF_8);
    }

    private static List<String> facts(Element section) {
        return section.select("dl.facts dt").stream()
                .map(name -> name.text() + ": " + name.nextElementSibling().text())
                .toList();
    }
}
