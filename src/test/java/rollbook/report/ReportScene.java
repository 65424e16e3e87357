package rollbook.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
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

/** A shooting day with rolls that are copied to two drives, and documents sent through the portal. */
final class ReportScene {
    static final String GOOD = "900150983cd24fb0d6963f7d28e17f72";
    static final String BAD = "900150983cd24fb0d6963f7d28e17f73";
    /** What ten minutes make in the scene's format. */
    static final long ROLL_BYTES = 14_400_000_000L;

    final TestProduction production;
    final Membership wrangler;
    final UUID day;
    final UUID shuttle;
    final UUID vault;
    final UUID camera;
    final UUID format;
    private final UUID set;
    private final UUID reader;
    private final UUID shuttles;
    private final UUID vaults;
    private final MockMvcTester mvc;
    private final Rolls rolls;
    private final Offloads offloads;
    private final Jobs jobs;

    ReportScene(Fixtures fixtures, MockMvcTester mvc, Rolls rolls, Offloads offloads, Jobs jobs) {
        this.mvc = mvc;
        this.rolls = rolls;
        this.offloads = offloads;
        this.jobs = jobs;
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        shuttles = production.leg("Shuttle", set, true);
        vaults = production.leg("Vault", set, true);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, shuttles);
        vault = production.item("VAULT-1", "DRIVE", set, vaults);
        reader = production.item("READER-1", "READER", set, null);
        production.policy(2);
    }

    /** A roll of ten minutes on a card of its own. */
    UUID pulled(String code) {
        UUID roll = rolls.load(wrangler, code, camera, day, production.item("CARD-" + code, "CARD", set, null), format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        return roll;
    }

    /** The same, copied to both drives. */
    UUID copied(String code) {
        UUID roll = pulled(code);
        UUID session = offloads.start(
                wrangler,
                roll,
                reader,
                null,
                List.of(new Offloads.Destination(shuttle, shuttles), new Offloads.Destination(vault, vaults)));
        offloads.finish(wrangler, session, ROLL_BYTES);
        return roll;
    }

    /** The same, and proven on both. */
    UUID proven(String code) {
        UUID roll = copied(code);
        send("CARD", code + "-card.md5", list(code, "card", GOOD));
        send(shuttle, code + "-shuttle.md5", list(code, "shuttle", GOOD));
        send(vault, code + "-vault.md5", list(code, "vault", GOOD));
        return roll;
    }

    /** A list of two clips, with any comment on top. */
    static String list(String roll, String comment, String secondDigest) {
        return "# %1$s\n0cc175b9c0f1b6a831c399e269772661  %2$s/Clips/%2$sC001.mxf\n%3$s  %2$s/Clips/%2$sC002.mxf\n"
                .formatted(comment, roll, secondDigest);
    }

    void send(Object describes, String name, String content) {
        MvcTestResult sent = mvc.post()
                .uri(production.path("documents"))
                .multipart()
                .file(new MockMultipartFile(
                        "file", name, "application/octet-stream", content.getBytes(StandardCharsets.UTF_8)))
                .param("describes", describes.toString())
                .with(production.signedInAs(Role.WRANGLER))
                .exchange();
        assertThat(sent).hasStatus3xxRedirection();
        jobs.run();
    }

    void wrap() {
        assertThat(post(Role.WRANGLER, "days/" + day + "/wrap")).hasStatus3xxRedirection();
    }

    MvcTestResult sign(Role role, String sha256, String remark) {
        return post(role, page() + "/sign-offs", "sha256", sha256, "remark", remark);
    }

    MvcTestResult post(Role role, String page, String... fields) {
        var request = mvc.post().uri(production.path(page));
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.with(production.signedInAs(role)).exchange();
    }

    MvcTestResult get(String page) {
        return mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(Role.WRANGLER))
                .exchange();
    }

    String page() {
        return "days/" + day + "/report";
    }

    Document see() throws UnsupportedEncodingException {
        return see(page());
    }

    Document see(String page) throws UnsupportedEncodingException {
        MvcTestResult result = get(page);
        assertThat(result).as(page).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    /** The digest that the report's form sends along, as a person sees it. */
    String sha256() throws UnsupportedEncodingException {
        return see().select("p.quiet > code.path").text();
    }
}
