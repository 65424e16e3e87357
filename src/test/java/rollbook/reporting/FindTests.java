package rollbook.reporting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Rolls;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.NewOrder;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.supplier.DeliveredTo;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

/** The box that takes any code: where it leads, what it lists, what it offers. */
@PortalTest
class FindTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Orders orders;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private TestProduction production;
    private UUID set;
    private UUID unit;
    private UUID camera;
    private UUID day;
    private UUID format;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
        unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 11, "SHOOTING");
        format = production.format("F");
    }

    @ParameterizedTest
    @ValueSource(strings = {"A014", "a014", " a 014 ", "A-014", "a14", "a 14", "AO14", "ao14", "A0014"})
    void aRollIsFoundHoweverItsCodeIsTyped(String typed) {
        UUID roll = roll("A014");
        assertThat(leadsTo(typed)).isEqualTo(production.path("rolls/" + roll));
    }

    @Test
    void whatIsTypedToTheLetterGoesBeforeWhatIsOnlyNearlyIt() {
        UUID drive = production.item("A14", "DRIVE", set, null);
        UUID roll = roll("A014");
        assertThat(leadsTo("a 14")).isEqualTo(production.path("media/" + drive));
        assertThat(leadsTo("a 014")).isEqualTo(production.path("rolls/" + roll));
    }

    @Test
    void ofTwoThatMayBeMeantItNeverPicksOne() throws Exception {
        production.item("A-014", "DRIVE", set, null);
        roll("A014");
        Document page = page("A014");
        assertThat(page.select("h1").text()).isEqualTo("Which one?");
        assertThat(page.select("#sentence").text())
                .isEqualTo("2 things may be meant by “A014”. Nothing was chosen for you.");
        assertThat(page.select("tbody th").eachText()).containsExactlyInAnyOrder("A014", "A-014");
        assertThat(page("ao14").select("tbody th").eachText())
                .as("both only nearly")
                .hasSize(2);
    }

    @Test
    void whatOnlyBeginsSoIsListedAndNotOpened() throws Exception {
        roll("A014");
        assertThat(page("A01").select("tbody tr").text()).contains("A014", "roll", "CARD-A014", "exposed");
    }

    @ParameterizedTest
    @ValueSource(strings = {"day 11", "DAY11", "Day 011", "2031-03-13", "13.3.2031", "13 Mar 2031"})
    void aDayIsFoundByItsNumberAndByItsDate(String typed) {
        assertThat(leadsTo(typed)).isEqualTo(production.path("rolls?day=" + day));
    }

    @Test
    void aDayThatTwoUnitsHaveIsListedForBoth() throws Exception {
        production.day(production.unit("Second"), 11, "PLANNED");
        assertThat(page("day 11").select("tbody tr").eachText())
                .hasSize(2)
                .anyMatch(row -> row.contains("Main") && row.contains("shooting"))
                .anyMatch(row -> row.contains("Second") && row.contains("planned"));
    }

    @Test
    void anOrderIsFoundWithItsState() throws Exception {
        Membership office = production.as(Role.OFFICE);
        UUID order = orders.propose(
                office,
                new NewOrder(
                        DeliveredTo.OFFICE,
                        null,
                        null,
                        "",
                        PurchaseOrder.Source.HAND,
                        "",
                        List.of(NewOrder.Line.inWords(MediaKind.READER, "reader", 1, null, null, null))));
        assertThat(leadsTo("order 1")).isEqualTo(production.path("orders/" + order));
        assertThat(offered("ord").select("li").first().text()).isEqualTo("Order 1 order waits for approval");
    }

    @ParameterizedTest
    @CsvSource({
        "storage, storage",
        "DOCUMENTS, documents",
        "cost, ''",
        "costs, costs",
        "re-checks, re-checks",
        "clips, clips"
    })
    void aPageIsFoundByItsWord(String typed, String place) throws Exception {
        if (place.isEmpty()) {
            assertThat(page(typed).select("tbody a").attr("href")).isEqualTo(production.path("costs"));
        } else {
            assertThat(leadsTo(typed)).isEqualTo(production.path(place));
        }
    }

    @Test
    void aSupplierAndAScenarioAreFoundByTheirNames() {
        UUID supplier = UUID.randomUUID();
        jdbc.sql("""
                        insert into supplier_supplier (id, production_id, name, order_cut_off, delivery_minor_units,
                            lead_time_working_days, slow_lead_time_working_days) values (?, ?, 'Test Hire House', '12:00', 0, 1, 2)
                        """).params(supplier, production.id).update();
        UUID scenario = UUID.randomUUID();
        jdbc.sql("""
                        insert into scenario_scenario (id, production_id, name, inputs, saved_at, saved_by)
                        values (?, ?, 'Two readers', '{}', now(), ?)
                        """)
                .params(scenario, production.id, production.as(Role.OFFICE).personId())
                .update();
        assertThat(leadsTo("test hire house")).isEqualTo(production.path("suppliers/" + supplier));
        assertThat(leadsTo("two readers")).isEqualTo(production.path("turnaround/scenarios/" + scenario));
    }

    @Test
    void anItemIsFoundByItsSerialNumberAndOneThatIsHereBeforeOneThatWentBack() {
        UUID gone = production.item("OLD-1", "READER", set, null);
        UUID here = production.item("NEW-1", "READER", set, null);
        jdbc.sql("update inventory_item set serial = 'SN 470', condition = 'RETURNED' where id = ?")
                .param(gone)
                .update();
        assertThat(leadsTo("sn470")).isEqualTo(production.path("media/" + gone));
        jdbc.sql("update inventory_item set serial = 'sn 470' where id = ?")
                .param(here)
                .update();
        assertThat(leadsTo("SN 470")).isEqualTo(production.path("media/" + here));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "   ", "--", "%", "_", "Z999", "<Z999>", "'; drop table offload_roll; --", "\u0000Z", "\\"})
    void whatIsNothingIsAnsweredWithWhatCouldBeTyped(String typed) throws Exception {
        roll("A014");
        MvcTestResult result = get("find", typed, Role.READER);
        assertThat(result).hasStatus(404);
        assertThat(Jsoup.parse(result.getResponse().getContentAsString())
                        .select("main")
                        .text())
                .contains("day 11", "order 12", "SHA-256");
        assertThat(get("find/suggestions", typed, Role.READER)).hasStatusOk();
        assertThat(offered(typed).select("li")).isEmpty();
    }

    @Test
    void theBoxOffersWhatBeginsSoWithWhatItIsAndItsStateAndWhereItLeads() throws Exception {
        UUID roll = roll("A014");
        UUID reader = production.item("A-READER", "READER", set, null);
        Document offered = offered("a");
        assertThat(offered.select("ul").attr("role")).isEqualTo("listbox");
        assertThat(offered.select("ul").attr("data-says")).isEqualTo("2 suggestions.");
        assertThat(offered.select("li[role=option][id]").eachText())
                .containsExactly("A014 roll CARD-A014 Thu 13 Mar 2031 exposed", "A-READER reader Set good");
        assertThat(offered.select("li").eachAttr("data-href"))
                .containsExactly(production.path("rolls/" + roll), production.path("media/" + reader));
        assertThat(offered("card").select("li").attr("data-href"))
                .as("a card that holds a roll leads to the roll's page")
                .isEqualTo(production.path("find?code=CARD-A014"));
    }

    @Test
    void itOffersFewAndSaysThatThereAreMore() throws Exception {
        for (int i = 0; i < 12; i++) {
            production.item("DRIVE-" + i, "DRIVE", set, null);
        }
        Document offered = offered("drive");
        assertThat(offered.select("li")).hasSize(8);
        assertThat(offered.select("ul").attr("data-says")).startsWith("The first 8");
    }

    @Test
    void offeringTakesOneStatementAndOneMoreForClipsHoweverMuchThereIs() throws Exception {
        int session = statements.during(() -> get("find/suggestions", "", Role.READER));
        for (int i = 0; i < 12; i++) {
            production.item("DRIVE-" + i, "DRIVE", set, null);
        }
        assertThat(statements.during(() -> get("find/suggestions", "drive", Role.READER)) - session)
                .isZero();
        assertThat(statements.during(() -> get("find/suggestions", "zzz", Role.READER)) - session)
                .isOne();
    }

    @Test
    void anotherProductionsThingsAreNeitherFoundNorOffered() throws Exception {
        roll("A014");
        TestProduction other = fixtures.production();
        assertThat(mvc.get().uri(other.path("find?code=A014")).with(other.signedInAs(Role.ADMINISTRATOR)))
                .hasStatus(404);
        assertThat(mvc.get().uri(other.path("find/suggestions?code=A")).with(other.signedInAs(Role.ADMINISTRATOR)))
                .hasStatusOk()
                .bodyText()
                .doesNotContain("A014");
        assertThat(mvc.get().uri(production.path("find/suggestions?code=A")).with(other.signedInAs(Role.ADMINISTRATOR)))
                .hasStatus(404);
    }

    @Test
    void aBackgroundRequestOfSomebodySignedOutIsNotWhereSigningInLeads() {
        MvcTestResult result = mvc.get()
                .uri(production.path("find/suggestions?code=A"))
                .header("Sec-Fetch-Dest", "empty")
                .exchange();
        assertThat(result).hasStatus3xxRedirection();
        assertThat(result.getResponse().getCookie("REDIRECT_URI")).isNull();
        assertThat(mvc.get()
                        .uri(production.path("today"))
                        .header("Sec-Fetch-Dest", "document")
                        .exchange()
                        .getResponse()
                        .getCookie("REDIRECT_URI"))
                .isNotNull();
    }

    private UUID roll(String code) {
        Membership wrangler = production.as(Role.WRANGLER);
        UUID card = production.item("CARD-" + code, "CARD", set, null);
        UUID roll = rolls.load(wrangler, code, camera, day, card, format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        return roll;
    }

    private String leadsTo(String typed) {
        MvcTestResult result = get("find", typed, Role.WRANGLER);
        assertThat(result).as(typed).hasStatus3xxRedirection();
        return result.getResponse().getRedirectedUrl();
    }

    private Document page(String typed) throws Exception {
        MvcTestResult result = get("find", typed, Role.READER);
        assertThat(result).as(typed).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    private Document offered(String typed) throws Exception {
        return Jsoup.parse(
                get("find/suggestions", typed, Role.READER).getResponse().getContentAsString());
    }

    private MvcTestResult get(String path, String typed, Role role) {
        return mvc.get()
                .uri(URI.create(production.path(path) + "?code="
                        + URLEncoder.encode(typed, StandardCharsets.UTF_8).replace("+", "%20")))
                .with(production.signedInAs(role))
                .exchange();
    }
}
