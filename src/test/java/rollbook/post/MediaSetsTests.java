package rollbook.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.web.Refusal;

/** Sets of tapes: only what is there and proven, unless somebody says why; on record for good. */
@PortalTest
class MediaSetsTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Jobs jobs;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MediaSets sets;

    private PostScene scene;
    private UUID secondDay;

    @BeforeEach
    void putTheFirstDayOnATape() {
        scene = new PostScene(fixtures, mvc, rolls, offloads, jobs, jdbc);
        secondDay = scene.production.day(scene.unit, 2, "PLANNED");
        scene.roll("A001");
        scene.roll("A002");
        scene.roll("A003", secondDay);
        scene.proveElsewhere("A001", "A002", "A003");
        scene.readAtPost(scene.tape, "tape", "A001", "A002");
    }

    @Test
    void aSetOfWhatIsProvenIsRecordedWithItsMediaAndWhereTheyLay() throws Exception {
        assertThat(scene.see(Role.READER, "post/sets").select("#sentence").text())
                .startsWith("Tape is complete and proven up to day 1, Main, Mon 3 Mar 2031.");
        MvcTestResult made = record(scene.day, "", null);
        assertThat(made).hasStatus3xxRedirection();
        assertThat(scene.rows(Role.READER, page(made)).get(0)).isEqualTo("TAPE-1 Post house 2 A001, A002");
        scene.move(scene.tape, scene.office);
        assertThat(scene.rows(Role.READER, page(made)).get(0))
                .as("where it lay then")
                .contains("Post house");
        MediaSet set = sets.list(scene.production.id).get(0);
        assertThat(set.isComplete()).isTrue();
        assertThat(set.items()).containsExactly("TAPE-1");
        assertThat(set.rolls()).isEqualTo(2);
        assertThat(scene.acts()).containsExactly("set.made 1");
    }

    @Test
    void aGapRefusesTheSetUntilThereIsAReasonAndThenItSaysSoForGood() throws Exception {
        MvcTestResult refused = record(secondDay, " ", null);
        assertThat(refused).hasStatus(422);
        assertThat(refused.getResponse().getContentAsString())
                .contains("1 roll is missing or not proven: A003. Say why")
                .contains("shelf 4");
        assertThat(sets.list(scene.production.id)).isEmpty();

        assertThat(record(secondDay, "the drive was late; next set has it", null))
                .hasStatus3xxRedirection();
        scene.readAtPost(scene.tape, "tape again", "A003");
        MediaSet set = sets.list(scene.production.id).get(0);
        assertThat(set.gaps()).as("as it was then, though A003 is there now").isEqualTo(1);
        assertThat(scene.see(Role.READER, "post/sets/" + set.id()).text())
                .contains("made although 1 of 3 rolls was missing or not proven")
                .contains("A003 not on any of these media")
                .contains("because: the drive was late; next set has it");
    }

    @Test
    void aRollThatIsThereButUnreadIsAGapToo() {
        offload("A003");
        assertThat(record(secondDay, "", null)).hasStatus(422);
        assertThat(record(secondDay, "tape reader broken", null)).hasStatus3xxRedirection();
        assertThat(sets.rolls(
                        scene.production.id,
                        sets.list(scene.production.id).get(0).id()))
                .filteredOn(roll -> !roll.proven())
                .extracting(SetRoll::itemCode)
                .containsExactly("TAPE-1");
    }

    @Test
    void aReasonWithoutAGapIsNotKept() {
        record(scene.day, "just because", null);
        assertThat(sets.list(scene.production.id).get(0).reason()).isEmpty();
    }

    @Test
    void theSameSetIsRecordedOnceAndCorrectedByANewOneThatNamesIt() throws Exception {
        record(scene.day, "", null);
        MediaSet first = sets.list(scene.production.id).get(0);
        assertThat(record(scene.day, "", null)).hasStatus(409);
        assertThat(scene.see(Role.POST, "post/sets/new?replaces=" + first.id())
                        .select("#upToDayId option[selected]")
                        .text())
                .startsWith("day 1");
        MvcTestResult corrected = record(secondDay, "A003 follows", first.id());
        assertThat(corrected).hasStatus3xxRedirection();
        assertThat(sets.list(scene.production.id))
                .extracting(MediaSet::number, MediaSet::stands)
                .containsExactly(tuple(2, true), tuple(1, false));
        assertThat(scene.see(Role.READER, "post/sets/" + first.id())
                        .select("#sentence")
                        .text())
                .startsWith("Set 2 takes the place of this one.");
        assertThat(record(scene.day, "", first.id())).as("corrected already").hasStatus(409);
        assertThat(scene.acts()).containsExactly("set.made 1", "set.corrected 2");
    }

    @Test
    void aSetThatNeverWasIsWithdrawnWithAReasonAndStaysOnRecord() throws Exception {
        record(scene.day, "", null);
        UUID id = sets.list(scene.production.id).get(0).id();
        String page = "post/sets/" + id + "/withdrawal";
        assertThat(scene.send(Role.OFFICE, page, "reason", "x")).hasStatus(403);
        assertThat(scene.send(Role.POST, page, "reason", " ")).hasStatus(422);
        assertThat(scene.send(Role.POST, page, "reason", "wrong production")).hasStatus3xxRedirection();
        assertThat(scene.send(Role.POST, page, "reason", "again")).hasStatus(409);
        assertThat(scene.see(Role.READER, "post/sets/" + id).text()).contains("wrong production");
        assertThat(record(scene.day, "", null)).as("a new one may be made").hasStatus3xxRedirection();
    }

    @Test
    void nobodyChangesASetInTheDatabase() {
        record(scene.day, "", null);
        for (String table : List.of("post_set", "post_set_roll")) {
            assertThat(catchThrowable(() -> jdbc.sql("delete from " + table).update()))
                    .as(table)
                    .isNotNull();
        }
    }

    @Test
    void ofTwoPeopleWhoRecordTheSameSetAtOnceOneDoes() throws Exception {
        Callable<String> act = () -> {
            try {
                sets.record(
                        scene.production.as(Role.POST), new MediaSets.NewSet(scene.tapeLeg, scene.day, "", "", null));
                return "made";
            } catch (Refusal refusal) {
                return refusal.key();
            }
        };
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> told = two.invokeAll(List.of(act, act));
            assertThat(List.of(told.get(0).get(), told.get(1).get()))
                    .containsExactlyInAnyOrder("made", "post.refused.set-exists");
        } finally {
            two.shutdownNow();
        }
    }

    @Test
    void onlyAKeptLegHasSetsAndOnlyOfDaysThatWereShot() {
        assertThat(scene.send(
                        Role.POST,
                        "post/sets/new",
                        "legId",
                        scene.shuttleLeg.toString(),
                        "upToDayId",
                        scene.day.toString()))
                .hasStatus(422);
        assertThat(record(scene.production.day(scene.unit, 3, "PLANNED"), "", null))
                .hasStatus(422);
        assertThat(scene.send(Role.POST, "post/sets/new", "legId", "", "upToDayId", ""))
                .hasStatus(422);
        assertThat(record(scene.day, "x".repeat(401), null)).hasStatus(422);
        assertThat(scene.send(Role.WRANGLER, "post/sets/new")).hasStatus(403);
    }

    @Test
    void anotherProductionsSetIsUnknown() {
        record(scene.day, "", null);
        UUID id = sets.list(scene.production.id).get(0).id();
        PostScene other = new PostScene(fixtures, mvc, rolls, offloads, jobs, jdbc);
        assertThat(other.get(Role.POST, "post/sets/" + id)).hasStatus(404);
        assertThat(other.get(Role.POST, "post/sets/new?replaces=" + id)).hasStatus(404);
        assertThat(other.send(Role.POST, "post/sets/" + id + "/withdrawal", "reason", "x"))
                .hasStatus(404);
    }

    @Test
    void theContentsOfATapeArePrintedWithItsCode() throws Exception {
        MvcTestResult result = scene.get(Role.READER, "post/media/" + scene.tape + "/contents.pdf");
        assertThat(result).hasStatusOk().hasContentType("application/pdf");
        byte[] pdf = result.getResponse().getContentAsByteArray();
        Files.createDirectories(Path.of("target/papers"));
        Files.write(Path.of("target/papers/contents.pdf"), pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document))
                    .contains("TAPE-1")
                    .contains("A001")
                    .contains("A002")
                    .contains("2 rolls, 2.00 kB as recorded; 2 proven on it.")
                    .doesNotContain("A003");
        }
        assertThat(scene.get(Role.READER, "post/media/" + UUID.randomUUID() + "/contents.pdf"))
                .hasStatus(404);
    }

    /** A copy on the tape that nobody has read. */
    private void offload(String code) {
        jdbc.sql("""
                        insert into offload_copy (id, production_id, roll_id, item_id, leg_id, rendition, written_from, created_at)
                        select gen_random_uuid(), r.production_id, r.id, ?, ?, 'AS_RECORDED', now(), now()
                        from offload_roll r where r.production_id = ? and r.code = ?
                        """)
                .params(scene.tape, scene.tapeLeg, scene.production.id, code)
                .update();
    }

    private MvcTestResult record(UUID day, String reason, @Nullable UUID replaces) {
        return scene.send(
                Role.POST,
                "post/sets/new",
                "legId",
                scene.tapeLeg.toString(),
                "upToDayId",
                day.toString(),
                "note",
                "shelf 4",
                "reason",
                reason,
                "replaces",
                replaces == null ? "" : replaces.toString());
    }

    private String page(MvcTestResult redirect) {
        return redirect.getResponse().getRedirectedUrl().replace(scene.production.path(""), "");
    }
}
