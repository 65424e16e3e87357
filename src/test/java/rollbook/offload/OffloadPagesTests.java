package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.sql.Timestamp;
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

/** Starting an offload, watching it, ending it. */
@PortalTest
class OffloadPagesTests {
    private static final long FULL = 999_999_000_000L;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Copies copies;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private Scene scene;
    private UUID roll;

    @BeforeEach
    void pullRoll() {
        scene = new Scene(fixtures, mvc);
        roll = pulled("A001", scene.card);
    }

    @Test
    void eachLegOffersItsPoolFirstWithItsRoomAndHasAMediumOfItPreselected() {
        Document page = scene.see(startPage());
        assertThat(page.select("select[name='legs[0].item'] option").eachText())
                .containsExactly(
                        "Not this time", "SHUTTLE-1 · 1.00 TB free", "ARCHIVE-1 · 1.00 TB free · not of this leg");
        assertThat(selected(page, "legs[0].item")).isEqualTo(scene.shuttle.toString());
        assertThat(selected(page, "legs[1].item")).isEqualTo(scene.archive.toString());
        assertThat(selected(page, "reader")).isEqualTo(scene.reader.toString());
        assertThat(page.select("select[name=adapter]")).isEmpty();
        // 31.5 min × 60 s × 24 MB/s
        assertThat(page.selectFirst("#sentence").text()).contains("about 45.4 GB (42.2 GiB)");
        assertThat(page.selectFirst("main").text()).contains("proven no longer");
    }

    @Test
    void theMediumAndTheReaderOfTheLastTimeAreProposedWhileTheyCanServe() {
        UUID reader2 = scene.production.item("READER-2", "READER", scene.set, null);
        UUID adapter = scene.production.item("ADAPTER-1", "ADAPTER", scene.set, null);
        UUID shuttle2 = scene.production.item("SHUTTLE-2", "DRIVE", scene.set, scene.shuttleLeg);
        offload(roll, reader2, adapter, shuttle2, 1_000);
        UUID next = pulled("A002", scene.production.item("CARD-2", "CARD", scene.set, null));

        Document page = scene.see("rolls/" + next + "/offload");
        assertThat(selected(page, "reader")).isEqualTo(reader2.toString());
        assertThat(selected(page, "adapter")).isEqualTo(adapter.toString());
        assertThat(selected(page, "legs[0].item")).isEqualTo(shuttle2.toString());

        quarantine(shuttle2);
        quarantine(reader2);
        page = scene.see("rolls/" + next + "/offload");
        assertThat(page.text()).doesNotContain("SHUTTLE-2", "READER-2");
        assertThat(selected(page, "reader")).isEqualTo(scene.reader.toString());
        assertThat(selected(page, "legs[0].item")).isEqualTo(scene.shuttle.toString());
    }

    @Test
    void aMediumWithoutRoomIsMarkedAndNotProposedButAllowed() {
        offload(roll, scene.reader, null, scene.shuttle, FULL);
        UUID next = pulled("A002", scene.production.item("CARD-2", "CARD", scene.set, null));

        Document page = scene.see("rolls/" + next + "/offload");
        assertThat(page.selectFirst("#sentence").text()).contains("45.4 GB");
        assertThat(page.selectFirst("option[value=" + scene.shuttle + "]").text())
                .isEqualTo("SHUTTLE-1 · 1.00 MB free · too little");
        assertThat(page.select("select[name='legs[0].item'] option[selected][value]:not([value=''])"))
                .isEmpty();

        UUID session = Scene.sentTo(scene.post("rolls/" + next + "/offload", Role.WRANGLER, scene.startForm()));
        assertThat(scene.see("offloads/" + session).selectFirst("main").text())
                .contains("SHUTTLE-1 has room for 1.00 MB, and about 45.4 GB are coming")
                .doesNotContain("ARCHIVE-1 has room");
    }

    @Test
    void aLegThatHasItsCopyProposesNothingAndSaysWhatIsWrittenOver() {
        offload(roll, scene.reader, null, scene.shuttle, 1_000);
        Document page = scene.see(startPage());
        assertThat(page.select("select[name='legs[0].item'] option[selected][value]:not([value=''])"))
                .isEmpty();
        assertThat(page.selectFirst("option[value=" + scene.shuttle + "]").text())
                .contains("written over");
        assertThat(page.selectFirst(".confirm").text()).contains("Copies of A001 are on SHUTTLE-1");
        assertThat(selected(page, "legs[1].item")).isEqualTo(scene.archive.toString());
    }

    @Test
    void anOffloadBeginsWithOneCopyForEachLegAndMore() {
        UUID extra = scene.production.item("SPARE-1", "DRIVE", scene.set, null);
        Map<String, Object> form = new HashMap<>(scene.startForm());
        form.put("extra", extra);
        UUID session = Scene.sentTo(scene.post(startPage(), Role.WRANGLER, form));
        assertThat(offloads.get(scene.production.id, session).destinations())
                .isEqualTo("ARCHIVE-1, SHUTTLE-1, SPARE-1");
        assertThat(copies.ofRoll(scene.production.id, roll))
                .extracting(Copy::itemCode, Copy::legId)
                .containsExactlyInAnyOrder(
                        tuple("SHUTTLE-1", scene.shuttleLeg),
                        tuple("ARCHIVE-1", scene.archiveLeg),
                        tuple("SPARE-1", null));
    }

    @Test
    void anOffloadToNowhereOrTwiceToOneMediumIsRefusedAtItsFieldAndStays() {
        Map<String, Object> form = new HashMap<>(scene.startForm());
        form.put("legs[0].item", "");
        form.put("legs[1].item", "");
        MvcTestResult nowhere = scene.post(startPage(), Role.WRANGLER, form);
        assertThat(nowhere).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Scene.html(nowhere).selectFirst("#error-summary").text()).contains("at least one destination");

        form.put("legs[0].item", scene.archive);
        form.put("extra", scene.archive);
        MvcTestResult twice = scene.post(startPage(), Role.WRANGLER, form);
        assertThat(twice).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = Scene.html(twice);
        assertThat(page.selectFirst("#extra-error").text()).contains("chosen above already");
        assertThat(selected(page, "legs[0].item")).isEqualTo(scene.archive.toString());
        assertThat(selected(page, "reader")).isEqualTo(scene.reader.toString());

        form.put("extra", "");
        form.put("reader", "");
        assertThat(Scene.html(scene.post(startPage(), Role.WRANGLER, form)).select("#reader-error"))
                .hasSize(1);
        form.put("reader", "nobody");
        assertThat(scene.post(startPage(), Role.WRANGLER, form)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(offloads.running(scene.production.id)).isEmpty();
    }

    @Test
    void aPlanThatChangedMeanwhileIsNotFollowedBlindly() {
        Map<String, Object> form = new HashMap<>(scene.startForm());
        scene.production.leg("Third", scene.set, true);
        MvcTestResult refused = scene.post(startPage(), Role.WRANGLER, form);
        assertThat(refused).hasStatus(HttpStatus.CONFLICT);
        assertThat(Scene.html(refused).selectFirst("main").text()).contains("copy plan changed");
    }

    @Test
    void anotherProductionsReaderOrDriveIsUnknown() {
        Scene other = new Scene(fixtures, mvc);
        Map<String, Object> form = new HashMap<>(scene.startForm());
        form.put("reader", other.reader);
        assertThat(scene.post(startPage(), Role.WRANGLER, form)).hasStatus(HttpStatus.NOT_FOUND);
        form.put("reader", scene.reader);
        form.put("extra", other.shuttle);
        assertThat(scene.post(startPage(), Role.WRANGLER, form)).hasStatus(HttpStatus.NOT_FOUND);
        assertThat(offloads.running(scene.production.id)).isEmpty();
    }

    @Test
    void ofTwoPeopleWhoStartTheSameOffloadOneDoesAndTheOtherIsTold() throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService people = Executors.newFixedThreadPool(2);
        try {
            List<Future<MvcTestResult>> answers = people.invokeAll(Stream.of(Role.WRANGLER, Role.ADMINISTRATOR)
                    .map(role -> (Callable<MvcTestResult>) () -> {
                        together.await();
                        return scene.post(startPage(), role, scene.startForm());
                    })
                    .toList());
            MvcTestResult one = answers.get(0).get();
            MvcTestResult other = answers.get(1).get();
            boolean oneWon = one.getResponse().getStatus() == HttpStatus.FOUND.value();
            MvcTestResult loser = oneWon ? other : one;
            assertThat(oneWon ? one : other).hasStatus3xxRedirection();
            assertThat(loser).hasStatus(HttpStatus.CONFLICT);
            assertThat(Scene.html(loser).selectFirst("main").text()).contains("CARD-1", "is being copied already");
        } finally {
            people.shutdown();
        }
        assertThat(offloads.running(scene.production.id)).hasSize(1);
    }

    @Test
    void aRunningSessionNamesTheSlowestPartAndItsEnd() {
        jdbc.sql("update inventory_item set read_bytes_per_second = 100000000 where id = ?")
                .param(scene.reader)
                .update();
        jdbc.sql("update offload_roll set size_bytes = 36000000000 where id = ?")
                .param(roll)
                .update();
        UUID session = start();
        Document page = scene.see("offloads/" + session);
        assertThat(page.selectFirst("main").text()).contains("100 MB/s", "limited by READER-1", "36.0 GB", "in 5 min");
        assertThat(page.select("tbody th").eachText()).containsExactly("CARD-1", "READER-1", "SHUTTLE-1", "ARCHIVE-1");
        assertThat(page.selectFirst("#size").val()).isEqualTo("36.0 GB");
    }

    @Test
    void whenNothingIsKnownNothingIsClaimed() {
        jdbc.sql(
                        "update inventory_item set read_bytes_per_second = null, write_bytes_per_second = null where production_id = ?")
                .param(scene.production.id)
                .update();
        UUID session = start();
        Document page = scene.see("offloads/" + session);
        assertThat(page.selectFirst("main").text()).contains("no speed of any part is known");
        Scene.sentTo(scene.post("offloads/" + session + "/finish", Role.WRANGLER, Map.of("size", "1000")));
        assertThat(scene.see("offloads/" + session).selectFirst("main").text()).contains("no rate to compare");
    }

    @Test
    void aFinishedSessionShowsTheMeasuredRateBesideTheExpectedOne() {
        UUID session = start();
        assertThat(scene.post("offloads/" + session + "/finish", Role.WRANGLER, Map.of("size", "45,36 GB")))
                .hasStatus3xxRedirection();
        assertThat(rolls.get(scene.production.id, roll).sizeBytes()).isEqualTo(45_360_000_000L);
        took(session, 100);

        // 45.36 GB in 100 s are 453.6 MB/s, 9.3 % below 500 MB/s.
        Document page = scene.see("offloads/" + session);
        assertThat(page.selectFirst("main").text()).contains("454 MB/s", "9.3 % slower than expected", "500 MB/s");
        assertThat(page.selectFirst("a.primary").attr("href")).isEqualTo(scene.production.path("documents"));
        assertThat(page.select("main form")).isEmpty();
        assertThat(scene.see("offloads").selectFirst("main").text())
                .contains("A001", "finished", "454 MB/s", "9.3 % slower than expected");
    }

    @Test
    void bytesThatCannotBeReadAreRefusedAndStay() {
        UUID session = start();
        for (String typed : List.of("a lot", "0", "512 Gbit", "")) {
            MvcTestResult refused = scene.post("offloads/" + session + "/finish", Role.WRANGLER, Map.of("size", typed));
            assertThat(refused).as(typed).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            assertThat(Scene.html(refused).selectFirst("#size").val()).isEqualTo(typed);
            assertThat(Scene.html(refused).select("#size-error")).hasSize(1);
        }
        assertThat(scene.get("offloads/" + session + "/finish", Role.WRANGLER))
                .hasRedirectedUrl(scene.production.path("offloads/" + session));
        assertThat(offloads.get(scene.production.id, session).outcome()).isEqualTo(Offload.Outcome.RUNNING);
    }

    @Test
    void aSessionThatBrokeOffSaysWhy() {
        UUID session = start();
        assertThat(scene.see("offloads/" + session + "/abandon")
                        .selectFirst("#sentence")
                        .text())
                .contains("can be offloaded again");
        assertThat(scene.post("offloads/" + session + "/abandon", Role.WRANGLER, Map.of("reason", " ")))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(scene.post("offloads/" + session + "/abandon", Role.WRANGLER, Map.of("reason", "lost power")))
                .hasStatus3xxRedirection();
        assertThat(scene.see("offloads/" + session).selectFirst("main").text())
                .contains("broken off", "lost power", "counts for nothing");
        assertThat(scene.see("offloads").selectFirst("main").text()).contains("broken off");
    }

    @Test
    void aSessionEndsOnceAndWhoComesSecondIsTold() {
        UUID session = start();
        scene.post("offloads/" + session + "/finish", Role.WRANGLER, Map.of("size", "1000"));
        for (String end : List.of("finish", "abandon")) {
            MvcTestResult second = scene.post(
                    "offloads/" + session + "/" + end, Role.ADMINISTRATOR, Map.of("size", "2000", "reason", "x"));
            assertThat(second).hasStatus(HttpStatus.CONFLICT);
            assertThat(Scene.html(second).selectFirst("main").text()).contains("has ended already");
        }
        assertThat(offloads.get(scene.production.id, session).sizeBytes()).isEqualTo(1000);
    }

    @Test
    void everybodyReadsAndOnlyWranglersAndAdministratorsChange() {
        UUID next = pulled("A002", scene.production.item("CARD-2", "CARD", scene.set, null));
        UUID session = start();
        for (Role role : List.of(Role.OFFICE, Role.POST, Role.READER)) {
            MvcTestResult page = scene.get("offloads/" + session, role);
            assertThat(page).hasStatus(HttpStatus.OK);
            assertThat(Scene.html(page).select("main form, main a[href$=abandon]"))
                    .isEmpty();
            assertThat(scene.get("offloads", role)).hasStatus(HttpStatus.OK);
            assertThat(scene.get("rolls/" + next + "/offload", role)).hasStatus(HttpStatus.FORBIDDEN);
            assertThat(scene.post("rolls/" + next + "/offload", role, scene.startForm()))
                    .hasStatus(HttpStatus.FORBIDDEN);
            assertThat(scene.post("offloads/" + session + "/finish", role, Map.of("size", "1")))
                    .hasStatus(HttpStatus.FORBIDDEN);
            assertThat(scene.get("offloads/" + session + "/abandon", role)).hasStatus(HttpStatus.FORBIDDEN);
            assertThat(scene.post("offloads/" + session + "/abandon", role, Map.of("reason", "x")))
                    .hasStatus(HttpStatus.FORBIDDEN);
        }
        assertThat(offloads.running(scene.production.id)).hasSize(1);
    }

    @Test
    void unknownSessionsAndThoseOfAnotherProductionAreNotFound() {
        UUID session = start();
        Scene other = new Scene(fixtures, mvc);
        for (UUID id : List.of(session, UUID.randomUUID())) {
            assertThat(other.get("offloads/" + id, Role.WRANGLER)).hasStatus(HttpStatus.NOT_FOUND);
            assertThat(other.get("offloads/" + id + "/abandon", Role.WRANGLER)).hasStatus(HttpStatus.NOT_FOUND);
            assertThat(other.post("offloads/" + id + "/finish", Role.WRANGLER, Map.of("size", "1000")))
                    .hasStatus(HttpStatus.NOT_FOUND);
            assertThat(other.post("offloads/" + id + "/abandon", Role.WRANGLER, Map.of("reason", "x")))
                    .hasStatus(HttpStatus.NOT_FOUND);
        }
        assertThat(other.see("offloads").selectFirst("main").text())
                .contains("No offload yet")
                .doesNotContain("A001");
    }

    @Test
    void cardsThatCannotBeReadNowSayWhy() {
        UUID inCamera = rolls.load(
                scene.wrangler,
                "A002",
                scene.camera,
                scene.day,
                scene.production.item("CARD-2", "CARD", scene.set, null),
                scene.format);
        assertThat(Scene.html(scene.get("rolls/" + inCamera + "/offload", Role.WRANGLER))
                        .text())
                .contains("still in its camera");
        jdbc.sql("update inventory_item set card_state = 'CLEAR_TO_ERASE' where id = ?")
                .param(scene.card)
                .update();
        assertThat(Scene.html(scene.get(startPage(), Role.WRANGLER)).text()).contains("cleared for erasure");
        jdbc.sql("update inventory_item set card_state = 'BLANK' where id = ?")
                .param(scene.card)
                .update();
        assertThat(Scene.html(scene.get(startPage(), Role.WRANGLER)).text()).contains("does not hold roll A001");
    }

    @Test
    void thePagesTakeTheSameFewStatementsHoweverMuchThereIs() throws Exception {
        UUID session = start();
        UUID next = pulled("A002", scene.production.item("CARD-2", "CARD", scene.set, null));
        List<String> pages = List.of("offloads", "offloads/" + session, "rolls/" + next + "/offload");
        Map<String, Integer> few = new HashMap<>();
        for (String page : pages) {
            few.put(page, statements.during(() -> scene.see(page)));
        }
        for (int i = 3; i < 9; i++) {
            scene.production.leg("Leg " + i, scene.set, false);
            UUID drive = scene.production.item("DRIVE-" + i, "DRIVE", scene.set, scene.shuttleLeg);
            UUID reader = scene.production.item("READER-" + i, "READER", scene.set, null);
            UUID other = pulled("A00" + i, scene.production.item("CARD-" + i, "CARD", scene.set, null));
            if (i % 2 == 0) {
                offload(other, reader, null, drive, 1_000);
            } else {
                offloads.start(scene.wrangler, other, reader, null, List.of(new Offloads.Destination(drive, null)));
            }
        }
        for (String page : pages) {
            assertThat(statements.during(() -> scene.see(page)))
                    .as(page)
                    .isEqualTo(few.get(page))
                    .isLessThanOrEqualTo(11);
        }
    }

    private UUID pulled(String code, UUID card) {
        UUID id = rolls.load(scene.wrangler, code, scene.camera, scene.day, card, scene.format);
        rolls.pull(scene.wrangler, id, new BigDecimal("31.5"));
        return id;
    }

    private UUID start() {
        return Scene.sentTo(scene.post(startPage(), Role.WRANGLER, scene.startForm()));
    }

    private void offload(UUID rollId, UUID reader, UUID adapter, UUID shuttle, long bytes) {
        UUID session = offloads.start(
                scene.wrangler, rollId, reader, adapter, List.of(new Offloads.Destination(shuttle, scene.shuttleLeg)));
        offloads.finish(scene.wrangler, session, bytes);
    }

    private void took(UUID session, int seconds) {
        Timestamp start = Timestamp.from(
                offloads.get(scene.production.id, session).endedAt().minusSeconds(seconds));
        jdbc.sql("update offload_session set started_at = ? where id = ?")
                .params(start, session)
                .update();
    }

    private void quarantine(UUID item) {
        jdbc.sql("update inventory_item set condition = 'QUARANTINED' where id = ?")
                .param(item)
                .update();
    }

    private String startPage() {
        return "rolls/" + roll + "/offload";
    }

    private static String selected(Document page, String name) {
        return page.selectFirst("select[name='" + name + "'] option[selected]").val();
    }
}
