package rollbook.hire;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.hire.HireScene.TODAY;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.inventory.Custody;
import rollbook.ordering.Hire;
import rollbook.production.MediaKind;
import rollbook.production.Role;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.Suppliers;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.Display;

@PortalTest
class HirePagesTests {
    private static final LocalDate DUE = TODAY.plusDays(5);

    @Autowired
    Fixtures fixtures;

    @Autowired
    Suppliers suppliers;

    @Autowired
    Catalogue catalogue;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    AgreementBook book;

    @Autowired
    Agreements agreements;

    @Autowired
    Custody custody;

    @Autowired
    Display display;

    private HireScene scene;
    private TestProduction production;

    @BeforeEach
    void makeProduction() {
        scene = new HireScene(fixtures, suppliers, jdbc);
        production = scene.production;
    }

    @Test
    void thePageSaysWhatIsHiredAndWhatIsDueFirst() throws Exception {
        assertThat(see("hire").select("#sentence").text()).isEqualTo("Nothing is hired.");
        UUID late = scene.hired("READER-1", "READER", null);
        UUID soon = scene.hired("DRIVE-1", "DRIVE", null);
        scene.hired("DRIVE-2", "DRIVE", null);
        book.agree(scene.office, scene.terms(DUE, soon));
        assertThat(see("hire").select("#sentence").text())
                .isEqualTo("3 items are hired for €150.00 a week. DRIVE-1 is due back on " + display.date(DUE)
                        + ", in 5 days.");
        book.agree(scene.office, scene.terms(TODAY.minusDays(1), 7_000, late));
        Document page = see("hire");
        assertThat(page.select("#sentence").text())
                .isEqualTo("3 items are hired for €175.00 a week. READER-1 was due back on "
                        + display.date(TODAY.minusDays(1)) + ", yesterday.");
        List<String> rows =
                page.select("main section").first().select("tbody tr").eachText();
        assertThat(rows).hasSize(3);
        // Thirteen days are two weeks; the day late has begun another.
        assertThat(rows.get(0))
                .startsWith("HIRE-2 READER-1")
                .contains("overdue for a day", "€140.00 and €70.00 for being late until today", "€70.00");
        assertThat(rows.get(1)).startsWith("HIRE-1 DRIVE-1").contains("in 5 days", "€180.00", "€60.00");
        assertThat(rows.get(2)).startsWith("DRIVE-2").contains("Write down the agreement", "nobody wrote down when");
    }

    @Test
    void whatLeftStandsBelowWithWhatItCameTo() throws Exception {
        UUID drive = scene.hired("DRIVE-1", "DRIVE", TODAY.plusDays(1));
        custody.giveBack(scene.office, drive, "receipt 7");
        assertThat(see("hire").select("#ended ~ p").text()).isEqualTo("The hire of 1 item came to €45.00 in all.");
        assertThat(see("hire/returned/" + drive).select("tbody").text()).contains("receipt 7", "€45.00");
        assertThat(post(
                        "hire/returned/" + drive,
                        Map.of("returnedOn", TODAY.plusDays(1).toString(), "entries", "1")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Map<String, String> same = Map.of("returnedOn", TODAY.toString(), "note", "as on the receipt", "entries", "1");
        assertThat(post("hire/returned/" + drive, same)).hasStatus(HttpStatus.FOUND);
        assertThat(post("hire/returned/" + drive, same)).as("entered twice").hasStatus(HttpStatus.CONFLICT);
    }

    @Test
    void anAgreementBeginsWithWhatIsKnownAndTheCataloguesPrice() throws Exception {
        UUID drive = scene.hired("DRIVE-1", "DRIVE", DUE);
        scene.hired("DRIVE-2", "DRIVE", DUE);
        scene.hired("DRIVE-9", "DRIVE", null);
        UUID offered = catalogue.add(
                scene.office,
                scene.supplier,
                new CatalogueDetails(MediaKind.DRIVE, "Test Model", 1_000_000_000_000L, null, null, 1));
        catalogue.price(scene.office, offered, new Catalogue.NewPrice(TODAY.minusDays(9), null, new Hire(5_100, 2)), 0);

        Document form = see("hire/new?item=" + drive);
        assertThat(form.select("#supplierId option[selected]").text()).isEqualTo("Hire house");
        assertThat(form.select("#items").text()).isEqualTo("DRIVE-1, DRIVE-2");
        assertThat(form.select("[name=startedOn]").val()).isEqualTo(TODAY.toString());
        assertThat(form.select("[name=dueOn]").val()).isEqualTo(DUE.toString());
        assertThat(form.select("[name=minimumWeeks]").val()).isEqualTo("2");
        assertThat(form.select("[name='models[0].weekPrice']").val()).isEqualTo("51.00");

        Map<String, String> typed = typed(drive);
        MvcTestResult done = post("hire/new", typed);
        assertThat(done).hasStatus(HttpStatus.FOUND);
        String page = done.getResponse().getRedirectedUrl();
        Document agreement = see(page.substring(production.path("").length()));
        assertThat(agreement.select("h1").text()).isEqualTo("HIRE-1, Hire house");
        assertThat(agreement.select("#sentence").text()).startsWith("2 items are hired for €102.00 a week.");
        assertThat(agreement.select("#terms ~ dl").text()).contains("RH-77", "Each day costs €9.50 an item.");
        assertThat(agreement.select("#history ~ table tbody tr").eachText())
                .singleElement()
                .asString()
                .contains("agreed", "2 weeks at least", "DRIVE-1, DRIVE-2 at €51.00 a week", "by telephone");
        assertThat(mvc.get().uri(production.path("find?code=hire-1")).with(production.signedInAs(Role.READER)))
                .redirectedUrl()
                .isEqualTo(page);
    }

    private Map<String, String> typed(UUID like) {
        Map<String, String> typed = new LinkedHashMap<>();
        typed.put("supplierId", scene.supplier.toString());
        typed.put("reference", " RH-77 ");
        typed.put("startedOn", TODAY.minusDays(7).toString());
        typed.put("dueOn", DUE.toString());
        typed.put("minimumWeeks", "2");
        typed.put("lateDayPrice", "9.50");
        typed.put("items", "drive-1 to DRIVE-2");
        typed.put("models[0].like", like.toString());
        typed.put("models[0].weekPrice", "51");
        typed.put("note", "by telephone");
        typed.put("entries", "0");
        return typed;
    }

    @Test
    void whatIsWrongWithAnAgreementIsSaidBesideTheFieldAndWhatWasTypedIsKept() throws Exception {
        UUID drive = scene.hired("DRIVE-1", "DRIVE", DUE);
        scene.hired("DRIVE-2", "DRIVE", DUE);
        Map<String, String> wrong = Map.of(
                "supplierId", "",
                "startedOn", "0026-01-01",
                "dueOn", TODAY.minusDays(8).toString(),
                "minimumWeeks", "0",
                "lateDayPrice", "-1",
                "items", "DRIVE-1 NOPE-7",
                "models[0].weekPrice", "");
        for (Map.Entry<String, String> one : wrong.entrySet()) {
            Map<String, String> typed = typed(drive);
            typed.put(one.getKey(), one.getValue());
            MvcTestResult answer = post("hire/new", typed);
            assertThat(answer).as(one.toString()).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            Document page = Jsoup.parse(answer.getResponse().getContentAsString());
            assertThat(page.getElementById(one.getKey() + "-error"))
                    .as(one.toString())
                    .isNotNull();
            assertThat(page.select("[name=note]").text()).isEqualTo("by telephone");
            assertThat(page.select("[name=reference]").val()).isEqualTo("RH-77");
        }
        for (Map.Entry<String, String> one : Map.of(
                        "models[0].weekPrice", "5.001",
                        "lateDayPrice", "0.001",
                        "dueOn", TODAY.plusYears(11).toString(),
                        "items", "DRIVE-1 to READER-2")
                .entrySet()) {
            Map<String, String> typed = typed(drive);
            typed.put(one.getKey(), one.getValue());
            Document page = Jsoup.parse(post("hire/new", typed).getResponse().getContentAsString());
            assertThat(page.getElementById(one.getKey() + "-error"))
                    .as(one.toString())
                    .isNotNull();
        }
        Map<String, String> letters = typed(drive);
        letters.put("models[0].weekPrice", "fifty");
        assertThat(post("hire/new", letters)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(agreements.all(production.id)).isEmpty();
    }

    @Test
    void itIsExtendedCorrectedAndTakenBackOnItsPages() throws Exception {
        UUID drive = scene.hired("DRIVE-1", "DRIVE", DUE);
        scene.hired("DRIVE-2", "DRIVE", DUE);
        post("hire/new", typed(drive));
        UUID id = agreements.all(production.id).keySet().iterator().next();

        Map<String, String> extension = new LinkedHashMap<>(Map.of(
                "dueOn", DUE.toString(),
                "items", "DRIVE-1",
                "models[0].like", drive.toString(),
                "models[0].weekPrice", "40",
                "entries", "1"));
        assertThat(see("hire/" + id + "/extend").select("[name=dueOn]").val())
                .isEqualTo(DUE.plusWeeks(1).toString());
        MvcTestResult same = post("hire/" + id + "/extend", extension);
        assertThat(same).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(same).bodyText().contains("choose a later day");
        extension.put("dueOn", DUE.plusWeeks(1).toString());
        assertThat(post("hire/" + id + "/extend", extension)).hasStatus(HttpStatus.FOUND);
        extension.put("dueOn", DUE.plusWeeks(3).toString());
        assertThat(post("hire/" + id + "/extend", extension))
                .as("by somebody who hasn’t seen the extension")
                .hasStatus(HttpStatus.CONFLICT);

        Document form = see("hire/" + id + "/correct");
        assertThat(form.select("#items").text()).isEqualTo("DRIVE-1");
        assertThat(form.select("[name='models[0].weekPrice']").val()).isEqualTo("40.00");
        Map<String, String> correction = typed(drive);
        correction.put("items", "DRIVE-1");
        correction.put("entries", "2");
        correction.put("dueOn", DUE.toString());
        assertThat(post("hire/" + id + "/correct", correction))
                .as("an extension to the day before it")
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        correction.put("dueOn", DUE.plusWeeks(2).toString());
        assertThat(post("hire/" + id + "/correct", correction)).hasStatus(HttpStatus.FOUND);

        assertThat(see("hire/" + id + "/take-back").select("#sentence").text())
                .contains(display.date(DUE.plusWeeks(2)));
        assertThat(post("hire/" + id + "/take-back", Map.of("note", "not agreed after all", "entries", "3")))
                .hasStatus(HttpStatus.FOUND);
        List<String> history =
                see("hire/" + id).select("#history ~ table tbody th").eachText();
        assertThat(history)
                .containsExactly("taken back", "corrected no longer in force", "extended no longer in force", "agreed");
        assertThat(post("hire/" + id + "/take-back", Map.of("note", "", "entries", "4")))
                .hasStatus(HttpStatus.FOUND);
        assertThat(see("hire/" + id).select("#sentence").text()).contains("HIRE-1 was taken back.");
    }

    @Test
    void theListIsAFileToo() throws Exception {
        UUID drive = scene.hired("DRIVE-1", "DRIVE", DUE);
        jdbc.sql("update inventory_item set model = '=1+1' where id = ?")
                .param(drive)
                .update();
        UUID reader = scene.hired("READER-1", "READER", null);
        book.agree(scene.office, scene.terms(DUE, drive));
        custody.giveBack(scene.office, reader, "");
        MvcTestResult file = mvc.get()
                .uri(production.path("hire.csv"))
                .with(production.signedInAs(Role.READER))
                .exchange();
        assertThat(file).hasStatusOk();
        assertThat(file.getResponse().getContentAsString().split("\r\n"))
                .containsExactly(
                        "item,kind,model,agreement,supplier,started_on,due_on,ended_on,currency,per_week,until_due,first_week_late,accrued_on,accrued",
                        "DRIVE-1,drive,'=1+1,HIRE-1,Hire house,%s,%s,,EUR,60.00,180.00,60.00,%s,120.00"
                                .formatted(TODAY.minusWeeks(2), DUE, TODAY),
                        "READER-1,reader,test model,,hire house,%s,,%s,EUR,45.00,,,%s,45.00"
                                .formatted(TODAY, TODAY, TODAY));
    }

    @Test
    void theOfficeChoosesHowEarlyPeopleAreTold() throws Exception {
        assertThat(see("hire").select("main").text()).contains("People are told 3 days before it is due.");
        assertThat(post("hire/reminder", Map.of("days", "61", "version", "0")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(post("hire/reminder", Map.of("days", "", "version", "0")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(post("hire/reminder", Map.of("days", "7", "version", "0"))).hasStatus(HttpStatus.FOUND);
        assertThat(post("hire/reminder", Map.of("days", "9", "version", "0"))).hasStatus(HttpStatus.CONFLICT);
        assertThat(post("hire/reminder", Map.of("days", "1", "version", "1"))).hasStatus(HttpStatus.FOUND);
        assertThat(see("hire").select("main").text()).contains("People are told a day before it is due.");
    }

    @Test
    void whoOnlyReadsSeesWhatThereIsAndNoWayToChangeIt() throws Exception {
        UUID drive = scene.hired("DRIVE-1", "DRIVE", DUE);
        UUID agreement = book.agree(scene.office, scene.terms(DUE, drive));
        for (String page : List.of("hire", "hire/" + agreement)) {
            Document seen = see(page, Role.READER);
            assertThat(seen.select("main form[method=post]")).isEmpty();
            assertThat(seen.select("main a[href*=return], main a[href*=extend], main a[href*=correct]"))
                    .isEmpty();
        }
        for (String page : List.of("hire/new", "hire/return", "hire/reminder", "hire/" + agreement + "/extend")) {
            assertThat(mvc.get().uri(production.path(page)).with(production.signedInAs(Role.READER)))
                    .as(page)
                    .hasStatus(HttpStatus.FORBIDDEN);
        }
    }

    private Document see(String page) throws Exception {
        return see(page, Role.OFFICE);
    }

    private Document see(String page, Role role) throws Exception {
        MvcTestResult result = mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(role))
                .exchange();
        assertThat(result).as(page).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    private MvcTestResult post(String page, Map<String, String> typed) {
        var request = mvc.post().uri(production.path(page)).with(production.signedInAs(Role.OFFICE));
        typed.forEach(request::param);
        return request.exchange();
    }
}
