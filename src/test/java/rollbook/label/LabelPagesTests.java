package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import java.net.URI;
import java.util.Locale;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

@PortalTest
class LabelPagesTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private TestProduction production;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
    }

    @Test
    void thePageAsksWhatToPrintBeforeAnythingIsNamed() throws Exception {
        Document page =
                Jsoup.parse(get("media/labels", Role.READER).getResponse().getContentAsString());
        assertThat(page.select(".error, .label-sheet, a.primary")).isEmpty();
        assertThat(page.select("#first").attr("value")).isEqualTo("1");
        assertThat(page.select("#sheet option")).hasSize(SheetKind.values().length);
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void everybodyOfTheProductionSeesTheFirstSheetAndTheWayToAllOfThem(Role role) throws Exception {
        cards(30);
        Document page =
                Jsoup.parse(get("media/labels?items=card-001%20to%20card-030&sheet=A4_24&first=5&copies=1", role)
                        .getResponse()
                        .getContentAsString());
        assertThat(page.select("#sentence").text()).isEqualTo("30 labels on 2 sheets, from position 5.");
        assertThat(page.select(".label-one")).hasSize(20);
        assertThat(page.select(".label-one").first().className()).contains("at-5");
        assertThat(page.select(".label-one").first().select("p").eachText())
                .containsExactly("CARD-001", "card, 1.00 TB", "test model", "bought", "Test " + production.code);
        String href = page.select("a.primary").attr("href");
        assertThat(mvc.get().uri(URI.create(href)).with(production.signedInAs(role)))
                .hasStatusOk()
                .hasContentType("application/pdf")
                .headers()
                .hasValue(
                        "Content-Disposition",
                        "inline; filename=\"labels-" + production.code.toLowerCase(Locale.ROOT) + ".pdf\"");
        assertThat(mvc.get()
                        .uri(page.select("link[href^=/labels/]").attr("href"))
                        .with(production.signedInAs(role)))
                .hasStatusOk()
                .hasContentType("text/css");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "items=|items|No item is named.",
                "items=%20,%20|items|No item is named.",
                "items=CARD-001%20SPOON|items|SPOON is not registered in this production.",
                "items=A%20B%20CARD-001%20C%20D%20E|items|A, B, C and 2 more are not registered in this production.",
                "items=A%20B%20C%20D|items|A, B, C and one more are not registered in this production.",
                "items=CARD-001%20to%20CARD-004|items|CARD-004 is not registered in this production.",
                "items=CARD-002%20to%20CARD-001|items|CARD-002 and CARD-001 are not the first and last of a run",
                "items=X001%20to%20X251%20Y001%20to%20Y250|items|That makes 501 labels. Print at most 500 at a time.",
                "items=CARD-001&sheet=SPOON|sheet|That is not one of the sheets.",
                "items=CARD-001&sheet=A4_24&first=25|first|Write a whole number from 1 to 24.",
                "items=CARD-001&sheet=A4_24&first=0|first|Write a whole number from 1 to 24.",
                "items=CARD-001&first=x|first|Write a whole number from 1 to 24.",
                "items=CARD-001&copies=11|copies|Write a whole number from 1 to 10.",
            })
    void whatCanNotBePrintedIsSaidAtItsField(String query, String field, String problem) throws Exception {
        cards(3);
        for (String path : new String[] {"media/labels?", "media/labels.pdf?"}) {
            MvcTestResult result = get(path + query, Role.OFFICE);
            assertThat(result).hasStatus(422);
            Document page = Jsoup.parse(result.getResponse().getContentAsString());
            assertThat(page.select("#" + field + "-error").text()).contains(problem);
            assertThat(page.select(".error-summary a").eachAttr("href")).containsExactly("#" + field);
            assertThat(page.select(".label-sheet, a.primary")).isEmpty();
        }
    }

    @Test
    void aListThatIsTooLongIsShownAgainAsItWasTyped() throws Exception {
        String typed = "CARD-001 ".repeat(500).strip();
        MvcTestResult result = get("media/labels?items=" + typed.replace(" ", "%20"), Role.OFFICE);
        assertThat(result).hasStatus(422);
        assertThat(Jsoup.parse(result.getResponse().getContentAsString())
                        .select("#items")
                        .text())
                .isEqualTo(typed);
    }

    @Test
    void labelsOfEachItemCountTowardsTheMost() {
        cards(51);
        assertThat(get("media/labels?items=CARD-001%20to%20CARD-051&copies=10", Role.OFFICE))
                .hasStatus(422)
                .bodyText()
                .contains("That makes 510 labels. Print at most 500 at a time.");
        assertThat(get("media/labels?items=CARD-001%20to%20CARD-050&copies=10", Role.OFFICE))
                .hasStatusOk();
    }

    @Test
    void problemsAreListedInTheOrderOfTheFields() throws Exception {
        MvcTestResult result = get("media/labels?items=SPOON&sheet=A4_24&first=0&copies=0", Role.OFFICE);
        assertThat(Jsoup.parse(result.getResponse().getContentAsString())
                        .select(".error-summary a")
                        .eachAttr("href"))
                .containsExactly("#items", "#first", "#copies");
    }

    @Test
    void anotherProductionsItemIsUnknown() throws Exception {
        TestProduction other = fixtures.production();
        other.item("THEIRS-1", "CARD", other.place("Set", false), null);
        MvcTestResult result = get("media/labels?items=THEIRS-1", Role.ADMINISTRATOR);
        assertThat(result).hasStatus(422).bodyText().contains("THEIRS-1 is not registered in this production.");
    }

    @Test
    void ofAPrinterForSingleLabelsThePositionIsNotAsked() {
        cards(1);
        assertThat(get("media/labels?items=CARD-001&sheet=SINGLE_62&first=9", Role.OFFICE))
                .hasStatusOk()
                .bodyText()
                .contains("One label, each on a page of its own.");
    }

    @Test
    void theFilteredListLeadsToItsLabels() throws Exception {
        cards(5);
        production.item("DRIVE-1", "DRIVE", set, null);
        jdbc.sql("update inventory_item set card_state = 'HELD' where production_id = ? and code = 'CARD-004'")
                .param(production.id)
                .update();
        Document list = Jsoup.parse(
                get("media?kind=CARD&state=BLANK", Role.READER).getResponse().getContentAsString());
        String href = list.select("a:contains(Labels for this list)").attr("href");
        MvcTestResult result = mvc.get()
                .uri(URI.create(href))
                .with(production.signedInAs(Role.READER))
                .exchange();
        Document page = Jsoup.parse(mvc.get()
                .uri(URI.create(result.getResponse().getRedirectedUrl()))
                .with(production.signedInAs(Role.READER))
                .exchange()
                .getResponse()
                .getContentAsString());
        assertThat(page.select("#items").text()).isEqualTo("CARD-001 to CARD-003, CARD-005");
        assertThat(page.select(".label-one")).hasSize(4);
    }

    @Test
    void aListOfTooManyItemsIsRefusedWithAWayOut() {
        jdbc.sql("""
                insert into inventory_item (id, production_id, code, kind, model, capacity_bytes, ownership, place_id,
                    condition, card_state, created_at)
                select gen_random_uuid(), ?, 'CARD-' || lpad(n::text, 3, '0'), 'CARD', 'test model', 1000, 'BOUGHT', ?,
                    'GOOD', 'BLANK', now() from generate_series(1, 501) n
                """).params(production.id, set).update();
        assertThat(get("media/labels/of-list", Role.OFFICE))
                .hasStatus(409)
                .bodyText()
                .contains("The list has 501 items", "Narrow the list");
    }

    @Test
    void theItemsPageLeadsToItsLabel() throws Exception {
        UUID card = production.item("CARD-001", "CARD", set, null);
        Document page =
                Jsoup.parse(get("media/" + card, Role.READER).getResponse().getContentAsString());
        assertThat(page.select("a:contains(Print its label)").attr("href"))
                .isEqualTo(production.path("media/labels?items=CARD-001"));
    }

    @Test
    void aRunThatWasJustRegisteredLeadsToItsLabels() throws Exception {
        MvcTestResult registered = mvc.post()
                .uri(production.path("media/run"))
                .with(production.signedInAs(Role.OFFICE))
                .param("prefix", "CARD-")
                .param("first", "1")
                .param("digits", "3")
                .param("count", "12")
                .param("kind", "CARD")
                .param("model", "960 GB card")
                .param("capacityGb", "960")
                .param("owner", "BOUGHT")
                .param("place", "Set")
                .exchange();
        assertThat(registered).hasRedirectedUrl(production.path("media"));
        Document list = Jsoup.parse(mvc.get()
                .uri(production.path("media"))
                .with(production.signedInAs(Role.OFFICE))
                .cookie(registered.getResponse().getCookie("SESSION"))
                .exchange()
                .getResponse()
                .getContentAsString());
        String href = list.select("a:contains(Print their labels)").attr("href");
        assertThat(href).isEqualTo(production.path("media/labels?items=CARD-001%20to%20CARD-012"));
        assertThat(mvc.get().uri(URI.create(href)).with(production.signedInAs(Role.OFFICE)))
                .hasStatusOk()
                .bodyText()
                .contains("12 labels on one sheet.");
        assertThat(Jsoup.parse(get("media", Role.OFFICE).getResponse().getContentAsString())
                        .select("a:contains(Print their labels)"))
                .isEmpty();
    }

    @Test
    void theSheetThatWasPrintedOnLastIsOfferedFirst() throws Exception {
        cards(1);
        Cookie cookie = get("media/labels?items=CARD-001&sheet=SINGLE_50", Role.OFFICE)
                .getResponse()
                .getCookie("rollbook-sheet");
        assertThat(cookie.isHttpOnly()).isTrue();
        for (String path : new String[] {"media/labels", "media/labels?items=CARD-001"}) {
            Document page = Jsoup.parse(mvc.get()
                    .uri(production.path(path))
                    .cookie(cookie)
                    .with(production.signedInAs(Role.OFFICE))
                    .exchange()
                    .getResponse()
                    .getContentAsString());
            assertThat(page.select("#sheet option[selected]").val()).isEqualTo("SINGLE_50");
        }
    }

    @Test
    void aSheetThatWasTakenOutSinceIsAskedForAgain() throws Exception {
        cards(1);
        assertThat(mvc.get()
                        .uri(production.path("media/labels?items=CARD-001"))
                        .cookie(new Cookie("rollbook-sheet", "A3_99"))
                        .with(production.signedInAs(Role.OFFICE)))
                .hasStatus(422);
        assertThat(mvc.get().uri("/labels/A3_99.css").with(production.signedInAs(Role.OFFICE)))
                .hasStatus(404);
    }

    @Test
    void printingTakesTheSameFewStatementsForOneAsForMany() throws Exception {
        cards(200);
        int one = statements.during(() -> get("media/labels?items=CARD-001", Role.OFFICE));
        int many = statements.during(() -> get("media/labels?items=CARD-001%20to%20CARD-200", Role.OFFICE));
        assertThat(many).isEqualTo(one).isLessThanOrEqualTo(10);
    }

    private void cards(int count) {
        for (int i = 1; i <= count; i++) {
            production.item("CARD-%03d".formatted(i), "CARD", set, null);
        }
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get()
                .uri(URI.create(production.path(path)))
                .with(production.signedInAs(role))
                .exchange();
    }
}
