package rollbook.reporting;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
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

@PortalTest
class ReportingTests {
    @Autowired
    Orders orders;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    StatementCount statements;

    @Autowired
    MessageSource messages;

    private TestProduction production;
    private UUID set;
    private UUID camera;
    private UUID day;
    private UUID format;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 11, "SHOOTING");
        format = production.format("F");
    }

    @Test
    void todayAnswersEveryRolesQuestionTheViewersOwnFirst() throws Exception {
        exposedRoll("A001");
        assertThat(page("today", Role.WRANGLER).select("h2").first().text()).isEqualTo("On set");
        assertThat(page("today", Role.OFFICE).select("h2").first().text()).isEqualTo("Production office");
        assertThat(page("today", Role.POST).select("h2").first().text()).isEqualTo("Post");
        assertThat(page("today", Role.READER).text())
                .contains(
                        "May I hand this card back?",
                        "Which files are wrong?",
                        "1 card waits to be copied.",
                        "What must be ordered",
                        "Will storage last the show?",
                        "Is everything proven?");
    }

    @Test
    void aProductionWithNothingInItHasATodayPageToo() throws Exception {
        production = fixtures.production();
        assertThat(page("today", Role.WRANGLER).select("#sentence").text()).isEqualTo("No card waits for an answer.");
    }

    @Test
    void todayTakesTheSameFewStatementsHoweverManyRollsThereAre() throws Exception {
        exposedRoll("A001");
        int few = statements.during(() -> page("today", Role.WRANGLER));
        for (int i = 2; i < 12; i++) {
            exposedRoll("A%03d".formatted(i));
        }
        assertThat(statements.during(() -> page("today", Role.WRANGLER)))
                .isEqualTo(few)
                .isLessThanOrEqualTo(12);
    }

    @Test
    void theBoxFindsRollsItemsAndDaysByCodeInAnyCase() {
        UUID roll = exposedRoll("A001");
        UUID drive = production.item("SHUTTLE-1", "DRIVE", set, null);
        assertThat(found("a001")).isEqualTo(production.path("rolls/" + roll));
        assertThat(found(" shuttle-1 ")).isEqualTo(production.path("media/" + drive));
        assertThat(found("card-a001")).as("a card that holds a roll").isEqualTo(production.path("rolls/" + roll));
        assertThat(found("Day 11")).isEqualTo(production.path("rolls?day=" + day));
    }

    @Test
    void theBoxFindsAnOrderByItsNumber() {
        UUID order = orders.propose(
                production.as(Role.OFFICE),
                new NewOrder(
                        DeliveredTo.OFFICE,
                        null,
                        null,
                        "",
                        PurchaseOrder.Source.HAND,
                        "",
                        List.of(NewOrder.Line.inWords(MediaKind.READER, "reader", 1, null, null, null))));
        assertThat(found("order 1")).isEqualTo(production.path("orders/" + order));
        assertThat(found("ORDER-01")).isEqualTo(production.path("orders/" + order));
    }

    @Test
    void whatIsNotFoundIsSaidWithWhatCouldBe() throws Exception {
        MvcTestResult result = get("find?code=<Z999>", Role.READER);
        assertThat(result).hasStatus(404);
        assertThat(Jsoup.parse(result.getResponse().getContentAsString())
                        .select("#sentence")
                        .text())
                .isEqualTo("Nothing here is called “<Z999>”.");
        TestProduction other = fixtures.production();
        exposedRoll("A001");
        assertThat(mvc.get().uri(other.path("find?code=A001")).with(other.signedInAs(Role.WRANGLER)))
                .hasStatus(404);
    }

    @Test
    void theRecordTellsWhoDidWhatAndCanBeFiltered() throws Exception {
        exposedRoll("A001");
        exposedRoll("A002");
        Document all = page("record", Role.READER);
        assertThat(all.text()).contains("WRANGLER", "loaded roll A001", "pulled roll A002");
        assertThat(page("record?text=A002", Role.READER).select("tbody").text())
                .contains("A002")
                .doesNotContain("A001");
    }

    @Test
    void strangersSeeNone() {
        TestProduction other = fixtures.production();
        for (String path : List.of("", "today", "record", "find?code=A001")) {
            assertThat(mvc.get().uri(production.path(path)).with(other.signedInAs(Role.ADMINISTRATOR)))
                    .as(path)
                    .hasStatus(404);
        }
    }

    @Test
    void everyActThatTheCodeRecordsHasWords() throws IOException {
        Pattern act = Pattern.compile("act\\(\\s*\"([a-z-]+\\.[a-z-]+)\",\\s*\"([a-z-]+)\"");
        Set<String> keys = new TreeSet<>();
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            for (Path source :
                    sources.filter(path -> path.toString().endsWith(".java")).toList()) {
                Matcher acts = act.matcher(Files.readString(source));
                while (acts.find()) {
                    keys.add("audit.action." + acts.group(1));
                    keys.add("audit.subject." + acts.group(2));
                }
            }
        }
        assertThat(keys).hasSizeGreaterThan(20);
        assertThat(keys)
                .allSatisfy(key -> assertThat(messages.getMessage(key, null, "", java.util.Locale.UK))
                        .as(key)
                        .isNotEmpty());
    }

    private UUID exposedRoll(String code) {
        Membership wrangler = production.as(Role.WRANGLER);
        UUID card = production.item("CARD-" + code, "CARD", set, null);
        UUID roll = rolls.load(wrangler, code, camera, day, card, format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        return roll;
    }

    private String found(String code) {
        MvcTestResult result = get("find?code=" + code, Role.WRANGLER);
        assertThat(result).hasStatus3xxRedirection();
        return result.getResponse().getRedirectedUrl();
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get()
                .uri(production.path("{rest}").replace("{rest}", path))
                .with(production.signedInAs(role))
                .exchange();
    }

    private Document page(String path, Role role) throws Exception {
        MvcTestResult result = get(path, role);
        assertThat(result).as(path).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
