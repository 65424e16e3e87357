package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UnsupportedEncodingException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

@PortalTest
class RollControllerTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    @Autowired
    Documents documents;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    StatementCount statements;

    private TestProduction production;
    private Membership wrangler;
    private UUID set;
    private UUID camera;
    private UUID day;
    private UUID format;
    private UUID reader;
    private UUID leg;
    private UUID drive;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        reader = production.item("READER-1", "READER", set, null);
        leg = production.leg("Shuttle", set, true);
        drive = production.item("SHUTTLE-1", "DRIVE", set, leg);
        production.policy(1);
    }

    @Test
    void theMatrixSaysWhatIsHeldAndByWhichFiles() throws Exception {
        copiedRoll("A001");
        UUID bad = copiedRoll("A002");
        send("card.md5", list("A001", "0") + list("A002", "0"), Subject.CARD, null);
        send("drive.md5", list("A001", "0") + list("A002", "1"), Subject.COPY, drive);

        Document page = page("rolls");
        assertThat(page.select("#sentence").text())
                .isEqualTo("1 card may be cleared now: CARD-A001 (A001). A002 is held: 1 file differs on SHUTTLE-1.");
        assertThat(page.select(".matrix tbody tr").eachText().get(0))
                .as("worst first")
                .contains("A002", "failed");
        assertThat(page.select(".matrix tbody tr").eachText().get(1)).contains("A001", "proven", "Clear CARD-A001");

        assertThat(page.select("section[aria-labelledby=overview] > p").text())
                .matches("Of 2 rolls 1 is proven on .*\\. Not all is proven yet of Day 1 .*\\.");
        assertThat(page.select(".strips tbody tr td").eachText()).containsExactly("1 of 2 proven 1 failed");
        assertThat(page.select(".strips svg path").eachAttr("class"))
                .as("the roll that is proven, then the one that failed")
                .containsExactly("proven", "failed", "cross");

        Document roll = page("rolls/" + bad);
        assertThat(roll.select("section[aria-labelledby=way] .trail-name").eachText())
                .containsExactly("CARD-A002, the card", "SHUTTLE-1, Set");
        assertThat(roll.select("section[aria-labelledby=way] svg[role=img]")
                        .last()
                        .attr("aria-label"))
                .startsWith("SHUTTLE-1, Set: SHUTTLE-1, Set since ")
                .endsWith(": failed.");
        assertThat(roll.text()).contains("A002C002.mxf", "different bytes", "drive.md5");
        assertThat(page("rolls/" + bad + "/clear").select("form[action$=clear]"))
                .as("no form while it is held")
                .isEmpty();
    }

    @Test
    void aCardIsClearedAndErasedByTypingItsCode() throws Exception {
        UUID roll = copiedRoll("A001");
        send("card.md5", list("A001", "0"), Subject.CARD, null);
        send("drive.md5", "# drive\n" + list("A001", "0"), Subject.COPY, drive);

        assertThat(page("rolls/" + roll + "/clear").text())
                .contains("Erasing can’t be undone", "SHUTTLE-1: 2 files with the same hash as on the card", "insurer");
        MvcTestResult wrong = post("rolls/" + roll + "/clear", "CARD-A009", Role.WRANGLER);
        assertThat(wrong).hasStatus(422);
        assertThat(parsed(wrong).select("main input[name=code]").val()).isEqualTo("CARD-A009");
        assertThat(post("rolls/" + roll + "/clear", "card-a001", Role.WRANGLER)).hasStatus3xxRedirection();
        assertThat(page("rolls").select("#sentence").text())
                .isEqualTo("1 card is cleared and may be erased: CARD-A001 (A001).");
        assertThat(post("rolls/" + roll + "/clear", "CARD-A001", Role.WRANGLER)).hasStatus(409);
        assertThat(post("rolls/" + roll + "/erase", "CARD-A001", Role.WRANGLER)).hasStatus3xxRedirection();
        assertThat(parsed(post("rolls/" + roll + "/erase", "CARD-A001", Role.WRANGLER))
                        .text())
                .contains("recorded already");
    }

    @Test
    void onlyTheSetClearsCards() throws Exception {
        UUID roll = copiedRoll("A001");
        for (Role role : List.of(Role.READER, Role.OFFICE, Role.POST)) {
            assertThat(post("rolls/" + roll + "/clear", "CARD-A001", role))
                    .as("%s", role)
                    .hasStatus(403);
            assertThat(mvc.get().uri(production.path("rolls/" + roll)).with(production.signedInAs(role)))
                    .hasStatusOk();
        }
    }

    @Test
    void anotherProductionsRollIsUnknown() {
        UUID roll = copiedRoll("A001");
        TestProduction other = fixtures.production();
        for (String path : List.of("", "/clear", "/erase", "/verdicts/1")) {
            assertThat(mvc.get().uri(other.path("rolls/" + roll + path)).with(other.signedInAs(Role.ADMINISTRATOR)))
                    .as("its own address, another production's roll: %s", path)
                    .hasStatus(404);
            assertThat(mvc.get()
                            .uri(production.path("rolls/" + roll + path))
                            .with(other.signedInAs(Role.ADMINISTRATOR)))
                    .as("another production's address: %s", path)
                    .hasStatus(404);
        }
        assertThat(mvc.get().uri(other.path("rolls?day=" + day)).with(other.signedInAs(Role.WRANGLER)))
                .hasStatus(404);
    }

    @Test
    void thePagesTakeFewStatementsHoweverManyRollsThereAre() throws Exception {
        UUID first = copiedRoll("A001");
        send("card.md5", list("A001", "0"), Subject.CARD, null);
        int board = statements.during(() -> page("rolls"));
        int roll = statements.during(() -> page("rolls/" + first));
        for (int i = 2; i <= 8; i++) {
            copiedRoll("A00" + i);
        }
        send("drive.md5", list("A001", "1") + list("A002", "1") + list("A003", "0"), Subject.COPY, drive);
        assertThat(statements.during(() -> page("rolls"))).isEqualTo(board).isLessThanOrEqualTo(12);
        // One more than before: the differences, which there were none of.
        assertThat(statements.during(() -> page("rolls/" + first)))
                .isLessThanOrEqualTo(roll + 1)
                .isLessThanOrEqualTo(12);
    }

    private UUID copiedRoll(String code) {
        UUID card = production.item("CARD-" + code, "CARD", set, null);
        UUID roll = rolls.load(wrangler, code, camera, day, card, format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        UUID session = offloads.start(wrangler, roll, reader, null, List.of(new Offloads.Destination(drive, leg)));
        offloads.finish(wrangler, session, 1_000_000);
        return roll;
    }

    private static String list(String roll, String lastDigit) {
        return "d41d8cd98f00b204e9800998ecf8427e  " + roll + "/" + roll + "C001.mxf\n"
                + "900150983cd24fb0d6963f7d28e17f7" + lastDigit + "  " + roll + "/" + roll + "C002.mxf\n";
    }

    private void send(String name, String content, Subject subject, UUID item) throws IOException {
        documents.store(
                wrangler, name, new ByteArrayInputStream(content.getBytes(StandardCharsets.UTF_8)), subject, item);
        jobs.run();
    }

    private Document page(String path) throws UnsupportedEncodingException {
        MvcTestResult result = mvc.get()
                .uri(production.path(path))
                .with(production.signedInAs(Role.WRANGLER))
                .exchange();
        assertThat(result).as(path).hasStatusOk();
        return parsed(result);
    }

    private MvcTestResult post(String path, String code, Role role) {
        return mvc.post()
                .uri(production.path(path))
                .param("code", code)
                .with(production.signedInAs(role))
                .exchange();
    }

    private static Document parsed(MvcTestResult result) throws UnsupportedEncodingException {
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
