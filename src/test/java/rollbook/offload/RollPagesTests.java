package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItems;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

/** Pulling a roll, taking its loading back, correcting it. */
@PortalTest
class RollPagesTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    MediaItems items;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private Scene scene;
    private UUID roll;

    @BeforeEach
    void loadRoll() {
        scene = new Scene(fixtures, mvc);
        roll = rolls.load(scene.wrangler, "A001", scene.camera, scene.day, scene.card, scene.format);
    }

    @Test
    void aPullTakesMinutesAsDecimalsOrOnTheClock() {
        Document page = scene.see(page("pull"));
        assertThat(page.selectFirst("#sentence").text()).contains("CARD-1", "camera A");
        // 1 TB / (24 MB/s × 60 s) = 694.4 min
        assertThat(page.selectFirst("#minutes-hint").text()).contains("CARD-1 holds about 694 min");
        assertThat(scene.post(page("pull"), Role.WRANGLER, Map.of("minutes", "31:30")))
                .hasStatus3xxRedirection()
                .hasRedirectedUrl(scene.production.path("rolls/" + roll));
        assertThat(rolls.get(scene.production.id, roll).minutes()).isEqualByComparingTo("31.5");
    }

    @Test
    void minutesThatCannotBeReadAreRefusedAndStay() {
        for (String typed : List.of("31:60", "half an hour", "")) {
            MvcTestResult refused = scene.post(page("pull"), Role.WRANGLER, Map.of("minutes", typed));
            assertThat(refused).as(typed).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            assertThat(Scene.html(refused).selectFirst("#minutes").val()).isEqualTo(typed);
            assertThat(Scene.html(refused).select("#minutes-error")).hasSize(1);
        }
        assertThat(rolls.get(scene.production.id, roll).pulledAt()).isNull();
    }

    @Test
    void aRollIsPulledOnce() {
        scene.post(page("pull"), Role.WRANGLER, Map.of("minutes", "10"));
        MvcTestResult second = scene.post(page("pull"), Role.ADMINISTRATOR, Map.of("minutes", "12"));
        assertThat(second).hasStatus(HttpStatus.CONFLICT);
        assertThat(Scene.html(second).selectFirst("main").text()).contains("A001", "has left the camera already");
        assertThat(rolls.get(scene.production.id, roll).minutes()).isEqualByComparingTo("10");
        assertThat(scene.get(page("pull"), Role.WRANGLER)).hasStatus(HttpStatus.CONFLICT);
        assertThat(scene.get(page("unload"), Role.WRANGLER)).hasStatus(HttpStatus.CONFLICT);
    }

    @Test
    void aLoadingIsTakenBackOnlyWithTheCardsCodeTypedAndWithTheCautionInSight() {
        Document page = scene.see(page("unload"));
        assertThat(page.selectFirst(".caution").text()).contains("CARD-1", "can’t be undone");
        MvcTestResult refused = scene.post(page("unload"), Role.WRANGLER, Map.of("typed", "CARD-2"));
        assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Scene.html(refused).selectFirst("#typed").val()).isEqualTo("CARD-2");
        assertThat(items.get(scene.production.id, scene.card).cardState()).isEqualTo(CardState.IN_CAMERA);

        assertThat(scene.post(page("unload"), Role.WRANGLER, Map.of("typed", "card-1")))
                .hasStatus3xxRedirection()
                .hasRedirectedUrl(scene.production.path("rolls"));
        assertThat(items.get(scene.production.id, scene.card).cardState()).isEqualTo(CardState.BLANK);
        assertThat(rolls.list(scene.production.id)).isEmpty();
    }

    @Test
    void aLoadingThatADocumentSpeaksOfIsNotTakenBack() {
        UUID document = UUID.randomUUID();
        jdbc.sql("""
                        insert into verification_document (id, production_id, sha256, file_name, size_bytes, uploaded_at, uploaded_by)
                        values (?, ?, sha256(?::bytea), 'list.md5', 1, now(), ?)
                        """)
                .params(document, scene.production.id, "x", scene.wrangler.personId())
                .update();
        jdbc.sql("""
                        insert into verification_part (id, production_id, document_id, position, folder, entries, size_bytes, guess_roll_id)
                        values (?, ?, ?, 1, 'A001', 1, 1, ?)
                        """)
                .params(UUID.randomUUID(), scene.production.id, document, roll)
                .update();
        MvcTestResult refused = scene.post(page("unload"), Role.WRANGLER, Map.of("typed", "CARD-1"));
        assertThat(refused).hasStatus(HttpStatus.CONFLICT);
        assertThat(Scene.html(refused).selectFirst("main").text()).contains("A document speaks of roll A001");
        assertThat(items.get(scene.production.id, scene.card).cardState()).isEqualTo(CardState.IN_CAMERA);
    }

    @Test
    void aCorrectionChangesWhatWasLoggedAndTheRecordKeepsWhatStoodThere() {
        pull();
        UUID otherDay = scene.production.day(scene.unit, 2, "PLANNED");
        Document page = scene.see(page("correct"));
        assertThat(page.selectFirst("#minutes").val()).isEqualTo("10");
        assertThat(page.selectFirst("#day option[selected]").val()).isEqualTo(scene.day.toString());
        assertThat(correct(Map.of("code", "a002", "day", otherDay, "minutes", "12:30", "note", " lens test ")))
                .hasStatus3xxRedirection();
        Roll corrected = rolls.get(scene.production.id, roll);
        assertThat(corrected.code()).isEqualTo("A002");
        assertThat(corrected.dayId()).isEqualTo(otherDay);
        assertThat(corrected.minutes()).isEqualByComparingTo("12.5");
        assertThat(corrected.note()).isEqualTo("lens test");
        assertThat(jdbc.sql("select detail from audit_act where production_id = ? and action = 'roll.corrected'")
                        .param(scene.production.id)
                        .query(String.class)
                        .single())
                .isEqualTo("code: A001 → A002; day: Main 1 → Main 2; minutes: 10.00 → 12.50; note:  → lens test");
    }

    @Test
    void aCorrectionOfWhatSomebodyElseChangedMeanwhileIsRefused() {
        pull();
        int seen = rolls.get(scene.production.id, roll).version();
        assertThat(correct(Map.of("minutes", "11"))).hasStatus3xxRedirection();
        MvcTestResult second = correct(Map.of("minutes", "12", "version", seen));
        assertThat(second).hasStatus(HttpStatus.CONFLICT);
        assertThat(Scene.html(second).selectFirst("main").text()).contains("Somebody else changed roll A001");
        assertThat(rolls.get(scene.production.id, roll).minutes()).isEqualByComparingTo("11");
    }

    @Test
    void aWrongCorrectionIsRefusedAtItsFieldsAndStays() {
        pull();
        UUID other = scene.production.item("CARD-2", "CARD", scene.set, null);
        rolls.load(scene.wrangler, "A002", scene.camera, scene.day, other, scene.format);
        MvcTestResult refused = correct(Map.of("code", "A002", "minutes", "long", "note", "kept"));
        assertThat(refused).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = Scene.html(refused);
        assertThat(page.select("#code-error, #minutes-error")).hasSize(2);
        assertThat(page.selectFirst("#minutes").val()).isEqualTo("long");
        assertThat(page.selectFirst("#note").text()).isEqualTo("kept");
        assertThat(correct(Map.of("version", "x"))).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @Test
    void aRollInItsCameraIsNotCorrected() {
        assertThat(scene.get(page("correct"), Role.WRANGLER)).hasStatus(HttpStatus.CONFLICT);
    }

    @Test
    void aDayThatWasCancelledSinceStaysTheRollsDayInACorrection() {
        pull();
        jdbc.sql("update schedule_day set state = 'CANCELLED' where id = ?")
                .param(scene.day)
                .update();
        scene.production.day(scene.unit, 2, "SHOOTING");
        assertThat(scene.see(page("correct"))
                        .selectFirst("#day option[selected]")
                        .val())
                .isEqualTo(scene.day.toString());
    }

    @Test
    void unknownRollsAndThoseOfAnotherProductionAreNotFound() {
        Scene other = new Scene(fixtures, mvc);
        for (String act : List.of("pull", "unload", "correct", "offload")) {
            for (UUID id : List.of(UUID.randomUUID(), roll)) {
                String page = "rolls/" + id + "/" + act;
                assertThat(other.get(page, Role.WRANGLER)).as(page).hasStatus(HttpStatus.NOT_FOUND);
                Map<String, Object> form = new HashMap<>(form(Map.of()));
                form.put("typed", "CARD-1");
                form.put("reader", other.reader);
                assertThat(other.post(page, Role.WRANGLER, form)).as(page).hasStatus(HttpStatus.NOT_FOUND);
            }
        }
        assertThat(rolls.get(scene.production.id, roll).version()).isZero();
    }

    @Test
    void onlyWranglersAndAdministratorsChangeRolls() {
        for (String act : List.of("pull", "unload", "correct")) {
            for (Role role : List.of(Role.OFFICE, Role.POST, Role.READER)) {
                assertThat(scene.get(page(act), role)).hasStatus(HttpStatus.FORBIDDEN);
                assertThat(scene.post(page(act), role, Map.of("minutes", "10", "typed", "CARD-1")))
                        .hasStatus(HttpStatus.FORBIDDEN);
            }
        }
        assertThat(rolls.get(scene.production.id, roll).version()).isZero();
    }

    @Test
    void thePagesTakeFewStatements() throws Exception {
        assertThat(statements.during(() -> scene.get(page("pull"), Role.WRANGLER)))
                .isLessThanOrEqualTo(8);
        assertThat(statements.during(() -> scene.get(page("unload"), Role.WRANGLER)))
                .isLessThanOrEqualTo(8);
        pull();
        int few = statements.during(() -> scene.get(page("correct"), Role.WRANGLER));
        scene.production.day(scene.unit, 2, "PLANNED");
        scene.production.format("Other format");
        assertThat(statements.during(() -> scene.get(page("correct"), Role.WRANGLER)))
                .isEqualTo(few)
                .isLessThanOrEqualTo(8);
    }

    private void pull() {
        rolls.pull(scene.wrangler, roll, BigDecimal.TEN);
    }

    private MvcTestResult correct(Map<String, ?> changes) {
        return scene.post(page("correct"), Role.WRANGLER, form(changes));
    }

    private Map<String, Object> form(Map<String, ?> changes) {
        Map<String, Object> form = new HashMap<>(Map.of(
                "code",
                "A001",
                "day",
                scene.day,
                "format",
                scene.format,
                "minutes",
                "10",
                "note",
                "",
                "version",
                rolls.get(scene.production.id, roll).version()));
        form.putAll(changes);
        return form;
    }

    private String page(String act) {
        return "rolls/" + roll + "/" + act;
    }
}
