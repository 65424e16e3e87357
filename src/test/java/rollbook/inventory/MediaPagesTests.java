package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

@PortalTest
class MediaPagesTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    MediaItems items;

    @Autowired
    Custody custody;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    StatementCount statements;

    private TestProduction production;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
    }

    @Test
    void theListAnswersFirstWhatTheCardsAreDoing() throws Exception {
        UUID vault = production.place("Vault", true);
        for (String state : List.of("BLANK", "BLANK", "HELD", "CLEAR_TO_ERASE", "EXPOSED")) {
            UUID card = production.item("CARD-" + UUID.randomUUID().toString().substring(0, 4), "CARD", set, null);
            jdbc.sql("update inventory_item set card_state = ? where id = ?")
                    .params(state, card)
                    .update();
        }
        UUID drive = production.item("DRIVE-1", "DRIVE", vault, null);
        custody.quarantine(production.as(Role.OFFICE), production.item("DRIVE-2", "DRIVE", set, null), "dropped");
        jdbc.sql("update inventory_item set ownership = 'HIRED', hired_until = current_date - 400 where id = ?")
                .param(drive)
                .update();
        Document page = page("media", Role.READER);
        assertThat(page.select("#sentence").text())
                .isEqualTo("2 cards are blank, 1 held, 1 clear to erase, one in a camera or waiting for its copies."
                        + " DRIVE-2 is in quarantine. DRIVE-1 is overdue at the supplier.");
        assertThat(page.select("tr:contains(DRIVE-1) .tag").eachText()).containsExactly("good", "away");
        assertThat(page.select("tr:contains(DRIVE-2) .tag").eachText()).containsExactly("quarantined");
    }

    @ParameterizedTest
    @CsvSource({
        "'', CARD-1 CARD-2 DRIVE-1 DRIVE-2",
        "kind=CARD, CARD-1 CARD-2",
        "kind=CARD&state=HELD, CARD-2",
        "state=BLANK, CARD-1",
        "state=GOOD, DRIVE-1",
        "state=LOST, DRIVE-2",
        "state=RETIRED, DRIVE-3",
        "state=AWAY, DRIVE-1",
        "state=ALL, CARD-1 CARD-2 DRIVE-1 DRIVE-2 DRIVE-3",
        "q=vault, DRIVE-1",
        "q=100%25, CARD-2",
        "q=_, ''",
        "kind=SPOON&state=odd&page=x, CARD-1 CARD-2 DRIVE-1 DRIVE-2",
    })
    void theListShowsWhatTheAddressAsksFor(String query, String codes) throws Exception {
        fillList();
        Document page = page("media?" + query, Role.READER);
        assertThat(String.join(" ", page.select("tbody th code").eachText())).isEqualTo(codes);
    }

    @Test
    void theFilterStaysInTheAddressOfTheFileAndOfTheNextPage() throws Exception {
        for (int i = 100; i < 155; i++) {
            production.item("CARD-" + i, "CARD", set, null);
        }
        Document page = page("media?kind=CARD&q=card-1", Role.READER);
        assertThat(page.select("tbody tr")).hasSize(50);
        assertThat(page.select("a[rel=next]").attr("href"))
                .isEqualTo(production.path("media?kind=CARD&q=card-1&page=2"));
        assertThat(page.select("a:contains(CSV)").attr("href"))
                .isEqualTo(production.path("media.csv?kind=CARD&q=card-1"));
        assertThat(page.select("option[selected]").eachText()).contains("card");
        assertThat(page("media?kind=CARD&q=card-1&page=2", Role.READER).select("tbody tr"))
                .hasSize(5);
        assertThat(page("media?page=99", Role.READER).select("tbody tr")).hasSize(5);
    }

    @Test
    void anEmptyListSaysWhatBelongsThereAndOffersTheFirstStepToThoseWhoMay() throws Exception {
        assertThat(page("media", Role.OFFICE).select(".empty a.button").attr("href"))
                .isEqualTo(production.path("media/run"));
        assertThat(page("media", Role.WRANGLER).select(".empty a")).isEmpty();
    }

    @Test
    void theListTakesTheSameFewStatementsWhateverItsLength() throws Exception {
        UUID leg = production.leg("Shuttle", set, true);
        addDrives(0, 5, leg);
        int few = statements.during(() -> page("media", Role.OFFICE));
        addDrives(5, 200, leg);
        int many = statements.during(() -> page("media", Role.OFFICE));
        assertThat(many).isEqualTo(few).isLessThanOrEqualTo(10);
    }

    @Test
    void theItemPageTakesFewStatementsWhateverItsHistory() throws Exception {
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        int few = statements.during(() -> page("media/" + drive, Role.OFFICE));
        for (int i = 0; i < 20; i++) {
            custody.move(production.as(Role.OFFICE), drive, set, "holder " + i, "", i);
        }
        assertThat(statements.during(() -> page("media/" + drive, Role.OFFICE)))
                .isEqualTo(few)
                .isLessThanOrEqualTo(10);
    }

    @Test
    void theTrailSaysWithWhomTheItemIsAndWasAndDrawsALaneForEach() throws Exception {
        UUID vault = production.place("Vault", true);
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        custody.move(production.as(Role.OFFICE), drive, set, "the courier", "", 0);
        custody.move(production.as(Role.OFFICE), drive, vault, "", "", 1);
        custody.quarantine(production.as(Role.OFFICE), drive, "dropped");
        Document page = page("media/" + drive, Role.READER);
        assertThat(page.select(".trail-name").eachText()).containsExactly("Set", "Set, the courier", "Vault");
        assertThat(page.select(".trail rect.stay")).hasSize(4);
        assertThat(page.select(".trail rect.doubted title").text())
                .startsWith("Vault since ")
                .endsWith("In quarantine.");
        assertThat(page.select("section > p").eachText())
                .anyMatch(says ->
                        says.matches("Vault since .*, entered by OFFICE\\. Before that Vault from .* to .*\\."));
    }

    @Test
    void anItemsPageSaysStateAndPlaceFirst() throws Exception {
        UUID card = production.item("CARD-1", "CARD", set, null);
        jdbc.sql(
                        "update inventory_item set card_state = 'HELD', holder = 'wrangler', cost_minor_units = 64990 where id = ?")
                .param(card)
                .update();
        Document page = page("media/" + card, Role.OFFICE);
        assertThat(page.select("#sentence").text())
                .isEqualTo(
                        "CARD-1 holds a roll that is not cleared. Do not erase it. It is at: Set. Holder: wrangler.");
        assertThat(page.select("dd").eachText())
                .contains("1.00 TB (931 GiB)", "reads 500 MB/s, writes 500 MB/s", "€649.90");
        assertThat(page.select("main .actions a.button").eachText())
                .containsExactly("Hand over", "Move", "Quarantine", "Report lost");
        assertThat(page.text()).contains("can’t be retired or returned before its roll is cleared");
    }

    @ParameterizedTest
    @CsvSource({
        "READER, 200, 403, 403, 403, 403",
        "POST, 200, 403, 403, 403, 403",
        "WRANGLER, 200, 200, 403, 403, 403",
        "OFFICE, 200, 200, 200, 200, 200",
        "ADMINISTRATOR, 200, 200, 200, 200, 200",
    })
    void eachRoleDoesItsOwn(Role role, int show, int move, int retire, int edit, int register) {
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        assertThat(get("media/" + drive, role)).hasStatus(show);
        assertThat(get("media/" + drive + "/move", role)).hasStatus(move);
        assertThat(get("media/" + drive + "/retire", role)).hasStatus(retire);
        assertThat(get("media/" + drive + "/edit", role)).hasStatus(edit);
        for (String page : List.of("media/new", "media/run", "media/import")) {
            assertThat(get(page, role)).as(page).hasStatus(register);
        }
        // A form that changes something answers 422 to an empty one, if the role may send it at all.
        for (String act : List.of("quarantine", "lost", "release")) {
            assertThat(post("media/" + drive + "/" + act, role, Map.of()))
                    .as(act)
                    .hasStatus(move == 200 ? 422 : 403);
        }
        for (String act : List.of("retire", "edit")) {
            assertThat(post("media/" + drive + "/" + act, role, Map.of()))
                    .as(act)
                    .hasStatus(retire == 200 ? 422 : 403);
        }
        for (String page : List.of("media/new", "media/run", "media/import", "media/import/confirm")) {
            assertThat(post(page, role, Map.of())).as(page).hasStatus(register == 200 ? 422 : 403);
        }
        assertThat(custody.chain(production.id, drive)).hasSize(1);
    }

    @Test
    void anotherProductionsItemIsUnknownOnEveryAddress() {
        UUID foreign = productionWithDrive();
        for (UUID id : List.of(foreign, UUID.randomUUID())) {
            for (String page : List.of("", "/edit", "/move", "/quarantine", "/release", "/lost", "/found", "/retire")) {
                assertThat(get("media/" + id + page, Role.ADMINISTRATOR))
                        .as("GET " + page)
                        .hasStatus(404);
                if (!page.isEmpty()) {
                    assertThat(post("media/" + id + page, Role.ADMINISTRATOR, everything()))
                            .as("POST " + page)
                            .hasStatus(404);
                }
            }
        }
        assertThat(get("media/nonsense", Role.ADMINISTRATOR)).hasStatus(404);
    }

    @Test
    void anItemIsMovedQuarantinedAndRetiredThroughItsForms() throws Exception {
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        UUID vault = production.place("Vault", true);
        assertThat(post(
                        "media/" + drive + "/move",
                        Role.WRANGLER,
                        Map.of("placeId", vault.toString(), "holder", " guard ", "version", "0")))
                .hasStatus(302)
                .hasRedirectedUrl(production.path("media/" + drive));
        assertThat(post("media/" + drive + "/move", Role.OFFICE, Map.of("placeId", set.toString(), "version", "0")))
                .hasStatus(409);
        assertThat(post("media/" + drive + "/quarantine", Role.WRANGLER, Map.of("reason", "dropped")))
                .hasStatus(302);
        MvcTestResult untyped =
                post("media/" + drive + "/retire", Role.OFFICE, Map.of("reason", "broken", "typed", "DRIVE-2"));
        assertThat(untyped).hasStatus(422);
        assertThat(document(untyped).select(".error-summary a").attr("href")).isEqualTo("#typed");
        assertThat(post("media/" + drive + "/retire", Role.OFFICE, Map.of("reason", "broken", "typed", "drive-1")))
                .hasStatus(302);
        assertThat(custody.chain(production.id, drive))
                .extracting(CustodyEntry::act, CustodyEntry::holder, CustodyEntry::note)
                .startsWith(
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.RETIRED, "guard", "broken"),
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.QUARANTINED, "guard", "dropped"),
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.MOVED, "guard", ""));
    }

    @Test
    void aRunIsRegisteredThroughItsForm() throws Exception {
        Map<String, String> run = new java.util.HashMap<>(everything());
        run.putAll(Map.of("prefix", "card-", "first", "9", "digits", "2", "count", "3"));
        assertThat(post("media/run", Role.OFFICE, run)).hasRedirectedUrl(production.path("media"));
        assertThat(items.list(production.id))
                .extracting(MediaItem::code)
                .containsExactly("CARD-09", "CARD-10", "CARD-11");
        MvcTestResult again = post("media/run", Role.OFFICE, run);
        assertThat(again).hasStatus(422);
        assertThat(document(again).select(".error-summary").text())
                .contains("3 of these codes are registered already: CARD-09, CARD-10, CARD-11.");
        assertThat(document(again).select("input[name=prefix]").val()).isEqualTo("card-");
        run.put("digits", "1");
        assertThat(document(post("media/run", Role.OFFICE, run))
                        .select("#digits-error")
                        .text())
                .contains("11");
    }

    @Test
    void whatIsWrongOnAFormStandsBesideItsFieldWithWhatWasTyped() throws Exception {
        Map<String, String> form = new java.util.HashMap<>(everything());
        form.putAll(Map.of("code", "CARD 1", "capacityGb", "lots", "hiredUntil", "2030-01-01"));
        MvcTestResult wrong = post("media/new", Role.OFFICE, form);
        assertThat(wrong).hasStatus(422);
        Document page = document(wrong);
        assertThat(page.select(".error-summary a").eachAttr("href"))
                .containsExactlyInAnyOrder("#code", "#capacityGb", "#hiredUntil");
        assertThat(page.select("#capacityGb-error").text()).contains("“lots” is not a number above zero. Write digits");
        assertThat(page.select("input[name=capacityGb]").val()).isEqualTo("lots");
        assertThat(items.list(production.id)).isEmpty();
    }

    @Test
    void anItemIsRegisteredAndCorrectedThroughItsForms() throws Exception {
        MvcTestResult registered = post("media/new", Role.OFFICE, everything());
        MediaItem item = items.findByCode(production.id, "CARD-77").orElseThrow();
        assertThat(registered).hasRedirectedUrl(production.path("media/" + item.id()));
        Document form = page("media/" + item.id() + "/edit", Role.OFFICE);
        assertThat(form.select("input[name=capacityGb]").val()).isEqualTo("960");
        assertThat(form.select("input[name=cost]").val()).isEqualTo("649.90");
        Map<String, String> edited = new java.util.HashMap<>(everything());
        edited.putAll(Map.of(
                "model",
                "other model",
                "version",
                form.select("input[name=version]").val()));
        assertThat(post("media/" + item.id() + "/edit", Role.OFFICE, edited)).hasStatus(302);
        assertThat(items.get(production.id, item.id()).model()).isEqualTo("other model");
        MvcTestResult late = post("media/" + item.id() + "/edit", Role.OFFICE, edited);
        assertThat(late).hasStatus(422);
        assertThat(document(late).select(".error-summary").text()).contains("Somebody else changed CARD-77 meanwhile.");
    }

    @Test
    void withoutAPlaceNothingCanBeRegisteredAndThePageSaysSo() throws Exception {
        TestProduction bare = fixtures.production();
        jdbc.sql("delete from production_place where production_id = ?")
                .param(bare.id)
                .update();
        MvcTestResult page = mvc.get()
                .uri(bare.path("media/new"))
                .with(bare.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(document(page).select(".empty a").attr("href")).isEqualTo(bare.path("settings"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"<script>x()</script>", "{0}", "#{web.name}", "${1+1}", "'"})
    void whatPeopleTypeIsShownAsTyped(String text) throws Exception {
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        custody.move(production.as(Role.OFFICE), drive, set, text, text, 0);
        Document page = page("media/" + drive, Role.READER);
        assertThat(page.select("tbody td").eachText()).contains("Set, " + text, text);
        assertThat(page.select("#sentence").text()).endsWith("Holder: " + text + ".");
        assertThat(page("media?q=" + java.net.URLEncoder.encode(text, StandardCharsets.UTF_8), Role.READER)
                        .select("tbody tr"))
                .hasSize(1);
    }

    private Map<String, String> everything() {
        return Map.ofEntries(
                Map.entry("code", "CARD-77"),
                Map.entry("kind", "CARD"),
                Map.entry("model", "test card"),
                Map.entry("capacityGb", "960"),
                Map.entry("owner", "BOUGHT"),
                Map.entry("cost", "649.90"),
                Map.entry("place", "Set"),
                Map.entry("placeId", set.toString()),
                Map.entry("reason", "a reason"),
                Map.entry("typed", "DRIVE-1"),
                Map.entry("version", "0"));
    }

    private UUID productionWithDrive() {
        TestProduction other = fixtures.production();
        return other.item("DRIVE-1", "DRIVE", other.place("Set", false), null);
    }

    private void fillList() {
        UUID vault = production.place("Vault", true);
        production.item("CARD-1", "CARD", set, null);
        UUID held = production.item("CARD-2", "CARD", set, null);
        jdbc.sql("update inventory_item set card_state = 'HELD', model = 'filled 100% twice' where id = ?")
                .param(held)
                .update();
        production.item("DRIVE-1", "DRIVE", vault, null);
        custody.reportLost(production.as(Role.OFFICE), production.item("DRIVE-2", "DRIVE", set, null), "x");
        custody.retire(production.as(Role.OFFICE), production.item("DRIVE-3", "DRIVE", set, null), "x");
    }

    private void addDrives(int from, int to, UUID leg) {
        for (int i = from; i < to; i++) {
            production.item("DRIVE-" + i, "DRIVE", set, leg);
        }
    }

    private Document page(String page, Role role) throws UnsupportedEncodingException {
        MvcTestResult result = get(page, role);
        assertThat(result).hasStatus(200);
        return document(result);
    }

    private MvcTestResult get(String page, Role role) {
        String[] parts = production.path(page).split("\\?", 2);
        var request = mvc.get().uri(parts[0]);
        if (parts.length > 1) {
            for (String parameter : parts[1].split("&")) {
                String[] pair = parameter.split("=", 2);
                if (pair.length == 2) {
                    request.queryParam(pair[0], URLDecoder.decode(pair[1], StandardCharsets.UTF_8));
                }
            }
        }
        return request.with(production.signedInAs(role)).exchange();
    }

    private MvcTestResult post(String page, Role role, Map<String, String> form) {
        var request = mvc.post().uri(production.path(page));
        form.forEach(request::param);
        return request.with(production.signedInAs(role)).exchange();
    }

    private static Document document(MvcTestResult result) throws UnsupportedEncodingException {
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
