package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
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
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

@PortalTest
class TurnaroundPageTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    private TurnaroundScene scene;

    @BeforeEach
    void makeScene() {
        scene = new TurnaroundScene(fixtures);
    }

    private MvcTestResult get(TestProduction production, String path, Role role, String... params) {
        var request = mvc.get().uri(path).with(production.signedInAs(role));
        for (int i = 0; i < params.length; i += 2) {
            request = request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    private Document page(String... params) throws Exception {
        MvcTestResult result = get(scene.production, scene.path(""), Role.READER, params);
        assertThat(result).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    @Test
    void theNextDayIsPlayedAsTheProductionKnowsIt() throws Exception {
        Document page = page();
        assertThat(page.title()).startsWith("Turnaround, day 1 of the Main unit");
        assertThat(page.select("#sentence").text())
                .startsWith("With 4 cards no camera waits. The last card is proven at ")
                .contains("after wrap");
        assertThat(page.select("nav.places a[aria-current]").text()).isEqualTo("Days");
        assertThat(page.select("input[name=minutes.A]").val()).isEqualTo("120");
        assertThat(hint(page, "minutes.A")).isEqualTo("From the day’s plan: plain.");
        assertThat(hint(page, "write-rate.Shuttle")).isEqualTo("From the media list: SHUTTLE-1.");
        assertThat(hint(page, "take")).isEqualTo("The usual; nobody said otherwise.");
        assertThat(page.select(".timeline .bar[aria-label^=Camera], .timeline .bar[aria-label^=A:]"))
                .isNotEmpty();
        assertThat(page.select("button:contains(Save)"))
                .as("a reader keeps nothing")
                .isEmpty();
    }

    private static String hint(Document page, String name) {
        return page.getElementById(page.select("[name=" + name + "]").attr("id") + "-hint")
                .text();
    }

    @Test
    void aChangedFigureIsPlayedAndSaysWhatItWas() throws Exception {
        Document page = page("cards.test-model-1000000", "1", "take", "5", "fill", "5");
        assertThat(page.select("#sentence").text()).startsWith("With 1 card cameras wait for blank ones");
        assertThat(hint(page, "take")).isEqualTo("Changed, it was: 3. The usual; nobody said otherwise.");
        assertThat(page.select(".bar[aria-label*=waits for a card]")).isNotEmpty();
    }

    @Test
    void everyBarStandsInTheTableToo() throws Exception {
        Document page = page();
        assertThat(page.select(".timeline .bar"))
                .hasSameSizeAs(page.select("section[aria-labelledby=timeline] details tbody tr"))
                .hasSizeGreaterThan(10);
        assertThat(page.select(".timeline .bar[aria-label=''], .timeline .bar:not(:has(title))"))
                .isEmpty();
    }

    @Test
    void whatCannotBeIsSaidAtItsFieldAndStaysAsTyped() throws Exception {
        MvcTestResult result = get(scene.production, scene.path(""), Role.WRANGLER, "take", "long", "wrap", "17:00");
        assertThat(result).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = Jsoup.parse(result.getResponse().getContentAsString());
        assertThat(page.title()).startsWith("Error:");
        assertThat(page.select("input[name=take]").val()).isEqualTo("long");
        assertThat(page.select("input[name=wrap]").val()).isEqualTo("17:00");
        assertThat(page.select(".field.wrong .error").text()).contains("Write a number in digits.");
        assertThat(page.select("#error-summary a").attr("href"))
                .isEqualTo("#" + page.select("input[name=take]").attr("id"));
        assertThat(page.select(".timeline")).isEmpty();
    }

    @Test
    void anAmountThatNobodyCanPayIsWrongAndNoFailure() throws Exception {
        MvcTestResult result = get(scene.production, scene.path(""), Role.READER, "card-week", "140.001");
        assertThat(result).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Jsoup.parse(result.getResponse().getContentAsString())
                        .select(".field.wrong .error")
                        .text())
                .endsWith("Use 2 decimals at most, as the currency has.");
    }

    @Test
    void aDayThatIsBeingShotGoesOnFromNow() throws Exception {
        jdbc.sql("update schedule_day set state = 'SHOOTING' where id = ?")
                .param(scene.day)
                .update();
        var wrangler = scene.production.as(Role.WRANGLER);
        UUID roll = rolls.load(wrangler, "A001", scene.camera, scene.day, scene.cards.get(0), scene.format);
        rolls.pull(wrangler, roll, new BigDecimal("30"));
        rolls.load(wrangler, "A002", scene.camera, scene.day, scene.cards.get(1), scene.format);
        Document page = page();
        assertThat(page.select("main").text())
                .contains("This day is being shot: 2 rolls are recorded")
                .contains("the cards now are 2 blank, 1 in camera, 1 exposed.")
                .contains("and 1 exposed card, which waits for a reader first");
        assertThat(page.select("input[name=cards.test-model-1000000]").val()).isEqualTo("3");
        assertThat(page.select("input[name=minutes.A]").val()).isEqualTo("90");
        // 30 minutes of 24 MB/s, 43.2 GB, are at a reader from the first moment on.
        assertThat(page.select("section[aria-labelledby=timeline] details tbody tr")
                        .eachText())
                .anySatisfy(row -> assertThat(row).contains("CARD-1", "copying"));
        assertThat(hint(page, "call")).isEqualTo("As it stands now.");
    }

    @Test
    void whereSomethingIsMissingThePageSaysWhatBelongsThere() throws Exception {
        TestProduction empty = fixtures.production();
        missing(empty, "No shooting day lies ahead.");
        UUID unit = empty.unit("Main unit");
        UUID day = empty.day(unit, 1, "PLANNED");
        missing(empty, "No camera has planned minutes on this day.");
        empty.plan(day, empty.camera(unit, "A"), empty.format("plain"), "60");
        missing(empty, "No card is in good condition on set.");
        UUID set = empty.place("Set", false);
        empty.item("CARD-1", "CARD", set, null);
        missing(empty, "No reader is in good condition on set.");
        empty.item("READER-1", "READER", set, null);
        missing(empty, "The copy plan has no leg.");
    }

    private void missing(TestProduction production, String sentence) throws Exception {
        MvcTestResult result = get(production, production.path("turnaround"), Role.READER);
        assertThat(result).hasStatusOk();
        Document page = Jsoup.parse(result.getResponse().getContentAsString());
        assertThat(page.select("#sentence").text()).isEqualTo(sentence);
        assertThat(page.select(".empty .button")).hasSize(1);
    }

    @Test
    void aDayOfAnotherProductionIsUnknown() {
        TurnaroundScene other = new TurnaroundScene(fixtures);
        assertThat(get(scene.production, scene.path(""), Role.ADMINISTRATOR, "day", other.day.toString()))
                .hasStatus(HttpStatus.NOT_FOUND);
    }
}
