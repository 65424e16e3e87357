package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.production.SettingsPages.error;
import static rollbook.production.SettingsPages.page;

import java.time.DayOfWeek;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

/** The overview, and the pages of the production, its units and holidays. */
@PortalTest
class SettingsTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Productions productions;

    @Autowired
    StatementCount statements;

    private TestProduction production;
    private SettingsPages pages;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        pages = new SettingsPages(mvc, production);
        set = production.place("Set", false);
    }

    @Test
    void theOverviewTellsThePlanInWordsAndDefersToWhoDecides() throws Exception {
        production.leg("Shuttle", set, true);
        Document page = page(pages.get(Role.READER, "settings"));
        assertThat(page.select(".sentence").text()).startsWith("Every roll gets one copy. A card may be cleared when");
        assertThat(page.select("main").text())
                .contains("Every roll as recorded, on a drive at Set; the medium is kept.")
                .contains("2 copies asked for, one leg makes one")
                .contains("An encoded copy can’t share checksums with the card")
                .contains("insurer and its contracts decide");
        assertThat(page.select("main a[href*=/settings/], main form"))
                .as("a reader is offered no change")
                .isEmpty();
    }

    @Test
    void theOverviewOffersTheOfficeWhatItKeepsAndAdministratorsAll() throws Exception {
        production.leg("Shuttle", set, true);
        assertThat(page(pages.get(Role.OFFICE, "settings"))
                        .select("main a[href*=/settings/]")
                        .eachAttr("href"))
                .containsExactlyInAnyOrder(
                        production.path("settings/working-days"),
                        production.path("settings/holidays/new"),
                        production.path("settings/places/" + set),
                        production.path("settings/places/new"));
        assertThat(page(pages.get(Role.ADMINISTRATOR, "settings"))
                        .select("main a[href*=/settings/]")
                        .eachAttr("href"))
                .contains(production.path("settings/legs/new"), production.path("settings/clearing/CARD"));
    }

    @Test
    void theNumberOfStatementsDoesNotGrowWithTheRows() throws Exception {
        int few = statements.during(() -> pages.get(Role.ADMINISTRATOR, "settings"));
        for (int i = 0; i < 8; i++) {
            UUID unit = production.unit("Unit " + i);
            production.camera(unit, String.valueOf((char) ('A' + i)));
            production.leg("Leg " + i, production.place("Place " + i, false), true);
        }
        int many = statements.during(() -> pages.get(Role.ADMINISTRATOR, "settings"));
        assertThat(many).isEqualTo(few).isLessThanOrEqualTo(12);
    }

    @Test
    void nameZoneAndCurrencyAreChangedOnceAndAStaleFormIsRefused() throws Exception {
        Map<String, String> form = Map.of("name", "Ebb", "zone", "UTC", "currency", "gbp", "version", "0");
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/production", form))
                .hasRedirectedUrl(production.path("settings"));
        Production changed = productions.get(production.id);
        assertThat(changed.name() + changed.zone() + changed.currency()).isEqualTo("EbbUTCGBP");

        pages.assertStale(pages.post(Role.ADMINISTRATOR, "settings/production", form));
    }

    @Test
    void workingDaysNeedAtLeastOne() throws Exception {
        var none = pages.post(Role.OFFICE, "settings/working-days", Map.of("_workingDays", "on", "version", "0"));
        assertThat(none).hasStatus(422);
        assertThat(error(none, "workingDays")).contains("at least one weekday");

        pages.post(Role.OFFICE, "settings/working-days", Map.of("workingDays", "SATURDAY", "version", "0"));
        assertThat(productions.get(production.id).workingDays()).containsExactly(DayOfWeek.SATURDAY);
    }

    @Test
    void holidaysComeAndGo() throws Exception {
        pages.post(Role.OFFICE, "settings/holidays/new", Map.of("date", "2031-03-04", "name", "Fair"));
        assertThat(page(pages.get(Role.READER, "settings")).text()).contains("Tue 4 Mar 2031: Fair");
        assertThat(error(
                        pages.post(Role.OFFICE, "settings/holidays/new", Map.of("date", "soon", "name", "Fair")),
                        "date"))
                .contains("Write a date");

        assertThat(pages.post(Role.OFFICE, "settings/holidays/2031-03-04/remove", Map.of()))
                .hasRedirectedUrl(production.path("settings"));
        assertThat(productions.holidays(production.id)).isEmpty();
        assertThat(pages.post(Role.OFFICE, "settings/holidays/2031-03-04/remove", Map.of()))
                .hasStatus(404);
    }

    @Test
    void aUnitsNameAndACamerasLetterAreUsedOnce() throws Exception {
        UUID unit = production.unit("Main");
        production.camera(unit, "A");
        assertThat(error(pages.post(Role.ADMINISTRATOR, "settings/units/new", Map.of("name", "MAIN")), "name"))
                .contains("There is a unit named MAIN already");
        assertThat(error(
                        pages.post(
                                Role.ADMINISTRATOR,
                                "settings/cameras/new",
                                Map.of("unit", unit.toString(), "letter", "a")),
                        "letter"))
                .contains("There is a camera A already");
    }

    @Test
    void aUnitWithCamerasStaysAndAnEmptyOneGoes() throws Exception {
        UUID unit = production.unit("Main");
        UUID camera = production.camera(unit, "A");
        pages.assertRefused(
                pages.post(Role.ADMINISTRATOR, "settings/units/" + unit + "/remove", Map.of()),
                "Unit Main has cameras");
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/cameras/" + camera + "/remove", Map.of()))
                .hasStatus3xxRedirection();
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/units/" + unit + "/remove", Map.of()))
                .hasStatus3xxRedirection();
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/units/" + unit + "/remove", Map.of()))
                .hasStatus(404);
    }

    @Test
    void everyChangeStandsOnRecord() throws Exception {
        pages.post(Role.OFFICE, "settings/places/new", Map.of("name", "Vault", "offSite", "true", "version", "0"));
        assertThat(jdbc.sql(
                                "select action || ' ' || subject_code || ' ' || person_name from audit_act where production_id = ? order by id desc limit 1")
                        .param(production.id)
                        .query(String.class)
                        .single())
                .isEqualTo("place.added Vault OFFICE");
    }
}
