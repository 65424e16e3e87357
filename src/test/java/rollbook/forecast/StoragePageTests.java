package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
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
import rollbook.burndown.PoolOutlook;
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
     * Every day of the week is a working day. On ten days 1,440 GB were recorded for 1,440 planned, so the show keeps to
     * its plan. Ten days to come of 1,000 minutes: 1,440 GB each. SHUTTLE holds 27,000 GB x 95 % = 25,650 GB, of which
     * 14,400 are used: 11,250 left, enough for 7 days (10,080) of the plan and not for 8 (11,520): the eighth is Day 18, in
     * 8 days. ARRAY has room for all. Lead time 2 days, sometimes 3.
     */
    private void runShort() {
        show.everyDayIsAWorkingDay();
        UUID shuttle = show.keptLeg("SHUTTLE");
        UUID array = show.keptLeg("ARRAY");
        UUID drive = show.drive("SHUTTLE-1", shuttle, 27_000);
        UUID big = show.drive("ARRAY-1", array, 90_000);
        for (int number = 1; number <= 10; number++) {
            UUID roll = show.roll(show.day(number, number - 11, "WRAPPED", 1000), 1440 * StorageShow.GB, 1000);
            show.copy(roll, drive, shuttle);
            show.copy(roll, big, array);
        }
        for (int number = 11; number <= 20; number++) {
            show.day(number, number - 10, "PLANNED", 1000);
        }
        show.supply(shuttle, 2000, 1, 2, 3, 18_050);
        compute();
    }

    @Test
    void saysFirstWhichPoolRunsOutWhenAndWhatToOrderByWhen() {
        runShort();

        Document page = page();
        assertThat(page.select("#sentence").text())
                .matches("SHUTTLE: likely full on Day 18, %s(, with bad luck on Day 1[67], [A-Z][^.]*)?\\. "
                                .formatted(DAY.format(show.date(8)))
                        + "Order (1 item|[2-9] items) by [A-Z][^.]*\\. The other pool lasts to the end of the show\\.");
        assertThat(page.select("section h2").eachText().get(0)).startsWith("SHUTTLE order by ");
        assertThat(page.select("section h2").eachText().get(1)).isEqualTo("ARRAY lasts");
        assertThat(facts(page.select("section").first()))
                .contains("Room now: 11.3 TB (10.2 TiB)")
                .anyMatch(fact -> fact.matches("Cover: 7 of the 10 shooting days to come, in eight of ten cases .*"))
                .anyMatch(fact -> fact.matches("Order: (1 item|[2-9] items), room for .* TB, €.* with one delivery"));
    }

    @Test
    void saysWhatTheShowHasTaught() {
        runShort();

        assertThat(page().select("section[aria-labelledby=show] p").eachText())
                .singleElement()
                .asString()
                .matches("Days 1–10 were shot as planned; the plan for the rest is scaled by 1\\.00, 80 % band"
                        + " 0\\.[89]\\d–1\\.[01]\\d\\. Shooting more or less: minutes 1\\.00 times the plan, .*");
    }

    @Test
    void beforeTheFirstWrappedDaySaysThatItKnowsThePlanAlone() {
        UUID leg = show.keptLeg("ARRAY");
        show.drive("ARRAY-1", leg, 900_000);
        show.day(1, 1, "PLANNED", 100);
        compute();

        assertThat(page().select("#sentence").text())
                .startsWith("Plan only, no actuals yet: The pool lasts to the end of the show");
        assertThat(page().text())
                .contains("plan only, no actuals yet. A day brings 0.63–1.60 times its plan in eight of ten cases.");
    }

    @Test
    void drawsTheFanTheRunOutAndTheOrderFlagInALargeAndASmallPicture() {
        runShort();

        List<Element> pictures = page().select("section").first().select("svg");
        assertThat(pictures).extracting(Element::className).containsExactly("large", "small");
        assertThat(pictures).allSatisfy(picture -> {
            assertThat(picture.select("polygon.band"))
                    .hasSize(2)
                    .allMatch(band -> !band.attr("points").isBlank());
            assertThat(picture.select(".run-out")).hasSize(1);
            assertThat(picture.select(".flag text").text()).startsWith("order by ");
            assertThat(picture.select("text").eachText())
                    .contains("likely full " + SHORT_DAY.format(show.date(8)), "today", "holds 25.7 TB");
            assertThat(picture.select("polyline.line").attr("points")).isNotBlank();
            assertThat(picture.select("[style], style, script")).isEmpty();
        });
    }

    @Test
    void drawsHowFarEachPoolReachesTheWorstFirstWithTheDateOfAnOrder() {
        runShort();

        Document page = page();
        assertThat(page.select(".gauge-name").eachText().get(0)).startsWith("SHUTTLE order by ");
        assertThat(page.select(".gauge-name").eachText().get(1)).isEqualTo("ARRAY lasts");
        List<Element> gauges = page.select(".gauge > svg[role=img]");
        assertThat(gauges.get(0).attr("aria-label"))
                .matches(
                        "SHUTTLE: enough for 7 of the 10 shooting days to come.* An order placed now is likely here on .*");
        assertThat(gauges.get(0).select("line.median").attr("x1")).isEqualTo("70.00%");
        assertThat(gauges.get(0).select("text").eachText()).anyMatch(text -> text.startsWith("ordered now, here "));
        assertThat(gauges.get(1).attr("aria-label")).endsWith("Nobody has said how more can be had.");
        assertThat(gauges.get(1).select(".arrival")).isEmpty();
        assertThat(gauges.get(1).select("text").eachText()).containsExactly("all 10 days");
        assertThat(page.select(".gauges tbody tr").eachText().get(1)).isEqualTo("ARRAY 10 10 10 lasts");
    }

    @Test
    void whoAsksWhetherStorageLastsSeesItToday() throws Exception {
        runShort();

        assertThat(Jsoup.parse(body(get("today", Role.POST))).select(".gauge > svg[role=img]"))
                .hasSize(2);
        assertThat(Jsoup.parse(body(get("today", Role.WRANGLER))).select(".gauge"))
                .isEmpty();
    }

    @Test
    void expectsOfEachDayToComeWhatTheForecastSays() throws Exception {
        runShort();

        Document days = Jsoup.parse(body(get("days", Role.OFFICE)));
        assertThat(days.select("section > p").first().text())
                .isEqualTo("The 10 wrapped days came to 14.4 TB, as planned. 10 days are to come, planned at 14.4 TB.");
        Element drawn = days.select("svg.large").first();
        assertThat(drawn.select(".bar.future")).hasSize(10);
        assertThat(drawn.select(".bar:not(.future)")).hasSize(10);
        assertThat(drawn.select("text").eachText()).contains("today", "planned", "expected");
        assertThat(days.select("section > details tbody tr").get(0).text())
                .contains("Day 1", "1.44 TB 1.44 TB 0 B (0 %)");
        assertThat(days.select("section > details tbody tr").get(10).text())
                .matches("Day 11 .* 1\\.44 TB 1\\.4\\d TB 1\\.[123]\\d TB to 1\\.[5678]\\d TB");
    }

    @Test
    void aDayThatTheFirstForecastDidNotKnowIsCalledAdded() throws Exception {
        runShort();
        show.day(21, 11, "PLANNED", 1000);

        Document days = Jsoup.parse(body(get("days", Role.OFFICE)));
        assertThat(days.select("svg.large text[transform]").eachText()).containsExactly("added");
        assertThat(days.select("section > details tbody tr").get(20).text()).endsWith("added");
        assertThat(days.select("svg.large .bar.future"))
                .as("of day 21 no forecast tells yet")
                .hasSize(10);
    }

    @Test
    void aScreenReaderHearsWhatEachPictureShows() {
        runShort();

        assertThat(page().select(".chart svg")).hasSize(4).allSatisfy(picture -> {
            assertThat(picture.attr("role")).isEqualTo("img");
            String[] ids = picture.attr("aria-labelledby").split(" ");
            assertThat(ids).hasSize(2);
            assertThat(picture.getElementById(ids[0]).text()).matches("Room left in (SHUTTLE|ARRAY)");
            assertThat(picture.getElementById(ids[1]).text())
                    .contains(" now. In the evening of the last day ", "in eight of ten cases");
        });
    }

    @Test
    void aPoolThatLastsHasNeitherRunOutNorFlag() {
        runShort();

        Element lasting = page().select("section").get(1);
        assertThat(lasting.select(".run-out, .flag")).isEmpty();
        assertThat(lasting.text()).contains("ARRAY: lasts to the end of the show; the chance that it runs out is");
    }

    @Test
    void theTableAndTheDownloadGiveTheFiguresOfThePureMethod() {
        runShort();
        LegForecast shuttle = SimulatedForecast.of(
                        runs.standing(show.production.id).newest().inputs())
                .legs()
                .get(0);
        PoolOutlook.Point sixth = shuttle.outlook().points().stream()
                .filter(point -> point.date().equals(show.date(6)))
                .findFirst()
                .orElseThrow();

        Element row = page().select("section").first().select(".figures tbody tr").stream()
                .filter(candidate -> candidate.text().contains("Day 16"))
                .findFirst()
                .orElseThrow();
        assertThat(row.select("data").eachAttr("value"))
                .containsExactly(
                        "1440000000000",
                        Long.toString(sixth.demandBytes().p50()),
                        Long.toString(sixth.leftBytes().p50()),
                        Long.toString(sixth.leftBytes().p10()),
                        Long.toString(sixth.leftBytes().p90()));

        MvcTestResult csv = get("storage.csv", Role.READER);
        assertThat(csv).hasStatusOk().hasContentTypeCompatibleWith("text/csv");
        assertThat(body(csv).lines())
                .contains("SHUTTLE,%s,Main 16,1440000000000,0,%d,0,0,0,%d,%d,%d,%d,%d,%s"
                        .formatted(
                                show.date(6),
                                sixth.demandBytes().p50(),
                                sixth.leftBytes().p50(),
                                sixth.leftBytes().p10(),
                                sixth.leftBytes().p25(),
                                sixth.leftBytes().p75(),
                                sixth.leftBytes().p90(),
                                sixth.chanceOfHavingRunOut()))
                .hasSize(1 + 2 * 21);
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
        assertThat(outlook.sentence()).startsWith("SHUTTLE: likely full on Day 18");
        assertThat(outlook.legs()).extracting(StorageOutlook.Leg::name).containsExactly("SHUTTLE", "ARRAY");
        StorageOutlook.Leg shuttle = outlook.legs().get(0);
        assertThat(shuttle.flag()).isEqualTo(OrderFlag.ORDER_BY);
        assertThat(shuttle.chanceOfRunningOut()).isGreaterThan(0.99);
        assertThat(shuttle.runOutOn()).isBetween(show.date(6), show.date(8));
        assertThat(shuttle.orderBy()).isBetween(show.date(0), show.date(6));
        assertThat(shuttle.items()).isBetween(1L, 9L);
        assertThat(shuttle.cost())
                .isEqualByComparingTo(new BigDecimal("180.50").multiply(BigDecimal.valueOf(shuttle.items())));
        assertThat(outlook.legs().get(1).runOutOn()).isNull();
        assertThat(outlook.legs().get(1).waitsForSomebody()).isFalse();
    }

    @Test
    void aForecastThatFailsIsToldWithTheLastGoodOneBelowAndAButton() {
        runShort();
        jdbc.sql("""
                        update forecast_state set asked = asked + 1, failing_since = now(), next_try_at = now() + interval '4 minutes',
                            failure = 'IllegalStateException: no rate' where production_id = ?
                        """).param(show.production.id).update();

        Document page = page();
        assertThat(page.select("[role=alert]").text())
                .contains("can’t be computed since", "no rate", "tried again", "Below is the last one");
        assertThat(page.select("[role=status][hx-get]"))
                .as("it isn't there in a moment")
                .isEmpty();
        assertThat(page.select(".chart svg")).hasSize(4);
        assertThat(page.select("form[action$=storage/forecasts] button").text()).isEqualTo("Compute again now");
    }

    @Test
    void aFirstForecastThatFailsIsToldToo() {
        show.keptLeg("ARRAY");
        show.day(1, 1, "PLANNED", 1);
        jdbc.sql("""
                        insert into forecast_state (production_id, asked, answered, because, failing_since, next_try_at, failure)
                        values (?, 1, 0, '{}', now(), now() + interval '1 minute', 'IllegalStateException: no rate')
                        """).param(show.production.id).update();

        assertThat(page().select("[role=alert]").text()).contains("no rate").doesNotContain("Below is the last one");
    }

    @Test
    void explainsDaysThatWereCancelledAddedOrPlannedInAnotherFormat() {
        runShort();
        jdbc.sql("update schedule_day set state = 'CANCELLED' where production_id = ? and number = 15")
                .param(show.production.id)
                .update();
        UUID added = show.day(21, 12, "PLANNED", 500);
        UUID fat = show.production.format("Fat format");
        jdbc.sql("update format_recording_format set frame_rate_numerator = frame_rate_numerator * 2 where id = ?")
                .param(fat)
                .update();
        jdbc.sql("update schedule_plan set format_id = ? where day_id = ?")
                .params(fat, added)
                .update();
        compute();

        assertThat(page().select("section[aria-labelledby=show] p").eachText())
                .contains(
                        "Day 15 is cancelled and counts nowhere.",
                        "Day 21 was added since the first forecast, of %s.".formatted(DAY.format(show.today)),
                        "From Day 21 on a planned minute is 2.88 GB instead of 1.44 GB, so another format."
                                + " The plan knows it; what was learned comes on top.");
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
                        select production_id, computed_at, today - 1, because, method_id, inputs,
                               jsonb_set(results, '{legs,0,roomNowBytes}', '7777000000000')
                        from forecast_run where production_id = ?
                        """).param(show.production.id).update();
        assertThat(runs.roomOnPastDates(show.production.id, show.today).get(shuttle))
                .containsExactly(java.util.Map.entry(show.date(-1), 7_777_000_000_000L));
        assertThat(page().select("section").first().select("polyline.past").attr("points"))
                .isNotBlank();
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
                        "Plan only, no actuals yet: SHUTTLE: no media to write on, needed from Day 1, %s on. Say how more can be had to learn when to order."
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

        for (String path : List.of("storage", "storage.csv", "storage/supply/" + leg, "storage/assumptions")) {
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
            show.supply(leg, 2000, 1, 2, 3, 100);
            show.drive("DRIVE-" + i, leg, 4000);
            show.roll(show.day(20 + i, 10 + i, "PLANNED", 500), 10 * StorageShow.GB, 10);
        }
        compute();

        assertThat(page().select(".chart svg")).hasSize(20);
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
