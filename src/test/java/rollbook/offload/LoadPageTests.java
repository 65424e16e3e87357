package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
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
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

@PortalTest
class LoadPageTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private Scene scene;

    @BeforeEach
    void makeScene() {
        scene = new Scene(fixtures, mvc);
    }

    @Test
    void theFirstRollOfACameraIsNumberOneOfItsLetterOnTheDayBeingShot() {
        scene.production.day(scene.unit, 2, "PLANNED");
        Document page = scene.see("rolls/load");
        assertThat(page.selectFirst("#code").val()).isEqualTo("A001");
        assertThat(page.selectFirst("#day option[selected]").val()).isEqualTo(scene.day.toString());
        assertThat(page.select("#format option[selected]")).isEmpty();
        assertThat(page.select("#card-codes option").eachAttr("value")).containsExactly("CARD-1");
    }

    @Test
    void theNextRollTakesTheNextNumberAndTheFormatOfTheLastOne() {
        UUID otherFormat = scene.production.format("Other format");
        load("A014", "CARD-1", otherFormat);
        scene.production.item("CARD-2", "CARD", scene.set, null);
        Document page = scene.see("rolls/load");
        assertThat(page.selectFirst("#code").val()).isEqualTo("A015");
        assertThat(page.selectFirst("#format option[selected]").val()).isEqualTo(otherFormat.toString());
        assertThat(page.select("#card-codes option").eachAttr("value")).containsExactly("CARD-2");
        assertThat(page.selectFirst("#sentence").text()).contains("A015", "1 blank card is ready");
    }

    @Test
    void eachCameraHasItsOwnProposal() {
        UUID cameraB = scene.production.camera(scene.unit, "B");
        load("A014", "CARD-1", scene.format);
        scene.production.item("CARD-2", "CARD", scene.set, null);
        Document page = scene.see("rolls/load?camera=" + cameraB);
        assertThat(page.selectFirst("#code").val()).isEqualTo("B001");
        assertThat(page.selectFirst("nav a[aria-current=true]").text()).contains("B");
        assertThat(page.selectFirst("input[name=camera]").val()).isEqualTo(cameraB.toString());
    }

    @Test
    void aScannedCodeIsTakenInAnyCaseAndAnEmptyRollCodeStandsForTheNext() {
        UUID roll = Scene.sentTo(post(Map.of("card", " card-1 ", "code", "")));
        assertThat(rolls.get(scene.production.id, roll).code()).isEqualTo("A001");
        assertThat(rolls.get(scene.production.id, roll).cardCode()).isEqualTo("CARD-1");
    }

    @Test
    void aCardThatIsUnknownDoubtedOrNotBlankIsRefusedAtItsFieldAndWhatWasTypedStays() {
        scene.production.item("CARD-2", "CARD", scene.set, null);
        jdbc.sql("update inventory_item set condition = 'QUARANTINED' where production_id = ? and code = 'CARD-2'")
                .param(scene.production.id)
                .update();
        load("A001", "CARD-1", scene.format);
        scene.production.item("CARD-3", "CARD", scene.set, null);
        Map<String, String> reasons = Map.of(
                "CARD-9", "No card",
                "READER-1", "No card",
                "CARD-2", "not in good condition",
                "CARD-1", "in camera",
                " ", "Scan or type");
        reasons.forEach((typed, reason) -> {
            MvcTestResult refused = post(Map.of("card", typed, "code", "A777"));
            assertThat(refused).as(typed).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            Document page = Scene.html(refused);
            assertThat(page.selectFirst("#card-error").text()).contains(reason);
            assertThat(page.selectFirst("#card").val()).isEqualTo(typed);
            assertThat(page.selectFirst("#code").val()).isEqualTo("A777");
            assertThat(page.selectFirst("#day option[selected]").val()).isEqualTo(scene.day.toString());
            assertThat(page.title()).startsWith("Error:");
        });
        assertThat(rolls.findByCode(scene.production.id, "A777")).isEmpty();
    }

    @Test
    void aRollCodeThatIsTakenOrUnfitIsRefusedAtItsField() {
        load("A001", "CARD-1", scene.format);
        scene.production.item("CARD-2", "CARD", scene.set, null);
        assertThat(Scene.html(post(Map.of("card", "CARD-2", "code", "a001")))
                        .selectFirst("#code-error")
                        .text())
                .contains("A001", "another roll");
        assertThat(Scene.html(post(Map.of("card", "CARD-2", "code", "A/../1")))
                        .selectFirst("#code-error")
                        .text())
                .contains("letters, digits");
    }

    @Test
    void aFormThatCannotBeReadIsAnsweredWithThePageAgain() {
        MvcTestResult refused = post(Map.of("card", "CARD-1", "day", "tomorrow"));
        assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Scene.html(refused).select("#error-summary a[href=#day]")).hasSize(1);
        assertThat(post(Map.of("card", "CARD-1", "day", ""))).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void anotherProductionsCameraDayOrFormatIsUnknown() {
        Scene other = new Scene(fixtures, mvc);
        assertThat(scene.get("rolls/load?camera=" + other.camera, Role.WRANGLER))
                .hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post(Map.of("camera", other.camera))).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post(Map.of("day", other.day))).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(post(Map.of("format", other.format))).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(rolls.list(scene.production.id)).isEmpty();
    }

    @Test
    void whoComesSecondForTheLastBlankCardIsToldWhatBecameOfIt() throws Exception {
        assertThat(post(Map.of("code", "A001"))).hasStatus(HttpStatus.FOUND);
        MvcTestResult second = post(Map.of("code", "A002"));
        assertThat(second).hasStatus(422);
        assertThat(Scene.html(second).selectFirst("main").text()).contains("CARD-1 is not blank");
    }

    @Test
    void ofTwoPeopleWhoLoadTheSameCardAtOnceOneDoesAndTheOtherIsTold() throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService people = Executors.newFixedThreadPool(2);
        try {
            List<Future<MvcTestResult>> answers = people.invokeAll(Stream.of("A001", "A002")
                    .map(code -> (Callable<MvcTestResult>) () -> {
                        together.await();
                        return post(Map.of("code", code));
                    })
                    .toList());
            List<MvcTestResult> refused = new ArrayList<>();
            for (Future<MvcTestResult> answer : answers) {
                if (answer.get().getResponse().getStatus() != HttpStatus.FOUND.value()) {
                    refused.add(answer.get());
                }
            }
            // At its field if the other was wholly done before, else by the rule.
            assertThat(refused).hasSize(1);
            assertThat(refused.get(0).getResponse().getStatus()).isIn(409, 422);
            assertThat(Scene.html(refused.get(0)).selectFirst("main").text()).contains("CARD-1 is");
        } finally {
            people.shutdown();
        }
        assertThat(rolls.list(scene.production.id)).hasSize(1);
    }

    @Test
    void onlyWranglersAndAdministratorsLoad() {
        for (Role role : Role.values()) {
            boolean may = role == Role.WRANGLER || role == Role.ADMINISTRATOR;
            assertThat(scene.get("rolls/load", role))
                    .as("%s", role)
                    .hasStatus(may ? HttpStatus.OK : HttpStatus.FORBIDDEN);
        }
        assertThat(scene.post("rolls/load", Role.OFFICE, form(Map.of()))).hasStatus(HttpStatus.FORBIDDEN);
        assertThat(rolls.list(scene.production.id)).isEmpty();
    }

    @Test
    void aProductionThatLacksSomethingSaysWhat() {
        TestProduction bare = fixtures.production();
        assertThat(Scene.html(mvc.get()
                                .uri(bare.path("rolls/load"))
                                .with(bare.signedInAs(Role.WRANGLER))
                                .exchange())
                        .selectFirst("main")
                        .text())
                .contains("No camera yet");
        load("A001", "CARD-1", scene.format);
        Document page = scene.see("rolls/load");
        assertThat(page.selectFirst("main").text()).contains("No blank card");
        assertThat(page.select("main form")).isEmpty();
    }

    @Test
    void thePageTakesTheSameFewStatementsHoweverMuchThereIs() throws Exception {
        int few = statements.during(() -> scene.get("rolls/load", Role.WRANGLER));
        Stream.of("CARD-2", "CARD-3", "CARD-4").forEach(code -> {
            scene.production.item(code, "CARD", scene.set, null);
            load("A0" + code.substring(5) + "0", code, scene.format);
            scene.production.item(code + "-blank", "CARD", scene.set, null);
        });
        scene.production.camera(scene.unit, "B");
        scene.production.day(scene.unit, 2, "PLANNED");
        int many = statements.during(() -> scene.get("rolls/load", Role.WRANGLER));
        assertThat(many).isEqualTo(few).isLessThanOrEqualTo(12);
    }

    private void load(String code, String cardCode, UUID format) {
        UUID card = jdbc.sql("select id from inventory_item where production_id = ? and code = ?")
                .params(List.of(scene.production.id, cardCode))
                .query(UUID.class)
                .single();
        rolls.load(scene.wrangler, code, scene.camera, scene.day, card, format);
    }

    private MvcTestResult post(Map<String, ?> changes) {
        return scene.post("rolls/load", Role.WRANGLER, form(changes));
    }

    private Map<String, Object> form(Map<String, ?> changes) {
        var form = new HashMap<String, Object>(Map.of(
                "camera", scene.camera, "card", "CARD-1", "code", "A001", "day", scene.day, "format", scene.format));
        form.putAll(changes);
        return form;
    }
}
