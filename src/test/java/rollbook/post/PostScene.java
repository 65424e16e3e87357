package rollbook.post;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.TestProduction;

/** A production that copies each roll to a shuttle that goes to post and comes back, to a drive, and to a tape at post. */
final class PostScene {
    final TestProduction production;
    final Membership wrangler;
    final UUID set;
    final UUID office;
    final UUID post;
    final UUID unit;
    final UUID day;
    final UUID shuttleLeg;
    final UUID tapeLeg;
    final UUID shuttle;
    final UUID drive;
    final UUID tape;
    private final UUID camera;
    private final UUID format;
    private final UUID reader;
    private final MockMvcTester mvc;
    private final Rolls rolls;
    private final Offloads offloads;
    private final Jobs jobs;
    private final JdbcClient jdbc;

    PostScene(Fixtures fixtures, MockMvcTester mvc, Rolls rolls, Offloads offloads, Jobs jobs, JdbcClient jdbc) {
        this.mvc = mvc;
        this.rolls = rolls;
        this.offloads = offloads;
        this.jobs = jobs;
        this.jdbc = jdbc;
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        office = production.place("Office", false);
        post = production.place("Post house", true);
        unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        reader = production.item("READER-1", "READER", set, null);
        shuttleLeg = production.leg("Shuttle", post, false);
        tapeLeg = production.leg("Tape", post, false);
        jdbc.sql("update production_leg set returns_after_days = 5 where id = ?")
                .param(shuttleLeg)
                .update();
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, shuttleLeg);
        drive = production.item("DRIVE-1", "DRIVE", office, null);
        tape = production.item("TAPE-1", "TAPE", post, tapeLeg);
    }

    /** Nobody is asked: the place is put into the table. */
    void choosePost() {
        jdbc.sql("insert into post_place (production_id, place_id, version) values (?, ?, 1)")
                .params(production.id, post)
                .update();
    }

    /** A roll that was copied to the shuttle and the drive, and nothing is proven of it. */
    UUID roll(String code) {
        return roll(code, day);
    }

    UUID roll(String code, UUID ofDay) {
        UUID roll =
                rolls.load(wrangler, code, camera, ofDay, production.item("CARD-" + code, "CARD", set, null), format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        List<Offloads.Destination> to =
                List.of(new Offloads.Destination(shuttle, shuttleLeg), new Offloads.Destination(drive, null));
        offloads.finish(wrangler, offloads.start(wrangler, roll, reader, null, to), 1_000);
        return roll;
    }

    /** Sends lists of the cards and of the drive, so that what equals them is proven. */
    void proveElsewhere(String... codes) {
        sendList(Role.WRANGLER, "CARD", "cards.md5", list("cards", codes));
        sendList(Role.WRANGLER, drive.toString(), "drive.md5", list("drive", codes));
    }

    void readAtPost(UUID medium, String comment, String... codes) {
        sendList(Role.POST, medium.toString(), comment + ".md5", list(comment, codes));
    }

    void sendList(Role role, String describes, String name, String content) {
        MvcTestResult sent = mvc.post()
                .uri(production.path("documents"))
                .multipart()
                .file(new MockMultipartFile(
                        "file", name, "application/octet-stream", content.getBytes(StandardCharsets.UTF_8)))
                .param("describes", describes)
                .with(production.signedInAs(role))
                .exchange();
        assertThat(sent).hasStatus3xxRedirection();
        jobs.run();
    }

    /** A list of one file for each roll. */
    static String list(String comment, String... codes) {
        StringBuilder list = new StringBuilder("# " + comment + "\n");
        for (String code : codes) {
            list.append("0cc175b9c0f1b6a831c399e269772661  %s/one.mxf%n".formatted(code));
        }
        return list.toString();
    }

    /** The shuttle is moved by hand. */
    void move(UUID item, UUID place) {
        MvcTestResult moved = mvc.post()
                .uri(production.path("media/" + item + "/move"))
                .param("placeId", place.toString())
                .param("holder", "")
                .param("reason", "")
                .param(
                        "version",
                        jdbc.sql("select version::text from inventory_item where id = ?")
                                .param(item)
                                .query(String.class)
                                .single())
                .with(production.signedInAs(Role.WRANGLER))
                .exchange();
        assertThat(moved).hasStatus3xxRedirection();
    }

    long custodyOf(UUID item) {
        return jdbc.sql("select max(id) from inventory_custody where item_id = ?")
                .param(item)
                .query(Long.class)
                .single();
    }

    MvcTestResult get(Role role, String page) {
        return mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(role))
                .exchange();
    }

    MvcTestResult send(Role role, String page, String... parameters) {
        var request = mvc.post().uri(production.path(page)).with(production.signedInAs(role));
        for (int i = 0; i < parameters.length; i += 2) {
            request = request.param(parameters[i], parameters[i + 1]);
        }
        return request.exchange();
    }

    Document see(Role role, String page) throws UnsupportedEncodingException {
        MvcTestResult result = get(role, page);
        assertThat(result).as(page).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    String sentence() throws UnsupportedEncodingException {
        return see(Role.READER, "post").select("#sentence").text();
    }

    /** The cells of each row of the page's tables. */
    List<String> rows(Role role, String page) throws UnsupportedEncodingException {
        List<String> rows = new ArrayList<>();
        for (Element row : see(role, page).select("main table tbody tr")) {
            rows.add(row.text());
        }
        return rows;
    }

    List<String> acts() {
        return jdbc.sql("""
                        select action || ' ' || subject_code from audit_act where production_id = ?
                          and (action like 'item.said%' or action like 'set.%' or action = 'post.chosen') order by id
                        """).param(production.id).query(String.class).list();
    }
}
