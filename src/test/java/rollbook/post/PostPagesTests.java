package rollbook.post;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Alarm;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

/** What post is told, says and does about the media that set sends. */
@PortalTest
class PostPagesTests {
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
    AbsentMedia absent;

    @Autowired
    PostStandings standings;

    @Autowired
    StatementCount statements;

    private PostScene scene;

    @BeforeEach
    void begin() {
        scene = new PostScene(fixtures, mvc, rolls, offloads, jobs, jdbc);
    }

    @Test
    void asksFirstWhichPlaceIsPostAndTheOfficeOrPostSays() throws Exception {
        assertThat(scene.sentence()).isEqualTo("Nobody has said yet which place is post.");
        assertThat(scene.see(Role.READER, "post").select("main a.button")).isEmpty();
        assertThat(scene.see(Role.POST, "post").select("main a.button").text()).isEqualTo("Say which place is post");
        assertThat(scene.get(Role.POST, "post/media")).hasRedirectedUrl(scene.production.path("post"));
        assertThat(standings.of(scene.production.id).placeName()).isNull();

        assertThat(scene.send(Role.OFFICE, "post/place", "placeId", "", "version", "0"))
                .hasStatus(422);
        assertThat(scene.send(
                        Role.OFFICE, "post/place", "placeId", UUID.randomUUID().toString(), "version", "0"))
                .hasStatus(422);
        assertThat(scene.send(Role.WRANGLER, "post/place", "placeId", scene.post.toString(), "version", "0"))
                .hasStatus(403);
        assertThat(scene.send(Role.OFFICE, "post/place", "placeId", scene.post.toString(), "version", "0"))
                .hasRedirectedUrl(scene.production.path("post"));
        assertThat(scene.sentence()).isEqualTo("No roll has been pulled from a camera yet, so post waits for nothing.");
        assertThat(scene.acts()).containsExactly("post.chosen Post house");
    }

    @Test
    void whoChoosesAPlaceWithoutHavingSeenTheLastChoiceIsRefused() {
        scene.choosePost();
        assertThat(scene.send(Role.OFFICE, "post/place", "placeId", scene.set.toString(), "version", "0"))
                .hasStatus(409);
        assertThat(scene.send(Role.OFFICE, "post/place", "placeId", scene.set.toString(), "version", "1"))
                .hasStatus3xxRedirection();
        assertThat(scene.send(Role.OFFICE, "post/place", "placeId", scene.set.toString(), "version", "1"))
                .hasStatus(409);
    }

    @Test
    void aRollGoesFromNotSentThroughSaidAndArrivedToProven() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.roll("A002");
        scene.proveElsewhere("A001", "A002");
        assertThat(scene.sentence()).isEqualTo("Post house has received 0 of 2 rolls; none is proven there.");
        assertThat(scene.rows(Role.READER, "post"))
                .allMatch(row -> row.contains("not sent") && row.contains("SHUTTLE-1 at Set"));

        scene.move(scene.shuttle, scene.post);
        assertThat(scene.sentence())
                .isEqualTo("Post house has received 0 of 2 rolls; none is proven there."
                        + " 1 medium is said to be there: say whether that is so.");
        assertThat(scene.rows(Role.READER, "post")).allMatch(row -> row.contains("said to be there"));
        String custody = String.valueOf(scene.custodyOf(scene.shuttle));
        assertThat(scene.see(Role.POST, "post/media").select("main form button").eachText())
                .containsExactly("SHUTTLE-1 is here");
        assertThat(scene.see(Role.WRANGLER, "post/media").select("main form")).isEmpty();
        assertThat(scene.send(Role.POST, "post/media/" + scene.shuttle + "/word", "custodyId", custody, "here", "true"))
                .hasRedirectedUrl(scene.production.path("post/media"));
        assertThat(scene.sentence()).startsWith("Post house has received 2 of 2 rolls; none is proven there.");
        assertThat(scene.rows(Role.READER, "post")).allMatch(row -> row.contains("arrived, not yet checked"));
        assertThat(scene.see(Role.POST, "post/media").select("main td a.button").attr("href"))
                .endsWith("/documents?item=" + scene.shuttle);

        scene.readAtPost(scene.shuttle, "shuttle at post", "A001");
        assertThat(scene.sentence()).startsWith("Post house has received 2 of 2 rolls; 1 is proven there.");
        scene.readAtPost(scene.shuttle, "shuttle at post too", "A002");
        assertThat(scene.sentence())
                .startsWith("All 2 rolls shot so far have come to Post house and are proven there.");
    }

    @Test
    void aListOfSetsOwnReadingProvesNothingAtPost() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.proveElsewhere("A001");
        scene.readAtPost(scene.shuttle, "shuttle, on set", "A001");
        scene.move(scene.shuttle, scene.post);
        assertThat(scene.rows(Role.READER, "post").get(0))
                .contains("said to be there")
                .contains("proven");
        assertThat(scene.sentence()).contains("received 0 of 1 roll; none is proven there.");
    }

    @Test
    void whatPostMissesRaisesAnAlarmUntilItIsFoundOrMovedOrLost() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.move(scene.shuttle, scene.post);
        String word = "post/media/" + scene.shuttle + "/word";
        String custody = String.valueOf(scene.custodyOf(scene.shuttle));
        assertThat(absent.alarms(scene.production.id)).isEmpty();
        scene.send(Role.POST, word, "custodyId", custody, "here", "false", "note", "the box was empty");
        List<Alarm> alarms = absent.alarms(scene.production.id);
        assertThat(alarms).hasSize(1);
        assertThat(alarms.get(0).args()).containsExactly("SHUTTLE-1", "Post house");
        assertThat(scene.get(Role.POST, alarms.get(0).page())).hasStatusOk();
        assertThat(scene.sentence())
                .contains("SHUTTLE-1 with 1 roll should be at Post house, but")
                .contains("says that it isn’t there.");
        assertThat(scene.see(Role.OFFICE, "post/media/" + scene.shuttle).text()).contains("the box was empty");

        scene.send(Role.POST, word, "custodyId", custody, "here", "true");
        assertThat(absent.alarms(scene.production.id)).isEmpty();
        scene.send(Role.POST, word, "custodyId", custody, "here", "false");
        assertThat(absent.alarms(scene.production.id))
                .extracting(Alarm::key)
                .as("it happened again")
                .doesNotContain(alarms.get(0).key())
                .hasSize(1);
        scene.move(scene.shuttle, scene.set);
        assertThat(absent.alarms(scene.production.id)).isEmpty();
        assertThat(scene.acts())
                .containsExactly(
                        "item.said-not-here SHUTTLE-1", "item.said-here SHUTTLE-1", "item.said-not-here SHUTTLE-1");
    }

    @Test
    void aWordOnAStayThatIsOverIsRefusedAndTheSameWordTwiceIsOne() {
        scene.choosePost();
        scene.roll("A001");
        scene.move(scene.shuttle, scene.post);
        String word = "post/media/" + scene.shuttle + "/word";
        String first = String.valueOf(scene.custodyOf(scene.shuttle));
        scene.send(Role.POST, word, "custodyId", first, "here", "true");
        scene.send(Role.POST, word, "custodyId", first, "here", "true");
        assertThat(scene.acts()).containsExactly("item.said-here SHUTTLE-1");
        scene.move(scene.shuttle, scene.set);
        scene.move(scene.shuttle, scene.post);
        assertThat(scene.send(Role.POST, word, "custodyId", first, "here", "true"))
                .hasStatus(409);
        assertThat(scene.send(Role.POST, word, "here", "true")).hasStatus(404);
        assertThat(scene.send(Role.POST, word, "custodyId", "x", "here", "true"))
                .hasStatus(422);
        assertThat(scene.send(
                        Role.POST,
                        word,
                        "custodyId",
                        String.valueOf(scene.custodyOf(scene.shuttle)),
                        "here",
                        "false",
                        "note",
                        "x".repeat(401)))
                .hasStatus(422);
        assertThat(scene.send(Role.OFFICE, word, "custodyId", first, "here", "true"))
                .hasStatus(403);
    }

    @Test
    void aShipmentIsOnItsWayThenLateThenArrived() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        UUID shipment = shipment("UNDER_WAY", Instant.now().plusSeconds(7200));
        assertThat(scene.sentence()).contains("1 roll is on the way.");
        assertThat(scene.rows(Role.READER, "post").get(0))
                .contains("on its way")
                .contains("shipment 1");
        assertThat(standings.of(scene.production.id).underWay())
                .extracting(PostStanding.Medium::itemCode)
                .containsExactly("SHUTTLE-1");
        assertThat(scene.see(Role.POST, "post/media").select("main td a.button").attr("href"))
                .isEqualTo(scene.production.path("shipments/" + shipment + "/receive"));

        jdbc.sql("update shipment_shipment set expected_by = ? where id = ?")
                .params(Timestamp.from(Instant.now().minusSeconds(60)), shipment)
                .update();
        assertThat(scene.sentence()).contains("SHUTTLE-1 with 1 roll was sent").contains("hasn’t arrived");
        assertThat(scene.rows(Role.READER, "post?state=LATE")).hasSize(1);
        assertThat(standings.of(scene.production.id).amiss()).hasSize(1);

        jdbc.sql("update shipment_item set state = 'ARRIVED' where shipment_id = ?")
                .param(shipment)
                .update();
        jdbc.sql("""
                        insert into shipment_act (shipment_id, at, act, item_id, by_name)
                        values (?, clock_timestamp(), 'ARRIVED', ?, 'Rita Receiver')
                        """).params(shipment, scene.shuttle).update();
        scene.move(scene.shuttle, scene.post);
        assertThat(scene.sentence()).contains("received 1 of 1 roll");
        assertThat(scene.see(Role.READER, "post/media/" + scene.shuttle).text())
                .contains("Shipment 1 with it was confirmed by Rita Receiver,");
    }

    @Test
    void whatWasTakenBackIsNotOnItsWay() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        UUID shipment = shipment("PACKED", Instant.now());
        jdbc.sql("update shipment_shipment set state = 'PACKING', sent_at = null, sent_by = null where id = ?")
                .param(shipment)
                .update();
        assertThat(scene.rows(Role.READER, "post").get(0)).contains("not sent");
    }

    @Test
    void aShuttleIsReleasedByItsOwnGateOnly() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.proveElsewhere("A001");
        scene.move(scene.shuttle, scene.post);
        scene.readAtPost(scene.shuttle, "shuttle at post", "A001");
        assertThat(scene.see(Role.POST, "post/media").text())
                .as("one proven copy elsewhere isn’t what the policy asks")
                .contains("SHUTTLE-1 must stay: 1 of 1 roll on it isn’t proven elsewhere");
        assertThat(standings.of(scene.production.id).toRelease()).isEmpty();

        scene.sendList(Role.POST, scene.tape.toString(), "tape.md5", PostScene.list("tape", "A001"));
        jdbc.sql(
                        "update production_clearing_policy set proven_copies = 1, items = 1, off_site = false where production_id = ?")
                .param(scene.production.id)
                .update();
        assertThat(scene.sentence()).contains("1 medium may go back to set once cleared and erased: SHUTTLE-1.");
        assertThat(scene.see(Role.POST, "post/media").select("main td a.button").eachText())
                .contains("Clear SHUTTLE-1");
        String medium = "media/" + scene.shuttle;
        assertThat(scene.send(Role.POST, medium + "/clear", "code", "SHUTTLE-1"))
                .hasStatus3xxRedirection();
        assertThat(scene.see(Role.POST, "post/media").select("main td a.button").eachText())
                .contains("Record that SHUTTLE-1 was erased");
        assertThat(scene.send(Role.POST, medium + "/erase", "code", "SHUTTLE-1"))
                .hasStatus3xxRedirection();
        assertThat(scene.see(Role.POST, "post/media").select("main td a.button").attr("href"))
                .endsWith("shipments/new?items=SHUTTLE-1");
        assertThat(scene.sentence())
                .as("the tape is there")
                .startsWith("The one roll shot so far has come to Post house");
        scene.move(scene.shuttle, scene.set);
        assertThat(standings.of(scene.production.id).toRelease()).isEmpty();
    }

    @Test
    void aCopyThatDiffersIsTold() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.proveElsewhere("A001");
        scene.move(scene.shuttle, scene.post);
        scene.sendList(
                Role.POST, scene.shuttle.toString(), "bad.md5", "92eb5ffee6ae2fec3ad71c777531578f  A001/one.mxf\n");
        assertThat(scene.sentence()).contains("On SHUTTLE-1, A001 differs or lacks files.");
        assertThat(scene.rows(Role.POST, "post/media/" + scene.shuttle).get(0)).contains("differs");
    }

    @Test
    void theListIsFilteredAndSavedAsItIsFiltered() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.roll("A002");
        assertThat(scene.rows(Role.READER, "post?q=a002")).hasSize(1);
        assertThat(scene.rows(Role.READER, "post?q=SHUTTLE")).hasSize(2);
        assertThat(scene.see(Role.READER, "post?state=LOST").text()).contains("No roll stands so");
        assertThat(scene.rows(Role.READER, "post?state=nonsense")).hasSize(2);
        String csv = scene.get(Role.READER, "post.csv?q=A002").getResponse().getContentAsString();
        assertThat(csv.lines().toList()).hasSize(3);
        assertThat(csv.lines().skip(1))
                .allMatch(line -> line.startsWith("Main,1,2031-03-03,A002,not sent,"))
                .anyMatch(line -> line.contains("SHUTTLE-1,not sent,Set,"));
    }

    @Test
    void asksTheDatabaseAsOftenForManyRollsAsForOne() throws Exception {
        scene.choosePost();
        scene.roll("A001");
        scene.move(scene.shuttle, scene.post);
        List<String> pages = List.of("post", "post/media", "post/media/" + scene.shuttle, "post/sets", "post.csv");
        List<Integer> forOne = statementsOf(pages);
        assertThat(forOne)
                .as("with two more for a session that is kept, at most twelve")
                .allMatch(count -> count <= 10);
        scene.roll("A002");
        scene.roll("A003");
        assertThat(statementsOf(pages)).isEqualTo(forOne);
    }

    private List<Integer> statementsOf(List<String> pages) throws Exception {
        List<Integer> counts = new ArrayList<>();
        for (String page : pages) {
            counts.add(statements.during(
                    () -> assertThat(scene.get(Role.READER, page)).as(page).hasStatusOk()));
        }
        return counts;
    }

    @Test
    void anotherProductionsMediumIsUnknown() {
        scene.choosePost();
        PostScene other = new PostScene(fixtures, mvc, rolls, offloads, jobs, jdbc);
        other.choosePost();
        other.roll("A001");
        other.move(other.shuttle, other.post);
        assertThat(other.get(Role.POST, "post/media/" + other.shuttle)).hasStatusOk();
        assertThat(scene.get(Role.POST, "post/media/" + other.shuttle)).hasStatus(404);
        assertThat(scene.get(Role.POST, "post/media/" + other.shuttle + "/contents.pdf"))
                .hasStatus(404);
        assertThat(scene.send(
                        Role.POST,
                        "post/media/" + other.shuttle + "/word",
                        "custodyId",
                        String.valueOf(other.custodyOf(other.shuttle)),
                        "here",
                        "true"))
                .hasStatus(404);
        assertThat(scene.send(Role.POST, "post/place", "placeId", other.post.toString(), "version", "1"))
                .hasStatus(422);
    }

    private UUID shipment(String itemState, Instant expectedBy) {
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                        insert into shipment_shipment (id, production_id, number, from_place_id, to_place_id, carrier, state, packed_at,
                            packed_by, sent_at, sent_by, expected_by, dispatch)
                        values (:id, :production, 1, :from, :to, 'night courier', 'SENT', :now, :by, :now, :by, :expected, 1)
                        """)
                .param("id", id)
                .param("production", scene.production.id)
                .param("from", scene.set)
                .param("to", scene.post)
                .param("now", Timestamp.from(Instant.now()))
                .param("by", scene.wrangler.personId())
                .param("expected", Timestamp.from(expectedBy))
                .update();
        jdbc.sql("insert into shipment_item (shipment_id, item_id, position, state) values (?, ?, 0, ?)")
                .params(id, scene.shuttle, itemState)
                .update();
        return id;
    }
}
