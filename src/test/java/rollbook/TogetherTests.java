package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** One person edits what another has removed meanwhile: nothing is half-saved, and the answer says so. */
@PortalTest
class TogetherTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    private TestProduction production;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
    }

    @Test
    void aPlaceThatIsGoneCanNotBeChangedAndDoesNotComeBack() throws Exception {
        UUID place = production.place("Set", false);
        assertThat(post("settings/places/" + place + "/remove")).hasStatus3xxRedirection();
        MvcTestResult late = post("settings/places/" + place, "name", "Stage", "version", "0");
        saysItIsGone(late);
        assertThat(page("settings")).doesNotContain("Stage");
    }

    @Test
    void aLegThatIsGoneCanNotBeChangedAndDoesNotComeBack() throws Exception {
        UUID leg = production.leg("Shuttle", production.place("Set", false), true);
        assertThat(post("settings/legs/" + leg + "/remove")).hasStatus3xxRedirection();
        saysItIsGone(post("settings/legs/" + leg, "name", "Vault", "mediaKind", "DRIVE", "version", "0"));
        assertThat(page("settings")).doesNotContain("Vault");
    }

    @Test
    void aShootingDayThatIsGoneCanNotBeChangedOrStarted() throws Exception {
        UUID day = production.day(production.unit("Main"), 7, "PLANNED");
        assertThat(post("days/" + day + "/remove", "version", "0")).hasStatus3xxRedirection();
        saysItIsGone(post("days/" + day + "/start", "version", "0"));
        saysItIsGone(post("days/" + day + "/change", "date", "2031-03-09", "version", "0"));
        assertThat(page("days")).doesNotContain("2031");
    }

    @Test
    void aRollWhoseLoadingWasTakenBackCanNotBePulled() throws Exception {
        UUID set = production.place("Set", false);
        UUID unit = production.unit("Main");
        production.item("CARD-1", "CARD", set, null);
        String camera = production.camera(unit, "A").toString();
        String day = production.day(unit, 1, "SHOOTING").toString();
        String format = production.format("F").toString();
        assertThat(post("rolls/load", "card", "CARD-1", "code", "A001", "camera", camera, "day", day, "format", format))
                .hasStatus3xxRedirection();
        String roll = mvc.get()
                .uri(production.path("find?code=A001"))
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .exchange()
                .getResponse()
                .getRedirectedUrl()
                .replaceAll(".*/rolls/", "");
        assertThat(post("rolls/" + roll + "/unload", "typed", "CARD-1")).hasStatus3xxRedirection();
        saysItIsGone(post("rolls/" + roll + "/pull", "minutes", "10"));
        assertThat(page("media")).contains("blank");
    }

    private void saysItIsGone(MvcTestResult result) throws Exception {
        assertThat(result).hasStatus(404);
        assertThat(result.getResponse().getContentAsString()).contains("Somebody may have removed it meanwhile");
    }

    private MvcTestResult post(String path, String... parameters) {
        var request = mvc.post().uri(production.path(path)).with(production.signedInAs(Role.ADMINISTRATOR));
        for (int i = 0; i < parameters.length; i += 2) {
            request.param(parameters[i], parameters[i + 1]);
        }
        return request.exchange();
    }

    private String page(String path) throws Exception {
        MvcTestResult result = mvc.get()
                .uri(production.path(path))
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .exchange();
        assertThat(result).hasStatusOk();
        return result.getResponse().getContentAsString();
    }
}
