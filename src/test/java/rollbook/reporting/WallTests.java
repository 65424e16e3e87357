package rollbook.reporting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;
import rollbook.web.Refresh;

@PortalTest
class WallTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    StatementCount statements;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private UUID set;
    private UUID camera;
    private UUID day;
    private UUID format;

    @BeforeEach
    void makeProductionThatShoots() {
        production = fixtures.production();
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 11, "SHOOTING");
        format = production.format("F");
    }

    @ParameterizedTest
    @EnumSource
    void everyRoleHasItEvenBeforeThereIsAnything(Role role) throws Exception {
        production = fixtures.production();
        assertThat(wall(role).select("h1").text()).isEqualTo("No day is being shot, and none is planned.");
    }

    @Test
    void itTellsOfTheDayItsRollsAndWhatWaits() throws Exception {
        exposedRoll("A001");
        Document wall = wall(Role.READER);
        assertThat(wall.select("h1").text()).isEqualTo("Day 11 of Main is being shot: 1 roll so far.");
        assertThat(wall.select("#wall-copying").text()).contains("1 card waits to be copied: CARD-A001.");
        assertThat(wall.select("#wall-erase").text()).contains("No card.", "a wall decides nothing");
    }

    @Test
    void itTellsWhichCardsAreHeldAndWhyTheFirstFewOfThem() throws Exception {
        production.leg("Vault", production.place("House", true), true);
        for (int i = 1; i <= 6; i++) {
            exposedRoll("A00" + i);
        }
        jdbc.sql("update inventory_item set card_state = 'HELD' where production_id = ? and kind = 'CARD'")
                .param(production.id)
                .update();
        Element held = wall(Role.READER).getElementById("wall-held");
        assertThat(held.select("p").first().text()).isEqualTo("6 cards.");
        assertThat(held.select("li")).hasSize(4);
        assertThat(held.select("li").first().text()).startsWith("A001 on CARD-A001: ");
        assertThat(held.text()).endsWith("and 2 more");
    }

    @Test
    void itOffersNoActAndNoWayButBack() throws Exception {
        exposedRoll("A001");
        Document wall = wall(Role.ADMINISTRATOR);
        assertThat(wall.select("form, button, nav")).isEmpty();
        assertThat(wall.select("a[href]").eachAttr("href")).containsExactly(production.path("today"));
        assertThat(wall.select("#live").attr("data-kind")).isEqualTo("wall");
    }

    @Test
    void todayLeadsToIt() throws Exception {
        assertThat(page("today", Role.WRANGLER).select("main a").eachAttr("href"))
                .contains(production.path("wall"));
    }

    @Test
    void itTakesFewStatements() throws Exception {
        exposedRoll("A001");
        assertThat(statements.during(() -> wall(Role.WRANGLER))).isLessThanOrEqualTo(12);
    }

    @Test
    void anOpenWallIsToldOfAChangeAndOtherwiseThatThereIsNone() throws Exception {
        exposedRoll("A001");
        String fingerprint = wall(Role.WRANGLER).select("#live").attr("data-fingerprint");
        assertThat(ask(fingerprint)).hasStatus(304);
        exposedRoll("A002");
        assertThat(ask(fingerprint)).hasStatusOk().bodyText().contains("2 rolls so far");
    }

    @Test
    void anOpenPageOfSomebodyWhoIsSignedOutIsToldSoAndIsNotWhereTheyWanted() {
        MvcTestResult open = mvc.get()
                .uri(production.path("wall"))
                .header(Refresh.HEADER, "wall")
                .exchange();
        assertThat(open).hasStatus(401);
        assertThat(open.getResponse().getCookie("REDIRECT_URI")).isNull();

        MvcTestResult person = mvc.get().uri(production.path("wall")).exchange();
        assertThat(person).hasStatus3xxRedirection();
        assertThat(person.getResponse().getHeader(HttpHeaders.LOCATION)).endsWith("/sign-in");
        assertThat(person.getResponse().getCookie("REDIRECT_URI")).isNotNull();
    }

    private MvcTestResult ask(String fingerprint) {
        return mvc.get()
                .uri(production.path("wall"))
                .with(production.signedInAs(Role.WRANGLER))
                .header(Refresh.HEADER, "wall")
                .header(HttpHeaders.IF_NONE_MATCH, fingerprint)
                .exchange();
    }

    private void exposedRoll(String code) {
        Membership wrangler = production.as(Role.WRANGLER);
        UUID card = production.item("CARD-" + code, "CARD", set, null);
        rolls.pull(wrangler, rolls.load(wrangler, code, camera, day, card, format), BigDecimal.TEN);
    }

    private Document wall(Role role) throws Exception {
        return page("wall", role);
    }

    private Document page(String path, Role role) throws Exception {
        MvcTestResult result = mvc.get()
                .uri(production.path(path))
                .with(production.signedInAs(role))
                .exchange();
        assertThat(result).as(path).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
