package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Copies;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.TestProduction;

/** Rolls copied to two drives and, encoded, to a third, with documents sent through the portal. */
final class EvidenceScene {
    static final String DIGEST_1 = "0cc175b9c0f1b6a831c399e269772661";
    static final String DIGEST_2 = "92eb5ffee6ae2fec3ad71c777531578f";
    static final String OTHER_1 = "4a8a08f09d37b73795649038408b5f33";
    static final String OTHER_2 = "8277e0910d750195b448797616e091ad";

    final TestProduction production;
    final Membership wrangler;
    final UUID shuttle;
    final UUID vault;
    final UUID leg;
    final UUID encoded;
    final UUID encodedToo;
    final UUID set;
    private final UUID camera;
    private final UUID day;
    private final UUID format;
    private final MockMvcTester mvc;
    private final Rolls rolls;
    private final Jobs jobs;
    private final Copies copies;
    private final Verdicts verdicts;

    EvidenceScene(
            Fixtures fixtures,
            MockMvcTester mvc,
            Rolls rolls,
            Copies copies,
            Jobs jobs,
            Verdicts verdicts,
            JdbcClient jdbc) {
        this.mvc = mvc;
        this.rolls = rolls;
        this.copies = copies;
        this.jobs = jobs;
        this.verdicts = verdicts;
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        leg = production.leg("Encoded", set, false);
        jdbc.sql("update production_leg set rendition = 'ENCODED', kept_percent = 60 where id = ?")
                .param(leg)
                .update();
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, null);
        vault = production.item("VAULT-1", "DRIVE", set, null);
        encoded = production.item("ENCODED-1", "DRIVE", set, leg);
        encodedToo = production.item("ENCODED-2", "DRIVE", set, leg);
    }

    UUID roll(String code) {
        UUID roll = rolls.load(wrangler, code, camera, day, production.item("CARD-" + code, "CARD", set, null), format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        return roll;
    }

    /** Sends a document through the portal and lets the jobs run. */
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

    CopyVerdict verdictOn(UUID roll, UUID item) {
        UUID copy = copies.ofRoll(production.id, roll).stream()
                .filter(one -> one.itemId().equals(item))
                .findFirst()
                .orElseThrow()
                .id();
        CopyVerdict verdict = verdicts.ofRoll(production.id, roll).get(copy);
        return verdict == null ? CopyVerdict.unknown(copy, CopyVerdict.Reason.NO_EVIDENCE, Instant.EPOCH) : verdict;
    }

    List<String> reasonsOn(UUID roll, UUID item) {
        return verdictOn(roll, item).reasons();
    }

    Document see(String page) throws UnsupportedEncodingException {
        MvcTestResult result = mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(Role.WRANGLER))
                .exchange();
        assertThat(result).as(page).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    /** A list of two files as recorded, with any comment on top. */
    static String list(String comment, String roll, String digest1, String digest2) {
        return "# %s\n%s  %s/one.mxf\n%s  %s/two.mxf\n".formatted(comment, digest1, roll, digest2, roll);
    }

    /** An ASC MHL document of two files with sizes. */
    static String mhl(
            String host, String process, String action, String roll, long size, String digest1, String digest2) {
        String file = """
                    <hash><path size="%d">%s/%s.mxf</path><md5 action="%s">%s</md5></hash>
                """;
        return """
                <?xml version="1.0" encoding="UTF-8"?>
                <hashlist xmlns="urn:ASC:MHL:v2.0" version="2.0">
                  <creatorinfo>
                    <creationdate>2026-03-04T18:05:12Z</creationdate>
                    <hostname>%s</hostname>
                    <tool version="1">a writer</tool>
                  </creatorinfo>
                  <processinfo><process>%s</process></processinfo>
                  <hashes>
                %s%s  </hashes>
                </hashlist>
                """.formatted(
                        host,
                        process,
                        file.formatted(size, roll, "one", action, digest1),
                        file.formatted(size, roll, "two", action, digest2));
    }
}
