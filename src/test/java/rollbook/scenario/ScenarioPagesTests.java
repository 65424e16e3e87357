package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.OrderLine;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.web.Refusal;

@PortalTest
class ScenarioPagesTests {
    private static final Map<String, String> TWO_MORE_CARDS =
            Map.of("cards.test-model-1000000", "6", "card-week", "140", "weeks", "2");

    @Autowired
    Orders orders;

    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ScenarioDrafts drafts;

    @Autowired
    Scenarios scenarios;

    @Autowired
    OrderProposals proposals;

    private TurnaroundScene scene;
    private Membership wrangler;

    @BeforeEach
    void makeScene() {
        scene = new TurnaroundScene(fixtures);
        wrangler = scene.production.as(Role.WRANGLER);
    }

    private MvcTestResult post(Role role, String path, String... params) {
        var request = mvc.post().uri(scene.path(path)).with(scene.production.signedInAs(role));
        for (int i = 0; i < params.length; i += 2) {
            request = request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    private Document get(Role role, String path) throws Exception {
        MvcTestResult result = mvc.get()
                .uri(scene.path(path))
                .with(scene.production.signedInAs(role))
                .exchange();
        assertThat(result).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    private List<Scenario> all() {
        return scenarios.list(scene.production.id);
    }

    private List<String> onRecord() {
        return jdbc.sql(
                        "select action from audit_act where production_id = ? and action ~ '^(scenario|proposal)' order by id")
                .param(scene.production.id)
                .query(String.class)
                .list();
    }

    @Test
    void aScenarioIsSavedAndItsFiguresAreRemembered() throws Exception {
        assertThat(post(Role.POST, "/scenarios", "scenario", " Long takes ", "take", "9,5"))
                .hasStatus(HttpStatus.FOUND);
        Scenario saved = all().get(0);
        assertThat(saved.name()).isEqualTo("Long takes");
        assertThat(saved.inputs().values()).containsEntry("take", "9.5");
        assertThat(get(Role.READER, "/scenarios/" + saved.id()).select("h1").text())
                .isEqualTo("Long takes");
        Document next = get(Role.READER, "");
        assertThat(next.select("input[name=take]").val()).isEqualTo("9.5");
        assertThat(next.select("main").text()).contains("As in “Long takes”, saved last.");
        assertThat(onRecord()).containsExactly("scenario.saved");
    }

    @Test
    void aScenarioSaysTheSameThoughTheProductionChanges() throws Exception {
        UUID id = scene.save(drafts, "As it was", Map.of());
        String before = get(Role.READER, "/scenarios/" + id).select("#sentence").text();
        jdbc.sql("update inventory_item set condition = 'LOST' where production_id = ? and kind in ('CARD', 'READER')")
                .param(scene.production.id)
                .update();
        assertThat(get(Role.READER, "/scenarios/" + id).select("#sentence").text())
                .isEqualTo(before);
    }

    @Test
    void aNameIsNeededAndHeldOnce() throws Exception {
        scene.save(drafts, "Twice", Map.of());
        MvcTestResult taken = post(Role.WRANGLER, "/scenarios", "scenario", "twice", "take", "4");
        assertThat(taken).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = Jsoup.parse(taken.getResponse().getContentAsString());
        assertThat(page.select("#scenario-name-error").text()).contains("Another scenario has this name.");
        assertThat(page.select("#scenario-name").val()).isEqualTo("twice");
        assertThat(page.select("input[name=take][type=text]").val()).isEqualTo("4");
        assertThat(post(Role.WRANGLER, "/scenarios", "scenario", "  ")).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(post(Role.WRANGLER, "/scenarios", "scenario", "Wrong", "take", "x"))
                .hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(all()).hasSize(1);
    }

    @Test
    void ofTwoWhoChangeItAtOnceOneIsRefused() {
        UUID id = scene.save(drafts, "Shared", Map.of());
        assertThat(post(Role.WRANGLER, "/scenarios/" + id, "version", "0", "scenario", "Shared", "take", "4"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(post(Role.OFFICE, "/scenarios/" + id, "version", "0", "scenario", "Mine", "take", "6"))
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(post(Role.OFFICE, "/scenarios/" + id + "/archive", "version", "0"))
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(all().get(0).inputs().values()).containsEntry("take", "4");
        assertThat(onRecord()).containsExactly("scenario.saved", "scenario.changed");
    }

    @Test
    void itIsCopiedArchivedAndBroughtBack() throws Exception {
        UUID id = scene.save(drafts, "First", Map.of("take", "8"));
        assertThat(post(Role.OFFICE, "/scenarios/" + id + "/copy")).hasStatus(HttpStatus.FOUND);
        assertThat(all()).extracting(Scenario::name).containsExactlyInAnyOrder("First", "First (2)");

        assertThat(post(Role.OFFICE, "/scenarios/" + id + "/archive", "version", "0"))
                .hasStatus(HttpStatus.FOUND);
        Document list = get(Role.READER, "/scenarios");
        assertThat(list.select("tbody th").eachText()).containsExactly("First (2)");
        assertThat(list.select("ul.lines li").eachText()).containsExactly("First");
        Document archived = get(Role.OFFICE, "/scenarios/" + id);
        assertThat(archived.select("button:contains(Save)")).isEmpty();
        assertThat(post(Role.OFFICE, "/scenarios/" + id, "version", "1", "scenario", "First"))
                .as("an archived one isn't changed")
                .hasStatus(HttpStatus.CONFLICT);

        assertThat(post(Role.OFFICE, "/scenarios/" + id + "/restore", "version", "1"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(scenarios.get(scene.production.id, id).archived()).isFalse();
        assertThat(onRecord())
                .containsExactly("scenario.saved", "scenario.copied", "scenario.archived", "scenario.restored");
    }

    @Test
    void itCannotComeBackWhileAnotherHasItsName() {
        UUID id = scene.save(drafts, "Name", Map.of());
        scenarios.archive(wrangler, id, 0);
        scene.save(drafts, "NAME", Map.of());
        assertThatThrownBy(() -> scenarios.restore(wrangler, id, 1)).isInstanceOf(Refusal.class);
    }

    @Test
    void sideBySideTheyShowWhatDiffersFirst() throws Exception {
        UUID one = scene.save(drafts, "One", Map.of());
        UUID two = scene.save(drafts, "Two", TWO_MORE_CARDS);
        Document page = get(Role.READER, "/compare?with=" + one + "&with=" + two);
        assertThat(page.select("#sentence").text()).startsWith("3 figures differ");
        assertThat(page.select("table").get(0).select("tbody th").eachText())
                .containsExactly("Number of: test model", "A further card, EUR a week", "Hired for, weeks");
        assertThat(page.select("table").get(1).select("tbody tr").first().text())
                .contains("With 4 cards", "With 6 cards");
        assertThat(get(Role.READER, "/compare?with=" + one).select("#sentence").text())
                .isEqualTo("Mark 2 to 4 scenarios to compare them.");
        TurnaroundScene other = new TurnaroundScene(fixtures);
        UUID foreign = other.save(drafts, "Foreign", Map.of());
        assertThat(mvc.get()
                        .uri(scene.path("/compare?with=" + one + "&with=" + foreign))
                        .with(scene.production.signedInAs(Role.ADMINISTRATOR)))
                .hasStatus(HttpStatus.NOT_FOUND);
    }

    @Test
    void whatAScenarioAddsIsProposedOnceAndTakenUpByTheOffice() throws Exception {
        UUID id = scene.save(drafts, "More cards", TWO_MORE_CARDS);
        assertThat(get(Role.WRANGLER, "/scenarios/" + id).select("main").text())
                .contains("2 × test model, about €560.00");
        assertThat(post(Role.WRANGLER, "/scenarios/" + id + "/proposal")).hasStatus(HttpStatus.FOUND);
        assertThat(post(Role.OFFICE, "/scenarios/" + id + "/proposal")).hasStatus(HttpStatus.CONFLICT);

        OrderProposal proposal = proposals.list(scene.production.id).get(0);
        assertThat(proposal.costMinorUnits()).isEqualTo(56_000L);
        assertThat(proposal.neededBy()).isEqualTo("2031-03-03");
        Document today = Jsoup.parse(mvc.get()
                .uri(scene.production.path("today"))
                .with(scene.production.signedInAs(Role.OFFICE))
                .exchange()
                .getResponse()
                .getContentAsString());
        assertThat(today.select("main").text())
                .contains("One proposal waits for an answer.")
                .contains("What “More cards” adds, about €560.00, needed by Mon 3 Mar 2031");

        assertThat(post(Role.WRANGLER, "/proposals/" + proposal.id() + "/take-up", "version", "0"))
                .as("orders are the office's")
                .hasStatus(HttpStatus.FORBIDDEN);
        assertThat(post(Role.OFFICE, "/proposals/" + proposal.id() + "/take-up", "version", "0"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(orders.list(scene.production.id)).singleElement().satisfies(order -> {
            assertThat(order.state()).isEqualTo(PurchaseOrder.State.PROPOSED);
            assertThat(order.sourceName()).isEqualTo("More cards");
            assertThat(order.neededBy()).isEqualTo("2031-03-03");
            assertThat(order.lines())
                    .extracting(OrderLine::model, OrderLine::items)
                    .containsExactly(tuple("test model", 2));
            assertThat(order.totalMinorUnits()).isEqualTo(56_000L);
            assertThat(order.isComplete()).as("nobody offers it yet").isFalse();
        });
        assertThat(post(Role.WRANGLER, "/proposals/" + proposal.id() + "/withdraw", "version", "0", "reason", "late"))
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(proposals.list(scene.production.id))
                .extracting(OrderProposal::state)
                .containsExactly(OrderProposal.State.TAKEN_UP);
        assertThat(onRecord()).containsExactly("scenario.saved", "proposal.made", "proposal.taken-up");
    }

    @Test
    void aProposalIsWithdrawnWithAReason() throws Exception {
        UUID id = scene.save(drafts, "More cards", TWO_MORE_CARDS);
        UUID proposal = proposals.propose(wrangler, id);
        MvcTestResult without = post(Role.WRANGLER, "/proposals/" + proposal + "/withdraw", "version", "0");
        assertThat(without).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Jsoup.parse(without.getResponse().getContentAsString()).select("details[open] .error"))
                .hasSize(1);
        assertThat(post(Role.WRANGLER, "/proposals/" + proposal + "/withdraw", "version", "0", "reason", "Lent by B"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(get(Role.READER, "/proposals").select("main").text()).contains("withdrawn", "Lent by B");
        assertThat(post(Role.WRANGLER, "/scenarios/" + id + "/proposal"))
                .as("then it may be proposed again")
                .hasStatus(HttpStatus.FOUND);
    }

    @Test
    void changesAreSavedBeforeTheyAreProposed() throws Exception {
        UUID id = scene.save(drafts, "More cards", TWO_MORE_CARDS);
        String proposal = "form[action$=/proposal]";
        assertThat(get(Role.WRANGLER, "/scenarios/" + id).select(proposal)).hasSize(1);
        Document changed = get(Role.WRANGLER, "/scenarios/" + id + "?take=9");
        assertThat(changed.select(proposal)).isEmpty();
        assertThat(changed.select("main").text()).contains("Save the changes to propose them.");
    }

    @Test
    void nothingIsProposedWhereNothingIsAdded() {
        UUID id = scene.save(drafts, "As it is", Map.of());
        assertThat(post(Role.WRANGLER, "/scenarios/" + id + "/proposal")).hasStatus(HttpStatus.CONFLICT);
    }
}
