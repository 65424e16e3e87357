package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.production.SettingsPages.error;
import static rollbook.production.SettingsPages.page;
import static rollbook.production.SettingsPages.with;

import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** The pages of places, of the legs of the copy plan, and of what clears a card. */
@PortalTest
class CopyPlanPagesTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    CopyPlan copyPlan;

    @Autowired
    Places places;

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
    void aPlaceInUseStaysAndAFreeOneGoes() throws Exception {
        UUID free = production.place("Office", false);
        production.item("CARD-1", "CARD", set, null);
        pages.assertRefused(
                pages.post(Role.OFFICE, "settings/places/" + set + "/remove", Map.of()), "Place Set can’t be removed");
        assertThat(pages.post(Role.OFFICE, "settings/places/" + free + "/remove", Map.of()))
                .hasRedirectedUrl(production.path("settings"));
        assertThat(places.list(production.id)).extracting(Place::name).containsExactly("Set");
    }

    @Test
    void aPlaceChangedMeanwhileIsNotOverwritten() throws Exception {
        places.change(production.as(Role.OFFICE), new Place(set, "Stage", true, "flood", 0));
        pages.assertStale(pages.post(Role.OFFICE, "settings/places/" + set, Map.of("name", "Set", "version", "0")));
        assertThat(places.get(production.id, set)).isEqualTo(new Place(set, "Stage", true, "flood", 1));
    }

    @Test
    void twoPlacesDoNotShareAName() throws Exception {
        UUID office = production.place("Office", false);
        var renamed = pages.post(Role.OFFICE, "settings/places/" + office, Map.of("name", "set", "version", "0"));
        assertThat(renamed).hasStatus(422);
        assertThat(error(renamed, "name")).contains("There is a place named set already");
    }

    @Test
    void aLegIsAddedChangedAndRemoved() throws Exception {
        Map<String, String> form = Map.of(
                "name", "Tape",
                "mediaKind", "TAPE",
                "placeId", set.toString(),
                "rendition", "ENCODED",
                "keptPercent", "60",
                "returnsAfterDays", "",
                "version", "0");
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/legs/new", form))
                .hasRedirectedUrl(production.path("settings"));
        Leg leg = copyPlan.legs(production.id).get(0);
        assertThat(leg.keptPercent()).isEqualTo(60);
        assertThat(leg.returnsAfterDays()).isNull();
        assertThat(leg.neededToClear()).isFalse();

        pages.post(Role.ADMINISTRATOR, "settings/legs/" + leg.id(), with(form, "rendition", "AS_RECORDED"));
        assertThat(copyPlan.leg(production.id, leg.id()).keptPercent())
                .as("a copy as recorded keeps every byte")
                .isEqualTo(100);

        pages.post(Role.ADMINISTRATOR, "settings/legs/" + leg.id() + "/remove", Map.of());
        assertThat(copyPlan.legs(production.id)).isEmpty();
    }

    @Test
    void aLegSaysWhatIsWrongWithIt() throws Exception {
        Map<String, String> form = Map.of(
                "name", " ", "mediaKind", "CARD", "rendition", "ENCODED", "returnsAfterDays", "-1", "version", "0");
        var wrong = pages.post(Role.ADMINISTRATOR, "settings/legs/new", form);
        assertThat(wrong).hasStatus(422);
        assertThat(page(wrong).select(".error-summary a").eachAttr("href"))
                .containsExactlyInAnyOrder("#name", "#mediaKind", "#placeId", "#keptPercent", "#returnsAfterDays");
    }

    @Test
    void lettersForANumberAreSaidWhateverElseIsWrong() throws Exception {
        for (String path : new String[] {"settings/legs/new", "settings/clearing/CARD"}) {
            Map<String, String> form = Map.of(
                    "mediaKind",
                    "CARD",
                    "returnsAfterDays",
                    "soon",
                    "provenCopies",
                    "1",
                    "items",
                    "two",
                    "places",
                    "4");
            var mistyped = pages.post(Role.ADMINISTRATOR, path, form);
            assertThat(mistyped).as(path).hasStatus(422);
            assertThat(page(mistyped).select(".error-summary").text())
                    .as(path)
                    .contains("Write a whole number in digits.")
                    .doesNotContain("java");
        }
    }

    @Test
    void aLegChangedOrRemovedMeanwhileIsNotOverwritten() throws Exception {
        UUID leg = production.leg("Shuttle", set, true);
        Map<String, String> form = Map.of(
                "name", "Shuttle",
                "mediaKind", "DRIVE",
                "placeId", set.toString(),
                "rendition", "AS_RECORDED",
                "version", "0");
        pages.post(Role.ADMINISTRATOR, "settings/legs/" + leg, with(form, "name", "Courier"));
        pages.assertStale(pages.post(Role.ADMINISTRATOR, "settings/legs/" + leg, form));
        assertThat(copyPlan.leg(production.id, leg).name()).isEqualTo("Courier");

        copyPlan.removeLeg(production.as(Role.ADMINISTRATOR), leg);
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/legs/" + leg, form)).hasStatus(404);
    }

    @Test
    void aLegAtAnotherProductionsPlaceIsNotMade() throws Exception {
        UUID elsewhere = fixtures.production().place("Vault", true);
        Map<String, String> form = Map.of(
                "name", "Shuttle",
                "mediaKind", "DRIVE",
                "placeId", elsewhere.toString(),
                "rendition", "AS_RECORDED",
                "version", "0");
        assertThat(pages.post(Role.ADMINISTRATOR, "settings/legs/new", form)).hasStatus(404);
        assertThat(copyPlan.legs(production.id)).isEmpty();
    }

    @Test
    void aLegWithMediaStays() throws Exception {
        UUID leg = production.leg("Shuttle", set, true);
        production.item("DRIVE-1", "DRIVE", set, leg);
        pages.assertRefused(
                pages.post(Role.ADMINISTRATOR, "settings/legs/" + leg + "/remove", Map.of()),
                "Leg Shuttle can’t be removed");
    }

    @Test
    void thePolicyIsChangedOnceAndAsksForNothingImpossible() throws Exception {
        Map<String, String> form = new HashMap<>(Map.of(
                "provenCopies",
                "3",
                "items",
                "3",
                "mediaKinds",
                "2",
                "places",
                "2",
                "offSite",
                "true",
                "version",
                "0"));
        // As a browser sends boxes that aren't ticked.
        form.putAll(Map.of("checkedWithinDays", "30", "_sourceHashNeeded", "on", "_roundTripNeeded", "on"));
        var impossible = pages.post(Role.ADMINISTRATOR, "settings/clearing/CARD", with(form, "places", "4"));
        assertThat(impossible).hasStatus(422);
        assertThat(error(impossible, "places")).contains("no more than the proven copies");

        assertThat(pages.post(Role.ADMINISTRATOR, "settings/clearing/CARD", form))
                .hasRedirectedUrl(production.path("settings"));
        assertThat(copyPlan.policy(production.id, MediaKind.CARD))
                .isEqualTo(new ClearingPolicy(MediaKind.CARD, 3, 3, 2, 2, true, 30, false, false, 1));
        pages.assertStale(pages.post(Role.ADMINISTRATOR, "settings/clearing/CARD", form));
    }
}
