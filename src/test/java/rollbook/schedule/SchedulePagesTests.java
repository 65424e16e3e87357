package rollbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Productions;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.FormValues;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

@PortalTest
class SchedulePagesTests {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    Fixtures fixtures;

    @Autowired
    ShootingDays days;

    @Autowired
    Productions productions;

    @Autowired
    StatementCount statements;

    TestProduction production;
    UUID unit;
    UUID camera;
    UUID format;
    String cell;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        unit = production.unit("Main unit");
        camera = production.camera(unit, "A");
        format = production.format("Main format");
        cell = "minutes-" + camera + "-" + format;
    }

    @Test
    void aWholeScheduleRunsOverWeekendsAndAHolidayGetsANote() {
        productions.addHoliday(production.as(Role.ADMINISTRATOR), date(8), "Founders’ day");
        assertThat(post("days/new", Role.OFFICE, entry())).hasStatus3xxRedirection();
        // By hand from Thu 6 March 2031: Thu, Fri, Mon, Tue, Wed.
        assertThat(days.list(production.id))
                .extracting(ShootingDay::date)
                .containsExactly(date(3), date(4), date(7), date(8), date(9));
        Document page = page(get("days", Role.READER));
        assertThat(page.select("section > table tbody tr").get(3).text())
                .contains("Day 4", "Tue 11 Mar 2031", "planned", "90", "130 GB", "Holiday: Founders’ day.");
        assertThat(page.select(".sentence").text())
                .isEqualTo("Day 1 of 5 is next, on Thu 6 Mar 2031. The show wraps on Wednesday 12 March 2031.");
        assertThat(page.select("main .button").eachText()).containsExactly("Day 1, Main unit");
    }

    @Test
    void theBarsTellPlannedBytesAndNameACancelledDay() {
        assertThat(post("days/new", Role.OFFICE, entry())).hasStatus3xxRedirection();
        post("days/" + days.list(production.id).get(1).id() + "/cancel", Role.OFFICE, Map.of());
        Document page = page(get("days", Role.READER));
        assertThat(page.select("section > p").first().text()).isEqualTo("4 days are to come, planned at 518 GB.");
        assertThat(page.select("figure.chart svg")).hasSize(2).allSatisfy(drawing -> {
            assertThat(drawing.select("rect.planned")).hasSize(4);
            assertThat(drawing.select("text[transform]").eachText()).containsExactly("cancelled");
            assertThat(drawing.select("[style], style, script")).isEmpty();
        });
        assertThat(page.select("section > details tbody tr").get(1).text()).endsWith("cancelled");
    }

    @Test
    void holidaysCanBeLeftOut() {
        productions.addHoliday(production.as(Role.ADMINISTRATOR), date(8), "Founders’ day");
        Map<String, List<String>> values = entry();
        values.put("skipHolidays", List.of("true"));
        assertThat(post("days/new", Role.OFFICE, values)).hasStatus3xxRedirection();
        assertThat(days.list(production.id))
                .extracting(ShootingDay::date)
                .containsExactly(date(3), date(4), date(7), date(9), date(10));
    }

    @Test
    void theNextEntryContinuesWhereTheLastEnded() {
        post("days/new", Role.OFFICE, entry());
        Map<String, String> values = FormValues.of(page(get("days/new", Role.OFFICE)), "form.entry-form");
        assertThat(values)
                .containsEntry("firstNumber", "6")
                .containsEntry("startDate", "2031-03-13")
                .containsEntry(cell, "90");
    }

    @Test
    void wrongEntriesAreSaidAndKept() {
        Map<String, List<String>> values = entry();
        values.remove("weekdays");
        values.put("days", List.of("0"));
        values.put("startDate", List.of("0031-03-03"));
        values.put(cell, List.of("1441"));
        MvcTestResult result = post("days/new", Role.OFFICE, values);
        assertThat(result).hasStatus(422);
        Document page = page(result);
        assertThat(page.select("#days-error").text()).isNotBlank();
        assertThat(page.select("#startDate-error").text()).contains("2000");
        assertThat(page.select("#weekdays .error").text()).isNotBlank();
        assertThat(page.select(".error-summary").text()).contains("Camera A, Main format: 1441");
        assertThat(FormValues.of(page, "form.entry-form"))
                .containsEntry("days", "0")
                .containsEntry(cell, "1441");
        assertThat(page.html()).doesNotContain("??").doesNotContain("java.");
        assertThat(days.list(production.id)).isEmpty();
    }

    @Test
    void lettersForNumbersAreSaidAndKept() {
        Map<String, List<String>> values = entry();
        values.put("days", List.of("many"));
        MvcTestResult result = post("days/new", Role.OFFICE, values);
        assertThat(result).hasStatus(422);
        assertThat(FormValues.of(page(result), "form.entry-form"))
                .containsEntry("days", "many")
                .containsEntry(cell, "90");
        production.day(unit, 1, "PLANNED");
        UUID day = days.list(production.id).get(0).id();
        MvcTestResult change = post(
                "days/" + day + "/change",
                Role.OFFICE,
                single(Map.of("number", "one", "date", "2031-03-03", "note", "kept", "version", "0")));
        assertThat(change).hasStatus(422);
        assertThat(FormValues.of(page(change), "form.day-form"))
                .containsEntry("number", "one")
                .containsEntry("note", "kept");
    }

    @Test
    void aTakenDateIsSaidAtTheDate() {
        post("days/new", Role.OFFICE, entry());
        Map<String, List<String>> again = entry();
        again.put("firstNumber", List.of("6"));
        MvcTestResult result = post("days/new", Role.OFFICE, again);
        assertThat(result).hasStatus(422);
        assertThat(page(result).select("#startDate-error").text()).contains("one of these dates");
    }

    @Test
    void plannedBytesAreExact() {
        UUID slow = production.format("Slow format");
        UUID day = production.day(unit, 1, "PLANNED");
        production.plan(day, camera, format, "90");
        production.plan(day, production.camera(unit, "B"), slow, "12.25");
        // By hand: 24 MB/s × 60 s = 1,440,000,000 bytes a minute; × 102.25 min = 147,240,000,000 bytes.
        Document page = page(get("days/" + day, Role.POST));
        assertThat(page.select("tfoot").text()).contains("102.25", "147,240,000,000 bytes");
        assertThat(page.select(".sentence").text())
                .isEqualTo(
                        "Main unit shoots this day on Monday 3 March 2031. Planned: 102.25 minutes, 147 GB (137 GiB).");
    }

    @Test
    void theSentenceSaysWhereEachUnitIs() {
        production.day(unit, 1, "WRAPPED");
        production.day(unit, 2, "SHOOTING");
        production.day(unit, 3, "CANCELLED");
        production.day(unit, 4, "PLANNED");
        UUID second = production.unit("Second unit");
        production.day(second, 9, "PLANNED");
        assertThat(page(get("days", Role.POST)).select(".sentence").text())
                .isEqualTo("Main unit: Day 2 of 3 is being shot. Second unit: Day 9 (1 of 1) is next, on"
                        + " Tue 11 Mar 2031. The show wraps on Tuesday 11 March 2031.");
    }

    @Test
    void aSlipShowsWhatWillMoveBeforeItIsDone() {
        post("days/new", Role.OFFICE, entry());
        UUID first = days.list(production.id).get(0).id();
        Map<String, String> form = FormValues.of(page(get("days/" + first + "/slip", Role.OFFICE)), "form.slip-form");
        assertThat(form).containsEntry("steps", "1");
        MvcTestResult shown = get(
                "days/" + first
                        + "/slip?show=true&_skipHolidays=on&date=2031-03-10&weekdays=MONDAY,TUESDAY,WEDNESDAY,THURSDAY,FRIDAY",
                Role.OFFICE);
        assertThat(shown).hasStatusOk();
        assertThat(page(shown).select("#moves tbody tr")).hasSize(5);
        assertThat(page(shown).select("#moves tbody tr").get(0).text()).contains("Thu 6 Mar 2031", "Mon 10 Mar 2031");
        assertThat(days.list(production.id).get(0).date()).isEqualTo(date(3));
        Map<String, List<String>> move = all(page(shown), "form.move-form");
        assertThat(post("days/" + first + "/slip", Role.OFFICE, move)).hasStatus3xxRedirection();
        assertThat(days.list(production.id))
                .extracting(ShootingDay::date)
                .containsExactly(date(7), date(8), date(9), date(10), date(11));
        assertThat(post("days/" + first + "/slip", Role.OFFICE, move)).hasStatus(422);
    }

    @Test
    void whatChangedSinceItWasShownIsNotMoved() {
        post("days/new", Role.OFFICE, entry());
        UUID first = days.list(production.id).get(0).id();
        Map<String, List<String>> move = all(
                page(get(
                        "days/" + first + "/slip?show=true&_skipHolidays=on&steps=1&weekdays=MONDAY,THURSDAY,FRIDAY",
                        Role.OFFICE)),
                "form.move-form");
        UUID last = days.list(production.id).get(4).id();
        post("days/" + last + "/cancel", Role.OFFICE, Map.of());
        assertThat(post("days/" + first + "/slip", Role.OFFICE, move)).hasStatus(409);
        assertThat(days.list(production.id).get(0).date()).isEqualTo(date(3));
    }

    @Test
    void aSlipToNowhereIsSaidAtItsField() {
        post("days/new", Role.OFFICE, entry());
        UUID first = days.list(production.id).get(0).id();
        String path = "days/" + first + "/slip?show=true&_skipHolidays=on";
        assertThat(get(path + "&weekdays=MONDAY&date=2031-03-05", Role.OFFICE)).hasStatus(422);
        assertThat(get(path + "&weekdays=MONDAY", Role.OFFICE)).hasStatus(422);
        assertThat(get(path + "&_weekdays=on&steps=1", Role.OFFICE)).hasStatus(422);
        MvcTestResult letters = get(path + "&steps=some&weekdays=MONDAY", Role.OFFICE);
        assertThat(letters).hasStatus(422);
        assertThat(FormValues.of(page(letters), "form.slip-form")).containsEntry("steps", "some");
    }

    @Test
    void aDayIsChangedAndTheSecondOfTwoIsTold() {
        UUID day = production.day(unit, 1, "PLANNED");
        production.plan(day, camera, format, "90");
        Map<String, String> values = FormValues.of(page(get("days/" + day + "/change", Role.OFFICE)), "form.day-form");
        values.put("note", "night");
        values.put(cell, "45.5");
        assertThat(post("days/" + day + "/change", Role.OFFICE, single(values))).hasStatus3xxRedirection();
        assertThat(post("days/" + day + "/change", Role.ADMINISTRATOR, single(values)))
                .hasStatus(409);
        assertThat(page(get("days/" + day, Role.READER)).select("main").text()).contains("night", "45.5");
    }

    @Test
    void aDayIsAddedAndRemoved() {
        production.day(unit, 1, "WRAPPED");
        Map<String, String> values = FormValues.of(page(get("days/add?unit=" + unit, Role.OFFICE)), "form.day-form");
        assertThat(values).containsEntry("number", "2").containsEntry("date", "2031-03-10");
        assertThat(post("days/add", Role.OFFICE, single(values))).hasStatus3xxRedirection();
        UUID added = days.list(production.id).get(1).id();
        assertThat(post("days/" + added + "/remove", Role.OFFICE, Map.of())).hasStatus3xxRedirection();
        assertThat(days.list(production.id)).hasSize(1);
    }

    @Test
    void aWrappedDayIsOpenedAgainForAReasonOnly() {
        UUID day = production.day(unit, 1, "WRAPPED");
        assertThat(post("days/" + day + "/reopen", Role.OFFICE, single(Map.of("reason", " "))))
                .hasStatus(422);
        assertThat(post("days/" + day + "/reopen", Role.OFFICE, single(Map.of("reason", "pick-ups"))))
                .hasStatus3xxRedirection();
        assertThat(days.get(production.id, day).state()).isEqualTo(DayState.SHOOTING);
    }

    @Test
    void theWranglerStartsAndWrapsAndNoMore() {
        UUID day = production.day(unit, 1, "PLANNED");
        assertThat(page(get("days/" + day, Role.WRANGLER)).select("main form")).hasSize(1);
        assertThat(page(get("days/" + day, Role.READER)).select("main form")).isEmpty();
        for (String act : List.of("start", "wrap")) {
            assertThat(post("days/" + day + "/" + act, Role.READER, Map.of())).hasStatus(403);
            assertThat(post("days/" + day + "/" + act, Role.POST, Map.of())).hasStatus(403);
            assertThat(post("days/" + day + "/" + act, Role.WRANGLER, Map.of())).hasStatus3xxRedirection();
        }
        for (String act : List.of("stop", "cancel", "restore", "reopen", "remove", "change", "slip")) {
            assertThat(post("days/" + day + "/" + act, Role.WRANGLER, Map.of()))
                    .as(act)
                    .hasStatus(403);
        }
        assertThat(post("days/new", Role.WRANGLER, entry())).hasStatus(403);
        assertThat(get("days/new", Role.WRANGLER)).hasStatus(403);
        assertThat(days.get(production.id, day).state()).isEqualTo(DayState.WRAPPED);
    }

    @Test
    void anotherProductionsDayAnswersAsAnUnknownOne() {
        TestProduction other = fixtures.production();
        UUID theirs = other.day(other.unit("Main unit"), 1, "PLANNED");
        for (UUID id : List.of(theirs, UUID.randomUUID())) {
            assertThat(get("days/" + id, Role.OFFICE)).hasStatus(404);
            assertThat(get("days/" + id + "/slip", Role.OFFICE)).hasStatus(404);
            assertThat(get("days/" + id + "/change", Role.OFFICE)).hasStatus(404);
            assertThat(post("days/" + id + "/start", Role.OFFICE, Map.of())).hasStatus(404);
            assertThat(post("days/" + id + "/remove", Role.OFFICE, Map.of())).hasStatus(404);
        }
        assertThat(get("days/add?unit=" + UUID.randomUUID(), Role.OFFICE)).hasStatus(404);
        assertThat(days.get(other.id, theirs).state()).isEqualTo(DayState.PLANNED);
    }

    @Test
    void theStatementsDoNotGrowWithTheDays() throws Exception {
        Map<String, Integer> few = new LinkedHashMap<>();
        UUID first = production.day(unit, 1, "PLANNED");
        production.plan(first, camera, format, "90");
        List<String> pages = List.of(
                "days",
                "days/new",
                "days/" + first,
                "days/" + first + "/change",
                "days/" + first + "/slip?show=true&_skipHolidays=on&steps=1&weekdays=MONDAY");
        for (String page : pages) {
            few.put(page, statements.during(() -> get(page, Role.OFFICE)));
        }
        for (int number = 2; number < 20; number++) {
            production.plan(production.day(unit, number, "PLANNED"), camera, format, "90");
        }
        for (String page : pages) {
            assertThat(statements.during(() -> get(page, Role.OFFICE)))
                    .as(page)
                    .isEqualTo(few.get(page))
                    .isLessThanOrEqualTo(12);
        }
    }

    private Map<String, List<String>> entry() {
        Map<String, List<String>> values = single(Map.of(
                "unit",
                unit.toString(),
                "startDate",
                "2031-03-06",
                "days",
                "5",
                "firstNumber",
                "1",
                cell,
                "90",
                "_weekdays",
                "on",
                "_skipHolidays",
                "on"));
        values.put("weekdays", List.of("MONDAY", "TUESDAY", "WEDNESDAY", "THURSDAY", "FRIDAY"));
        return values;
    }

    private static Map<String, List<String>> single(Map<String, String> values) {
        Map<String, List<String>> lists = new LinkedHashMap<>();
        values.forEach((name, value) -> lists.put(name, List.of(value)));
        return lists;
    }

    private static Map<String, List<String>> all(Document page, String selector) {
        Map<String, List<String>> values = new LinkedHashMap<>();
        page.select(selector + " input")
                .forEach(input -> values.computeIfAbsent(input.attr("name"), name -> new ArrayList<>())
                        .add(input.val()));
        values.remove("_csrf");
        return values;
    }

    private static LocalDate date(int offset) {
        return TestProduction.FIRST_DATE.plusDays(offset);
    }

    private MvcTestResult get(String page, Role role) {
        return mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(role))
                .exchange();
    }

    private MvcTestResult post(String page, Role role, Map<String, List<String>> values) {
        var request = mvc.post().uri(production.path(page)).with(production.signedInAs(role));
        values.forEach((name, list) -> request.param(name, list.toArray(String[]::new)));
        return request.exchange();
    }

    private static Document page(MvcTestResult result) {
        try {
            return Jsoup.parse(result.getResponse().getContentAsString());
        } catch (UnsupportedEncodingException e) {
            throw new AssertionError(e);
        }
    }
}
