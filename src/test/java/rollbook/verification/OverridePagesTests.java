package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

/** The pages on which two people clear a card without proof, and those on which a drive is cleared. */
@PortalTest
class OverridePagesTests {
    private static final String REASON = "We are out of cards, and the vault drive is on the road.";

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Documents documents;

    @Autowired
    Jobs jobs;

    @Autowired
    MediaItems items;

    private DocumentScene scene;
    private UUID roll;

    @BeforeEach
    void copyARollToADriveAndAnArray() {
        scene = new DocumentScene(fixtures, mvc, rolls);
        roll = scene.roll("A001");
        UUID reader = scene.production.item("READER-1", "READER", scene.set, null);
        offloads.finish(
                scene.wrangler,
                offloads.start(
                        scene.wrangler,
                        roll,
                        reader,
                        null,
                        List.of(
                                new Offloads.Destination(scene.shuttle, null),
                                new Offloads.Destination(scene.vault, null))),
                1_000);
    }

    @Test
    void fromTheRollToTheRequestToTheSecondPersonToTheErasureEveryPageSaysWhatIsSo() throws Exception {
        assertThat(links(scene.see("rolls/" + roll))).contains(path("rolls/" + roll + "/override"));
        Document ask = scene.see("rolls/" + roll + "/override");
        assertThat(ask.text())
                .contains("No copy of this roll is proven. Erasing the card may destroy the only good one.")
                .contains("Erasing can’t be undone")
                .contains("No copy is proven");

        MvcTestResult asked =
                scene.post("rolls/" + roll + "/override", Role.WRANGLER, Map.of("reason", List.of(REASON)));
        assertThat(asked).hasStatus3xxRedirection();
        String request = asked.getResponse().getRedirectedUrl().substring(path("").length());
        assertThat(scene.see("today", Role.POST).select(".alarms").text())
                .contains("WRANGLER asks to clear CARD-A001 without proof");
        assertThat(scene.see("rolls").text()).contains("WRANGLER asks to clear it without proof.");

        assertThat(scene.see(request).select("form[action$=approve]"))
                .as("who asked isn’t offered to approve")
                .isEmpty();
        assertThat(scene.see(request).text()).contains("You asked for this yourself");
        Document second = scene.see(request, Role.POST);
        assertThat(second.select("form[action$=approve]")).hasSize(1);
        assertThat(second.text()).contains(REASON).contains("Erasing can’t be undone");

        assertThat(scene.post(request + "/approve", Role.POST, Map.of("code", List.of("CARD-1"))))
                .hasStatus(422);
        assertThat(scene.post(request + "/approve", Role.POST, Map.of("code", List.of("card-a001"))))
                .hasRedirectedUrl(path("rolls/" + roll));
        assertThat(scene.see("rolls/" + roll + "/erase").text())
                .contains("Cleared without proof by WRANGLER, approved by POST, because: " + REASON);
        assertThat(scene.post("rolls/" + roll + "/erase", Role.WRANGLER, Map.of("code", List.of("CARD-A001"))))
                .hasStatus3xxRedirection();

        assertThat(scene.see("rolls/" + roll).text())
                .contains("Cleared without proof by WRANGLER, approved by POST, because: " + REASON);
        assertThat(scene.see("rolls").text()).contains("Cleared without proof by WRANGLER, approved by POST.");
        assertThat(scene.see("today").text())
                .contains("A001: its card was cleared without proof by WRANGLER, approved by POST.");
        assertThat(scene.see("record").text())
                .contains("asked to clear without proof")
                .contains("approved clearing without proof")
                .contains(REASON);
    }

    @Test
    void aThinReasonIsToldBesideTheField() throws Exception {
        MvcTestResult thin =
                scene.post("rolls/" + roll + "/override", Role.OFFICE, Map.of("reason", List.of("because")));
        assertThat(thin).hasStatus(422);
        assertThat(DocumentScene.parsed(thin).text()).contains("Give the reason in 20 to 1,000 characters.");
    }

    @Test
    void aRequestIsWithdrawnOnItsPage() throws Exception {
        MvcTestResult asked = scene.post("rolls/" + roll + "/override", Role.POST, Map.of("reason", List.of(REASON)));
        String request = asked.getResponse().getRedirectedUrl().substring(path("").length());
        assertThat(scene.post(request + "/withdraw", Role.WRANGLER, Map.of("why", List.of(""))))
                .hasStatus(422);
        assertThat(scene.post(request + "/withdraw", Role.WRANGLER, Map.of("why", List.of("cards came"))))
                .hasStatus3xxRedirection();
        assertThat(DocumentScene.sentence(scene.see(request)))
                .isEqualTo("Clearing CARD-A001 without proof was withdrawn by WRANGLER.");
        assertThat(scene.post(request + "/approve", Role.ADMINISTRATOR, Map.of("code", List.of("CARD-A001"))))
                .hasStatus(409);
        assertThat(items.findByCode(scene.production.id, "CARD-A001"))
                .hasValueSatisfying(card -> assertThat(card.cardState()).isEqualTo(CardState.HELD));
    }

    @Test
    void aDriveIsClearedAndErasedOnItsPages() throws Exception {
        assertThat(links(scene.see("media/" + scene.shuttle))).contains(path("media/" + scene.shuttle + "/clear"));
        Document held = scene.see("media/" + scene.shuttle + "/clear", Role.POST);
        assertThat(DocumentScene.sentence(held)).startsWith("Keep SHUTTLE-1: 1 of 1 roll on it isn’t proven elsewhere");
        assertThat(held.select("form[action$=clear]")).isEmpty();

        UUID second = scene.production.item("VAULT-2", "DRIVE", scene.set, null);
        UUID reader = scene.production.item("READER-2", "READER", scene.set, null);
        offloads.finish(
                scene.wrangler,
                offloads.start(scene.wrangler, roll, reader, null, List.of(new Offloads.Destination(second, null))),
                1_000);
        upload("# card\n", Subject.CARD, null);
        upload("# vault\n", Subject.COPY, scene.vault);
        upload("# second\n", Subject.COPY, second);
        Document ready = scene.see("media/" + scene.shuttle + "/clear", Role.POST);
        assertThat(ready.text()).contains("Erasing can’t be undone").contains("Proven on VAULT-1, VAULT-2: A001.");

        String page = "media/" + scene.shuttle;
        assertThat(scene.post(page + "/clear", Role.POST, Map.of("code", List.of("VAULT-1"))))
                .hasStatus(422);
        assertThat(scene.post(page + "/clear", Role.POST, Map.of("code", List.of("SHUTTLE-1"))))
                .hasRedirectedUrl(path(page + "/erase"));
        assertThat(scene.see("today").text()).contains("SHUTTLE-1 may be erased.");
        assertThat(scene.post(page + "/erase", Role.POST, Map.of("code", List.of("SHUTTLE-1"))))
                .hasRedirectedUrl(path(page));
        assertThat(scene.see("rolls/" + roll).text()).contains("The medium was erased after this copy was made");
        assertThat(DocumentScene.sentence(scene.see(page + "/clear")))
                .isEqualTo("No copy is on SHUTTLE-1 as far as Rollbook knows.");
    }

    @Test
    void theSafetyPageNamesTheLowestLevelAndWhoHoldsItDown() throws Exception {
        Document safety = scene.see("safety");
        assertThat(DocumentScene.sentence(safety))
                .isEqualTo(
                        "The production reaches NDSA storage level 0 and integrity level 0 of 4, as its lowest roll of 1 does.");
        assertThat(safety.text())
                .contains("NDSA storage level 0 of 4")
                .contains("proven copies on 2 media; there is none")
                .contains("a virus check: not known to Rollbook");
        assertThat(links(safety)).contains(path("rolls/" + roll));
        assertThat(scene.see("rolls/" + roll).text()).contains("NDSA integrity level 0 of 4");
    }

    @Test
    void aDraftOfThePolicySaysWhatItWouldChangeAndChangesNothing() throws Exception {
        upload("# card\n", Subject.CARD, null);
        upload("# shuttle\n", Subject.COPY, scene.shuttle);
        upload("# vault\n", Subject.COPY, scene.vault);
        Map<String, List<String>> draft = new HashMap<>(Map.of(
                "provenCopies",
                List.of("3"),
                "items",
                List.of("2"),
                "mediaKinds",
                List.of("1"),
                "places",
                List.of("1")));
        draft.putAll(Map.of(
                "_offSite",
                List.of("on"),
                "sourceHashNeeded",
                List.of("true"),
                "roundTripNeeded",
                List.of("true"),
                "version",
                List.of("0"),
                "try",
                List.of("try")));
        Document tried = DocumentScene.parsed(scene.post("settings/clearing/CARD", Role.ADMINISTRATOR, draft));
        assertThat(DocumentScene.sentence(tried)).startsWith("A card may be cleared when 3 copies are proven");
        assertThat(tried.text())
                .contains("This would hold 1 card that may be cleared or erased today:")
                .contains("CARD-A001 Only 2 copies are proven; 3 are asked for.");
        assertThat(tried.select("[name=provenCopies]").attr("value")).isEqualTo("3");
        assertThat(scene.see("settings").text()).contains("A card may be cleared when 2 copies are proven");

        draft.put("provenCopies", List.of("1"));
        draft.put("items", List.of("1"));
        Document drive = DocumentScene.parsed(scene.post("settings/clearing/DRIVE", Role.ADMINISTRATOR, draft));
        assertThat(drive.text())
                .contains("This would free 1 drive held today:")
                .contains("SHUTTLE-1 A001: Only 1 copy is proven; 2 are asked for.");
    }

    private void upload(String comment, Subject subject, @Nullable UUID item) throws IOException {
        documents.store(
                scene.wrangler,
                "list.md5",
                new ByteArrayInputStream((comment + DocumentScene.list("A001")).getBytes(StandardCharsets.UTF_8)),
                subject,
                item);
        jobs.run();
    }

    private String path(String page) {
        return scene.production.path(page);
    }

    private static List<String> links(Document page) {
        return page.select("a[href]").eachAttr("href");
    }
}
