package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalTime;
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
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;

@PortalTest
class SupplyFormTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Supplies supplies;

    @Autowired
    ForecastRuns runs;

    private StorageShow show;
    private UUID leg;
    private String path;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        leg = show.keptLeg("SHUTTLE");
        path = "storage/supply/" + leg;
    }

    @Test
    void isFilledInWithWhatThePoolSuggests() throws Exception {
        show.drive("SHUTTLE-1", leg, 8000);
        show.drive("SHUTTLE-2", leg, 8000);
        show.drive("SHUTTLE-3", leg, 4000);
        jdbc.sql("update inventory_item set cost_minor_units = 18050 where leg_id = ?")
                .param(leg)
                .update();

        Document form = form(path);
        assertThat(form.select("#itemCapacityGb").val()).isEqualTo("8000");
        assertThat(form.select("#packSize").val()).isEqualTo("1");
        assertThat(form.select("#leadTimeWorkingDays").val()).isEqualTo("5");
        assertThat(form.select("#slowLeadTimeWorkingDays").val()).isEqualTo("7");
        assertThat(form.select("#orderCutOff").val()).isEqualTo("16:00:00");
        assertThat(form.select("#itemPrice").val()).isEqualTo("180.50");
    }

    @Test
    void isKeptExactlyAndAsksForAForecast() throws Exception {
        assertThat(save("18000.000000001", "180.05", -1)).hasStatus(HttpStatus.FOUND);

        assertThat(supplies.find(show.production.id, leg))
                .contains(new LegSupply(
                        leg,
                        18_000_000_000_001L,
                        2,
                        18_005,
                        new LegSupply.Source("corner shop", 3, 4, "PT", LocalTime.of(15, 30), DeliveredTo.SET, 1_250),
                        new LegSupply.HireTerms(4_500, 2),
                        0));
        assertThat(runs.asked(show.production.id).because()).containsExactly(Because.SUPPLY);
        assertThat(jdbc.sql("select action from audit_act where production_id = ?")
                        .param(show.production.id)
                        .query(String.class)
                        .list())
                .contains("supply.changed");
        Document form = form(path);
        assertThat(form.select("#itemCapacityGb").val()).isEqualTo("18000.000000001");
        assertThat(form.select("[name=version]").val()).isEqualTo("0");
    }

    @Test
    void whoSawAnOlderStateIsRefused() {
        assertThat(save("1000", "1", -1)).hasStatus(HttpStatus.FOUND);
        assertThat(save("2000", "1", -1)).as("two made it up at once").hasStatus(HttpStatus.CONFLICT);
        assertThat(save("3000", "1", 0)).hasStatus(HttpStatus.FOUND);
        assertThat(save("4000", "1", 0)).as("two changed it at once").hasStatus(HttpStatus.CONFLICT);
        assertThat(supplies.find(show.production.id, leg).orElseThrow().itemCapacityBytes())
                .isEqualTo(3_000_000_000_000L);
    }

    @Test
    void whatIsWrongIsSaidBesideTheFieldAndNothingIsKept() throws Exception {
        MvcTestResult wrong = mvc.post()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(Role.OFFICE))
                .param("itemCapacityGb", "0")
                .param("packSize", "0")
                .param("leadTimeWorkingDays", "")
                .param("slowLeadTimeWorkingDays", "1")
                .param("supplier", "")
                .param("orderCutOff", "16:00")
                .param("deliveredTo", "OFFICE")
                .param("deliveryPrice", "0")
                .param("itemPrice", "1")
                .param("version", "-1")
                .exchange();
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Jsoup.parse(wrong.getResponse().getContentAsString())
                        .select(".field .error")
                        .eachText())
                .hasSize(3);

        MvcTestResult tooFine = save("1000", "1.005", -1);
        assertThat(tooFine).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Jsoup.parse(tooFine.getResponse().getContentAsString())
                        .select("#itemPrice-error")
                        .text())
                .contains("no parts that small");
        assertThat(error(save("1000", "1", "2", "PT", "2", -1), "slowLeadTimeWorkingDays"))
                .contains("at least the usual lead time");
        assertThat(error(save("1000", "1", "4", "QQ", "2", -1), "country")).contains("Choose a country");
        assertThat(error(save("1000", "1", "4", "", "", -1), "hireMinimumWeeks"))
                .contains("both the price and the shortest hire");
        assertThat(supplies.byLeg(show.production.id)).isEmpty();
    }

    private static String error(MvcTestResult wrong, String field) throws Exception {
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return Jsoup.parse(wrong.getResponse().getContentAsString())
                .select("#" + field + "-error")
                .text();
    }

    @Test
    void onlyOfficeAndAdministratorsSeeAndSaveIt() {
        for (Role role : Role.values()) {
            boolean may = role == Role.OFFICE || role == Role.ADMINISTRATOR;
            for (String form : new String[] {path, "storage/assumptions"}) {
                assertThat(mvc.get()
                                .uri(show.production.path(form))
                                .with(show.production.signedInAs(role))
                                .exchange())
                        .as("%s reads %s", role, form)
                        .hasStatus(may ? HttpStatus.OK : HttpStatus.FORBIDDEN);
            }
            if (!may) {
                assertThat(mvc.post()
                                .uri(show.production.path(path))
                                .with(show.production.signedInAs(role))
                                .exchange())
                        .as("%s saves", role)
                        .hasStatus(HttpStatus.FORBIDDEN);
            }
        }
    }

    @Test
    void fillLevelAndServiceLevelAreKeptAndGuardedLikewise() throws Exception {
        assertThat(form("storage/assumptions").select("#fillPercent").val()).isEqualTo("95");
        assertThat(form("storage/assumptions").select("#serviceLevelPercent").val())
                .isEqualTo("95");
        assertThat(saveLevels("101", "95", -1)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(saveLevels("90", "100", -1)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(saveLevels("90", "99", -1)).hasStatus(HttpStatus.FOUND);
        assertThat(saveLevels("80", "99", -1)).hasStatus(HttpStatus.CONFLICT);
        assertThat(supplies.assumptions(show.production.id)).isEqualTo(new Assumptions(90, 99, 0));
    }

    @Test
    void aLegThatIsRemovedTakesItsSupplyAlong() {
        show.supply(leg, 1000, 1, 1, 1, 1);
        jdbc.sql("delete from production_leg where id = ?").param(leg).update();

        assertThat(supplies.byLeg(show.production.id)).isEqualTo(Map.of());
    }

    private MvcTestResult save(String capacityGb, String price, int version) {
        return save(capacityGb, price, "4", "PT", "2", version);
    }

    private MvcTestResult save(
            String capacityGb, String price, String slow, String country, String hireWeeks, int version) {
        return mvc.post()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(Role.OFFICE))
                .param("itemCapacityGb", capacityGb)
                .param("packSize", "2")
                .param("leadTimeWorkingDays", "3")
                .param("slowLeadTimeWorkingDays", slow)
                .param("supplier", " corner shop ")
                .param("country", country)
                .param("orderCutOff", "15:30")
                .param("deliveredTo", "SET")
                .param("deliveryPrice", "12.50")
                .param("hireWeekPrice", "45")
                .param("hireMinimumWeeks", hireWeeks)
                .param("itemPrice", price)
                .param("version", Integer.toString(version))
                .exchange();
    }

    private MvcTestResult saveLevels(String fill, String service, int version) {
        return mvc.post()
                .uri(show.production.path("storage/assumptions"))
                .with(show.production.signedInAs(Role.OFFICE))
                .param("fillPercent", fill)
                .param("serviceLevelPercent", service)
                .param("version", Integer.toString(version))
                .exchange();
    }

    private Document form(String page) throws Exception {
        MvcTestResult form = mvc.get()
                .uri(show.production.path(page))
                .with(show.production.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(form).hasStatusOk();
        return Jsoup.parse(form.getResponse().getContentAsString());
    }
}
