package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

/** One act on several items that were ticked: all of it or nothing, and first a look at what it will do. */
@PortalTest
class SeveralItemsTests {
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
    private UUID vault;
    private UUID first;
    private UUID second;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
        vault = production.place("Vault", true);
        first = production.item("DRIVE-1", "DRIVE", set, null);
        second = production.item("DRIVE-2", "DRIVE", set, null);
    }

    @Test
    void theListOffersItToThoseWhoMayAndSendsWhatIsTicked() throws Exception {
        Document list = page("media?kind=DRIVE&sort=-code", Role.WRANGLER);
        assertThat(list.select("input[name=items][form=ticked]").eachAttr("value"))
                .containsExactly("DRIVE-2", "DRIVE-1");
        assertThat(list.select("#ticked").attr("action")).isEqualTo(production.path("media/several"));
        assertThat(list.select("#ticked select[name=act] option").eachAttr("value"))
                .containsExactly("move", "quarantine", "release", "lost", "found");
        assertThat(page("media", Role.READER).select("input[name=items]")).isEmpty();
        assertThat(page("media", Role.POST).select("#ticked select")).isEmpty();
    }

    @Test
    void whatItWillDoToWhichIsShownFirstAndToWhichItCantAndWhy() throws Exception {
        custody.reportLost(production.as(Role.OFFICE), second, "gone");
        Document page = page("media/several?act=move&items=DRIVE-1&items=drive-2&items=NONE-1", Role.WRANGLER);
        assertThat(page.select("#sentence").text()).isEqualTo("One item will be moved; one can’t be.");
        assertThat(page.select("input[name=seen]").eachAttr("value")).containsExactly(first + ":0");
        assertThat(page.select("section[aria-labelledby=kept] tbody").text())
                .contains("DRIVE-2", "DRIVE-2 is lost now");
        assertThat(items.get(production.id, first).placeName()).isEqualTo("Set");
    }

    @Test
    void allMoveAtOnceEachWithItsOwnEntryAndTheListComesBackAsItWas() throws Exception {
        MvcTestResult moved = post(
                "move",
                Role.WRANGLER,
                seen(first, 0),
                seen(second, 0),
                "placeId=" + vault,
                "holder=guard",
                "kind=DRIVE",
                "sort=-code");
        assertThat(moved).hasStatus(302).hasRedirectedUrl(production.path("media?kind=DRIVE&sort=-code"));
        assertThat(List.of(first, second)).allSatisfy(id -> {
            assertThat(items.get(production.id, id).placeName()).isEqualTo("Vault");
            assertThat(custody.chain(production.id, id).get(0).holder()).isEqualTo("guard");
        });
        assertThat(acts("item.moved")).containsExactlyInAnyOrder("DRIVE-1", "DRIVE-2");
    }

    @Test
    void ifOneWasChangedMeanwhileNothingIsDoneToAnyAndItIsNamed() throws Exception {
        custody.quarantine(production.as(Role.OFFICE), second, "dropped");
        MvcTestResult stale = post("move", Role.WRANGLER, seen(first, 0), seen(second, 0), "placeId=" + vault);
        assertThat(stale).hasStatus(409);
        assertThat(document(stale).select("#sentence").text())
                .isEqualTo("Somebody else changed DRIVE-2 meanwhile. Nothing was done to any of them.");
        assertThat(items.get(production.id, first).placeName()).isEqualTo("Set");
        assertThat(acts("item.moved")).isEmpty();
    }

    @Test
    void sentAgainItIsRefusedSoThatNothingHappensTwice() {
        String[] form = {seen(first, 0), seen(second, 0), "reason=dropped"};
        assertThat(post("quarantine", Role.OFFICE, form)).hasStatus(302);
        assertThat(post("quarantine", Role.OFFICE, form)).hasStatus(409);
        assertThat(acts("item.quarantined")).hasSize(2);
    }

    @Test
    void anItemOfAnotherProductionIsUnknownAndNothingIsDone() throws Exception {
        TestProduction other = fixtures.production();
        UUID foreign = other.item("DRIVE-9", "DRIVE", other.place("Set", false), null);
        assertThat(post("quarantine", Role.OFFICE, seen(first, 0), seen(foreign, 0), "reason=dropped"))
                .hasStatus(404);
        assertThat(items.get(production.id, first).condition()).isEqualTo(Condition.GOOD);
        assertThat(items.get(other.id, foreign).condition()).isEqualTo(Condition.GOOD);
        assertThat(page("media/several?act=move&items=DRIVE-9", Role.OFFICE)
                        .select("#sentence")
                        .text())
                .startsWith("Nothing is ticked.");
        UUID foreignPlace = other.place("Vault", true);
        assertThat(post("move", Role.OFFICE, seen(first, 0), "placeId=" + foreignPlace))
                .hasStatus(404);
    }

    @Test
    void whatIsMissingStandsAtItsFieldAndWhatWasTypedAndTickedStays() throws Exception {
        MvcTestResult wrong = post("quarantine", Role.OFFICE, seen(first, 0), seen(second, 0), "reason=");
        assertThat(wrong).hasStatus(422);
        assertThat(document(wrong).select(".error-summary a").attr("href")).isEqualTo("#reason");
        assertThat(document(wrong).select("input[name=seen]")).hasSize(2);
        MvcTestResult nowhere = post("move", Role.OFFICE, seen(first, 0), "holder=guard");
        assertThat(nowhere).hasStatus(422);
        assertThat(document(nowhere).select("input[name=holder]").val()).isEqualTo("guard");
        assertThat(post("move", Role.OFFICE, "placeId=" + vault))
                .as("nothing ticked")
                .hasStatus(422);
    }

    @Test
    void allThatTheListShowsMayBeMeantButNotMoreThanThreeHundred() throws Exception {
        production.item("READER-1", "READER", set, null);
        assertThat(page("media/several?act=move&all=true&kind=DRIVE", Role.OFFICE)
                        .select("input[name=seen]"))
                .hasSize(2);
        for (int i = 0; i < 299; i++) {
            production.item("D-" + i, "DRIVE", set, null);
        }
        Document page = page("media/several?act=move&all=true&kind=DRIVE", Role.OFFICE);
        assertThat(page.select("input[name=seen]")).isEmpty();
        assertThat(page.select("#sentence").text()).startsWith("301 items are too many");
    }

    @Test
    void lookingTakesTheSameFewStatementsHoweverManyAreTicked() throws Exception {
        for (int i = 0; i < 30; i++) {
            production.item("D-" + i, "DRIVE", set, null);
        }
        int few = statements.during(() -> page("media/several?act=move&items=DRIVE-1", Role.OFFICE));
        assertThat(statements.during(() -> page("media/several?act=move&all=true", Role.OFFICE)))
                .isLessThanOrEqualTo(few)
                .isLessThanOrEqualTo(12);
    }

    @Test
    void nonsenseIsUnknownAndWhatIsForGoodIsNotDoneToSeveral() {
        assertThat(get("media/several?act=retire&items=DRIVE-1", Role.OFFICE)).hasStatus(404);
        assertThat(get("media/several?act=&items=DRIVE-1", Role.OFFICE)).hasStatus(404);
        assertThat(get("media/several?act=move&items=DRIVE-1", Role.POST)).hasStatus(403);
        assertThat(post("move", Role.OFFICE, "seen=nonsense", "placeId=" + vault))
                .hasStatus(404);
        assertThat(post("move", Role.OFFICE, "seen=------------------------------------:0", "placeId=" + vault))
                .hasStatus(404);
        assertThat(post("retire", Role.OFFICE, seen(first, 0), "reason=old")).hasStatus(404);
    }

    private List<String> acts(String action) {
        return jdbc.sql("select subject_code from audit_act where production_id = ? and action = ?")
                .params(production.id, action)
                .query(String.class)
                .list();
    }

    private static String seen(UUID id, int version) {
        return "seen=" + id + ":" + version;
    }

    private MvcTestResult post(String act, Role role, String... fields) {
        MockMvcTester.MockMvcRequestBuilder request = mvc.post().uri(production.path("media/several/" + act));
        for (String field : fields) {
            String[] parts = field.split("=", 2);
            request.param(parts[0], parts[1]);
        }
        return request.with(production.signedInAs(role)).exchange();
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get()
                .uri(URI.create(production.path(path)))
                .with(production.signedInAs(role))
                .exchange();
    }

    private Document page(String path, Role role) throws Exception {
        MvcTestResult result = get(path, role);
        assertThat(result).as(path).hasStatusOk();
        return document(result);
    }

    private static Document document(MvcTestResult result) throws Exception {
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
