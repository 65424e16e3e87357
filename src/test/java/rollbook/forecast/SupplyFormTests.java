package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
import rollbook.supplier.DeliveredTo;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.web.NotFoundException;

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
    void saysWhereToBeginWhileNobodyOffersSuchMedia() throws Exception {
        assertThat(form(path).select("form[action*=supply]")).isEmpty();
        assertThat(form(path).select("main a").eachAttr("href")).contains(show.production.path("suppliers"));
    }

    @Test
    void offersWhatSuppliersHaveOfTheLegsKindForSale() throws Exception {
        UUID drive = show.supply(leg, 8000, 2, 3, 5, 18_050);
        UUID tapeLeg = show.keptLeg("TAPE");
        jdbc.sql("update production_leg set media_kind = 'TAPE' where id = ?")
                .param(tapeLeg)
                .update();
        UUID tape = show.supply(tapeLeg, 18_000, 5, 3, 4, 7_250);
        UUID archived = show.supply(show.keptLeg("OTHER"), 1000, 1, 1, 1, 100);
        archive(archived);
        UUID hired = show.supply(show.keptLeg("HIRED"), 1000, 1, 1, 1, 100);
        show.price(hired, 2, null, 900L);

        Document form = form(path);
        assertThat(form.select("#item option").eachAttr("value")).containsExactly("", drive.toString());
        assertThat(form.select("#item option[selected]").text())
                .isEqualTo("Supplier 1: test model, 8.00 TB, €180.50, packs of 2");
        assertThat(save(tape, 0)).as("a tape for drives").hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(save(archived, 0)).as("no longer to be had").hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(save(hired, 0)).as("for hire only").hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(error(save(UUID.randomUUID(), 0), "item")).contains("Choose an item of the list");

        archive(drive);
        assertThat(save(drive, 0)).as("what is chosen may be kept").hasStatus(HttpStatus.FOUND);
    }

    private void archive(UUID item) {
        jdbc.sql("update supplier_item set archived = true where id = ?")
                .param(item)
                .update();
    }

    @Test
    void whatIsChosenIsKeptAndAsksForAForecast() throws Exception {
        UUID item = show.supply(show.keptLeg("OTHER"), 8000, 2, 3, 5, 18_050);
        assertThat(save(item, -1)).hasStatus(HttpStatus.FOUND);

        assertThat(supplies.find(show.production.id, leg)).contains(new LegSupply(leg, item, DeliveredTo.SET, 0));
        assertThat(runs.asked(show.production.id).because()).containsExactly(Because.SUPPLY);
        assertThat(jdbc.sql("select action from audit_act where production_id = ?")
                        .param(show.production.id)
                        .query(String.class)
                        .list())
                .contains("supply.changed");
        assertThat(form(path).select("[name=version]").val()).isEqualTo("0");
    }

    @Test
    void whoSawAnOlderStateIsRefused() {
        UUID item = show.supply(show.keptLeg("OTHER"), 8000, 2, 3, 5, 18_050);
        UUID larger = show.supply(show.keptLeg("THIRD"), 9000, 2, 3, 5, 18_050);
        assertThat(save(item, -1)).hasStatus(HttpStatus.FOUND);
        assertThat(save(larger, -1)).as("two made it up at once").hasStatus(HttpStatus.CONFLICT);
        assertThat(save(larger, 0)).hasStatus(HttpStatus.FOUND);
        assertThat(save(item, 0)).as("two changed it at once").hasStatus(HttpStatus.CONFLICT);
        assertThat(supplies.find(show.production.id, leg).orElseThrow().itemId())
                .isEqualTo(larger);
    }

    @Test
    void anotherProductionsCatalogueIsUnknown() {
        StorageShow other = new StorageShow(fixtures, jdbc);
        UUID item = other.supply(other.keptLeg("SHUTTLE"), 8000, 2, 3, 5, 18_050);

        assertThat(save(item, -1)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThatThrownBy(() -> supplies.change(
                        show.production.as(Role.OFFICE), new LegSupply(leg, item, DeliveredTo.SET, LegSupply.NOT_KEPT)))
                .isInstanceOf(NotFoundException.class);
        assertThat(supplies.byLeg(show.production.id)).isEmpty();
    }

    private static String error(MvcTestResult wrong, String field) throws Exception {
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return Jsoup.parse(wrong.getResponse().getContentAsString(java.nio.charset.StandardCharsets.UTF_8))
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

    private MvcTestResult save(UUID item, int version) {
        return mvc.post()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(Role.OFFICE))
                .param("item", item.toString())
                .param("deliveredTo", "SET")
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
        return Jsoup.parse(form.getResponse().getContentAsString(java.nio.charset.StandardCharsets.UTF_8));
    }
}
