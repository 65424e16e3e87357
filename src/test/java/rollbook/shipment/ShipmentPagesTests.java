package rollbook.shipment;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.verification.ManifestIntake;

/** The pages of shipments, in a browser without scripts. */
@PortalTest
class ShipmentPagesTests {
    private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");

    @Autowired
    Fixtures fixtures;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    ManifestIntake intake;

    @Autowired
    MediaItems items;

    @Autowired
    Jobs jobs;

    @Autowired
    Shipments shipments;

    @Autowired
    Packing packing;

    @Autowired
    Sending sending;

    @Autowired
    Arrivals arrivals;

    @Autowired
    Custody custody;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    private ShipmentScene scene;

    @BeforeEach
    void makeScene() {
        scene = new ShipmentScene(fixtures, rolls, offloads, intake, items, jobs);
    }

    @Test
    void aShipmentIsPackedSentAndConfirmed() throws IOException {
        Document list = see("shipments", Role.READER);
        assertThat(sentence(list)).startsWith("Nothing is on its way.");
        assertThat(list.select("a[href$=new]")).isEmpty();

        MvcTestResult packed = post("shipments/new", Role.WRANGLER, packing("SHUTTLE-1 tape-1", "courier"));
        String page = redirect(packed);
        Document one = see(page, Role.WRANGLER);
        assertThat(one.select("h1").text()).isEqualTo("Shipment 1");
        assertThat(sentence(one)).isEqualTo("2 items are packed for Post house. Nothing has left yet.");

        MvcTestResult sent = post(page + "/send", Role.WRANGLER, Map.of("expectedBy", tomorrowHere(), "version", "0"));
        assertThat(redirect(sent)).isEqualTo(page);
        assertThat(sentence(see(page, Role.READER))).startsWith("2 items are on the way to Post house with courier.");
        assertThat(see("media/" + scene.shuttle, Role.READER).text())
                .contains("SHUTTLE-1 is on its way to Post house in shipment 1.");
        assertThat(see("media/" + scene.shuttle, Role.WRANGLER).select("a[href$=move]"))
                .isEmpty();

        redirect(post(page + "/receive", Role.POST, Map.of("all", "true")));
        assertThat(sentence(see(page, Role.READER))).isEqualTo("All 2 items have arrived at Post house.");
        assertThat(redirect(mvc.get()
                        .uri(scene.production.path("find?code=Shipment 1"))
                        .with(scene.production.signedInAs(Role.READER))
                        .exchange()))
                .isEqualTo(page);
    }

    @Test
    void whatIsWrongIsToldAtItsFieldAndWhatWasTypedStays() throws IOException {
        Map<String, String> form = packing("SHUTTLE-1 NOTHING-7", "courier");
        form.put("weight", "heavy");
        form.put("toPlaceId", "");
        form.put("expectedBy", "2020-01-01T10:00");
        MvcTestResult refused = post("shipments/new", Role.WRANGLER, form);
        assertThat(refused).hasStatus(422);
        Document page = parsed(refused);
        assertThat(page.select("#items-error").text()).contains("Nothing here has the code NOTHING-7");
        assertThat(page.select("#weight-error").text()).contains("Write kilograms such as 12.4");
        assertThat(page.select("#toPlaceId-error").text()).contains("Choose a place.");
        assertThat(page.select("#expectedBy-error").text()).contains("That time has passed.");
        assertThat(page.select("#weight").val()).isEqualTo("heavy");
        assertThat(page.select("#items").val()).isEqualTo("SHUTTLE-1 NOTHING-7");
        assertThat(page.select("#carrier").val()).isEqualTo("courier");
        assertThat(shipments.ofProduction(scene.production.id)).isEmpty();
    }

    @Test
    void whatIsElsewhereLostOrInAnotherBoxIsToldAtTheItems() throws IOException {
        custody.reportLost(scene.wrangler, scene.tape, "gone");
        assertThat(itemsError(packing("TAPE-1", ""))).contains("TAPE-1 is lost and can’t be in it.");
        jdbc.sql("update inventory_item set place_id = ? where id = ?")
                .params(scene.postHouse, scene.array)
                .update();
        assertThat(itemsError(packing("ARRAY-1", ""))).contains("ARRAY-1 is at Post house.");
        packing.pack(scene.wrangler, scene.toPost(""), scene.items(scene.shuttle));
        assertThat(itemsError(packing("SHUTTLE-1", ""))).contains("SHUTTLE-1 is in shipment 1.");
        assertThat(itemsError(packing("", ""))).contains("Name at least one item.");
        assertThat(itemsError(packing("CARD-9 to CARD-1", ""))).contains("can’t be understood");
    }

    @Test
    void sendingAsksWhenItIsExpectedAndWarnsOfWhatTravelsAlone() throws IOException {
        scene.proven("A001", scene.shuttle);
        UUID id = packing.pack(scene.wrangler, scene.toPost("courier"), scene.items(scene.shuttle));
        Document page = see("shipments/" + id + "/send", Role.WRANGLER);
        assertThat(page.select(".caution li").eachText())
                .containsExactly(
                        "SHUTTLE-1 holds the only proven copy of A001. The card still holds it: don’t erase CARD-A001 before this has arrived.");
        MvcTestResult refused =
                post("shipments/" + id + "/send", Role.WRANGLER, Map.of("expectedBy", "", "version", "0"));
        assertThat(refused).hasStatus(422);
        assertThat(parsed(refused).select("#expectedBy-error").text()).contains("Write date and time.");
        MvcTestResult stale =
                post("shipments/" + id + "/send", Role.WRANGLER, Map.of("expectedBy", tomorrowHere(), "version", "7"));
        assertThat(stale).hasStatus(409);
        assertThat(shipments.get(scene.production.id, id).isPacking()).isTrue();
    }

    @Test
    void itemsAreHandedOverFromTheListWithoutACarrier() throws IOException {
        Document media = see("media", Role.WRANGLER);
        assertThat(media.select("input[name=items][form=ticked]").eachAttr("value"))
                .contains("SHUTTLE-1");
        assertThat(see("media", Role.READER).select("input[name=items]")).isEmpty();
        Document form = see("shipments/hand-over?items=SHUTTLE-1&items=TAPE-1", Role.WRANGLER);
        assertThat(form.select("#items").val().lines()).containsExactly("SHUTTLE-1", "TAPE-1");
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("items", "SHUTTLE-1\nTAPE-1");
        fields.put("toPlaceId", scene.set.toString());
        fields.put("receiver", "second unit");
        String page = redirect(post("shipments/hand-over", Role.WRANGLER, fields));
        assertThat(sentence(see(page, Role.POST))).startsWith("2 items are on the way to Set with WRANGLER.");
        fields.put("toPlaceId", "");
        assertThat(post("shipments/hand-over", Role.WRANGLER, fields)).hasStatus(422);
    }

    @Test
    void onlyWhatIsLookedAtIsConfirmedAndNothingAtAllIsAskedAgain() throws IOException {
        UUID id = sent(scene.shuttle, scene.tape);
        MvcTestResult nothing =
                post("shipments/" + id + "/receive", Role.POST, Map.of("note-" + scene.tape, "wet box"));
        assertThat(nothing).hasStatus(422);
        Document asked = parsed(nothing);
        assertThat(asked.select("#error-summary").text()).contains("Say of at least one item what you found.");
        assertThat(asked.select("#note-" + scene.tape).val()).isEqualTo("wet box");
        redirect(post(
                "shipments/" + id + "/receive",
                Role.POST,
                Map.of("outcome-" + scene.tape, "SEAL_DAMAGED", "note-" + scene.tape, "wet box")));
        assertThat(scene.item(scene.tape).condition()).isEqualTo(Condition.QUARANTINED);
        assertThat(scene.item(scene.shuttle).placeName()).isEqualTo("Set");
        assertThat(sentence(see("shipments/" + id, Role.READER)))
                .isEqualTo("1 item has arrived at Post house, 1 has not.");
    }

    @Test
    void aLateShipmentIsToldOnListAndPageUntilTheCarrierNamesANewTime() throws IOException {
        UUID id = sent(scene.shuttle);
        jdbc.sql("update shipment_shipment set expected_by = now() - interval '1 hour' where id = ?")
                .param(id)
                .update();
        assertThat(sentence(see("shipments", Role.READER))).startsWith("Shipment 1 should have arrived by now.");
        assertThat(sentence(see("shipments/" + id, Role.READER)))
                .contains("nobody has confirmed that. Ask first who brings it: courier.");
        Map<String, String> form = new LinkedHashMap<>();
        form.put("expectedBy", "2020-01-01T10:00");
        form.put("note", "storm");
        form.put("version", "1");
        MvcTestResult refused = post("shipments/" + id + "/expected", Role.OFFICE, form);
        assertThat(refused).hasStatus(422);
        assertThat(parsed(refused).select("#note").val()).isEqualTo("storm");
        form.put("expectedBy", tomorrowHere());
        redirect(post("shipments/" + id + "/expected", Role.OFFICE, form));
        assertThat(sentence(see("shipments", Role.READER))).startsWith("1 shipment is on its way.");
        assertThat(see("shipments/" + id, Role.READER).text())
                .contains("expected anew")
                .contains("storm");
    }

    @Test
    void aLossAsksFirstWhatIsLeft() throws IOException {
        scene.proven("A001", scene.shuttle);
        scene.proven("A002", scene.shuttle, scene.array);
        UUID id = sent(scene.shuttle);
        Document page = see("shipments/" + id + "/lost", Role.OFFICE);
        assertThat(sentence(page))
                .isEqualTo("Without it nothing is proven of A001. Don’t erase the card that still holds it.");
        assertThat(page.select("tbody tr td:last-child").eachText())
                .containsExactly(
                        "Nothing else is proven of A001: don’t erase CARD-A001, which still holds it.",
                        "A002 is still proven on ARRAY-1 (Set) alone.");
        Map<String, String> form = new LinkedHashMap<>();
        form.put("items", scene.shuttle.toString());
        form.put("reason", "");
        form.put("typed", "2");
        form.put("version", "1");
        MvcTestResult refused = post("shipments/" + id + "/lost", Role.OFFICE, form);
        assertThat(refused).hasStatus(422);
        assertThat(parsed(refused).select("#typed-error").text()).contains("Type 1, the number of this shipment.");
        assertThat(parsed(refused).select("#reason-error").text()).contains("Write how you know.");
        form.put("reason", "no trace");
        form.put("typed", "1");
        redirect(post("shipments/" + id + "/lost", Role.OFFICE, form));
        Document lost = see("shipments/" + id, Role.WRANGLER);
        assertThat(sentence(lost)).isEqualTo("The item is lost on the way to Post house.");
        assertThat(lost.text())
                .contains("Nothing else is proven of A001: don’t erase CARD-A001, which still holds it.");
        assertThat(lost.select("a[href$=/found]")).hasSize(1);
    }

    @Test
    void whoWasGivenTheLinkConfirmsOnceWithANameAndWithoutAnAccount() throws IOException {
        UUID id = sent(scene.shuttle, scene.tape);
        String address = link(id);
        Document page = open(address);
        assertThat(page.select("h1").text()).isEqualTo("Arrival of shipment 1");
        assertThat(page.text())
                .contains("SHUTTLE-1", "TAPE-1", "S-1, S-2")
                .doesNotContain("Test " + scene.production.code)
                .doesNotContain("Post house");

        MvcTestResult refused = answer(address, Map.of("outcome-" + scene.shuttle, "ARRIVED"));
        assertThat(refused).hasStatus(422);
        assertThat(parsed(refused).select("#error-summary li").eachText())
                .containsExactly("Write your name.", "Say of each item what you found.");
        assertThat(parsed(refused).select("input[checked]").attr("value")).isEqualTo("ARRIVED");
        assertThat(scene.item(scene.shuttle).placeName()).isEqualTo("Set");

        Map<String, String> found = Map.of(
                "name", "Night porter", "outcome-" + scene.shuttle, "ARRIVED", "outcome-" + scene.tape, "MISSING");
        assertThat(answer(address, found)).hasStatusOk();
        assertThat(scene.item(scene.shuttle).placeName()).isEqualTo("Post house");
        assertThat(scene.item(scene.shuttle).holder()).isEqualTo("Night porter");
        assertThat(custody.chain(scene.production.id, scene.shuttle).get(0).personName())
                .isEqualTo("Night porter");
        assertThat(see("media/" + scene.shuttle, Role.READER).text()).contains("Night porter, by a link");
        assertThat(see("shipments/" + id, Role.READER).text()).contains("Night porter, by a link");

        // The second press changes nothing and is told the same.
        int links = custody.chain(scene.production.id, scene.shuttle).size();
        MvcTestResult again = answer(
                address,
                Map.of("name", "Somebody", "outcome-" + scene.shuttle, "MISSING", "outcome-" + scene.tape, "ARRIVED"));
        assertThat(again).hasStatusOk();
        assertThat(parsed(again).text()).contains("Night porter has confirmed what was found");
        assertThat(custody.chain(scene.production.id, scene.shuttle)).hasSize(links);
        assertThat(shipments.get(scene.production.id, id).missing()).isEqualTo(1);
        assertThat(open(address).text()).contains("Night porter has confirmed").doesNotContain("SHUTTLE-1");
    }

    @Test
    void aLinkThatIsWrongRevokedReplacedExpiredOrTakenBackLeadsNowhere() throws IOException {
        UUID id = sent(scene.shuttle);
        assertThat(mvc.get().uri("/receipt/nonsense")).hasStatus(404);
        assertThat(answer("/receipt/nonsense", Map.of())).hasStatus(404);
        String first = link(id);
        String second = link(id);
        assertThat(mvc.get().uri(first)).hasStatus(404);
        assertThat(mvc.get().uri(second)).hasStatusOk();
        redirect(post("shipments/" + id + "/link/revoke", Role.WRANGLER, Map.of()));
        assertThat(mvc.get().uri(second)).hasStatus(404);
        assertThat(answer(second, Map.of("name", "x", "outcome-" + scene.shuttle, "ARRIVED")))
                .hasStatus(404);
        String third = link(id);
        jdbc.sql("update shipment_link set expires_at = now() where shipment_id = ?")
                .param(id)
                .update();
        assertThat(mvc.get().uri(third)).hasStatus(404);
        String fourth = link(id);
        sending.takeBack(
                scene.wrangler, id, shipments.get(scene.production.id, id).version());
        assertThat(mvc.get().uri(fourth)).hasStatus(404);
        assertThat(jdbc.sql("select count(*) from shipment_link where encode(secret_sha256, 'escape') like ?")
                        .param("%" + fourth.substring("/receipt/".length()) + "%")
                        .query(Long.class)
                        .single())
                .as("the secret itself is kept nowhere")
                .isZero();
    }

    @Test
    void theListTellsWhatIsOpenFromWhatHasEnded() throws IOException {
        sent(scene.shuttle);
        arrivals.confirm(scene.post, sent(scene.tape), List.of(new Arrival(scene.tape, Arrival.Outcome.ARRIVED, "")));
        Document list = see("shipments", Role.POST);
        assertThat(list.select("section h2").eachText()).containsExactly("Being packed and on their way", "Ended");
        assertThat(list.select("tbody tr")).hasSize(2);
    }

    private String itemsError(Map<String, String> form) throws IOException {
        MvcTestResult refused = post("shipments/new", Role.WRANGLER, form);
        assertThat(refused).hasStatus(422);
        return parsed(refused).select("#items-error").text();
    }

    private Map<String, String> packing(String codes, String carrier) {
        Map<String, String> form = new LinkedHashMap<>();
        form.put("items", codes);
        form.put("fromPlaceId", scene.set.toString());
        form.put("toPlaceId", scene.postHouse.toString());
        form.put("receiver", "");
        form.put("carrier", carrier);
        form.put("expectedBy", "");
        form.put("seals", "S-1\nS-2");
        form.put("weight", "2,3");
        form.put("note", "");
        form.put("version", "0");
        return form;
    }

    private static String tomorrowHere() {
        return LocalDateTime.ofInstant(Instant.now().plus(1, ChronoUnit.DAYS), LISBON)
                .truncatedTo(ChronoUnit.MINUTES)
                .toString();
    }

    private UUID sent(UUID... media) {
        UUID id = packing.pack(scene.wrangler, scene.toPost("courier"), scene.items(media));
        sending.send(scene.wrangler, id, ShipmentScene.tomorrow(), 0);
        return id;
    }

    /** The path of a new link. */
    private String link(UUID id) throws IOException {
        MvcTestResult made = post("shipments/" + id + "/link", Role.WRANGLER, Map.of());
        assertThat(made).hasStatusOk();
        Element address = parsed(made).selectFirst("#address");
        assertThat(address).isNotNull();
        assertThat(parsed(made).select("#body").text()).contains(address.text());
        return address.text().substring("http://localhost".length());
    }

    private Document open(String address) throws IOException {
        MvcTestResult result = mvc.get().uri(address).exchange();
        assertThat(result).hasStatusOk();
        assertThat(result.getResponse().getHeader("Cache-Control")).isEqualTo("no-store");
        return parsed(result);
    }

    private MvcTestResult answer(String address, Map<String, String> fields) {
        MockMvcTester.MockMvcRequestBuilder request = mvc.post().uri(address);
        fields.forEach(request::param);
        return request.with(SecurityMockMvcRequestPostProcessors.csrf()).exchange();
    }

    private MvcTestResult post(String page, Role role, Map<String, String> fields) {
        MockMvcTester.MockMvcRequestBuilder request = mvc.post().uri(scene.production.path(page));
        fields.forEach(request::param);
        return request.with(scene.production.signedInAs(role)).exchange();
    }

    /** Where it leads, below the production. */
    private String redirect(MvcTestResult result) {
        assertThat(result).hasStatus3xxRedirection();
        String to = result.getResponse().getRedirectedUrl();
        assertThat(to).isNotNull();
        return to.substring(scene.production.path("").length());
    }

    private Document see(String page, Role role) throws IOException {
        MvcTestResult result = mvc.get()
                .uri(scene.production.path(page))
                .with(scene.production.signedInAs(role))
                .exchange();
        assertThat(result).as(page).hasStatusOk();
        return parsed(result);
    }

    private static Document parsed(MvcTestResult result) throws IOException {
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    private static String sentence(Document page) {
        Element sentence = page.selectFirst("#sentence");
        return sentence == null ? "" : sentence.text();
    }
}
