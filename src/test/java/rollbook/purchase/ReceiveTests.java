package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.io.UnsupportedEncodingException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.hire.HiredItemCost;
import rollbook.hire.Hires;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.inventory.Ownership;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.Refusal;

/** What came of an order: entered, refused, corrected. */
@PortalTest
class ReceiveTests {
    @Autowired
    Hires hires;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ApplicationContext portal;

    @Autowired
    Orders orders;

    @Autowired
    Receipts receipts;

    @Autowired
    MediaItems items;

    @Autowired
    Custody custody;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership office;
    private UUID set;
    private UUID leg;
    private OrderDesk desk;
    private PurchaseOrder order;

    @BeforeEach
    void placeAnOrder() {
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        set = production.place("The set", false);
        leg = production.leg("Shuttle", set, true);
        desk = new OrderDesk(portal, production);
        order = desk.placed(2, desk.line(desk.drive(), 4, null, leg), desk.line(desk.reader(), 2, 3, null));
    }

    @Test
    void scannedSerialNumbersBecomeItemsWithAllThatTheOrderKnowsOfThem() throws Exception {
        production.item("SHUTTLE-07", "DRIVE", set, leg);
        MvcTestResult result = receive(form().with("lines[0].serials", "SN-1\r\nSN-2\r\n")
                .with("lines[0].without", "1")
                .with("lines[1].serials", "r 1")
                .with("note", "slip 88"));
        assertThat(result).hasStatus(302);
        assertThat(items.list(production.id, MediaKind.DRIVE))
                .extracting(
                        MediaItem::code,
                        MediaItem::serial,
                        MediaItem::model,
                        MediaItem::capacityBytes,
                        MediaItem::writeBytesPerSecond,
                        MediaItem::ownership,
                        MediaItem::supplier,
                        MediaItem::costMinorUnits,
                        MediaItem::legId,
                        MediaItem::placeId)
                .contains(
                        tuple(
                                "SHUTTLE-08",
                                "SN-1",
                                "test drive",
                                4_000_000_000_000L,
                                480_000_000L,
                                Ownership.BOUGHT,
                                "Test supplier",
                                19_900L,
                                leg,
                                set),
                        tuple(
                                "SHUTTLE-10",
                                "",
                                "test drive",
                                4_000_000_000_000L,
                                480_000_000L,
                                Ownership.BOUGHT,
                                "Test supplier",
                                19_900L,
                                leg,
                                set))
                .hasSize(4);
        MediaItem reader = items.findBySerial(production.id, "R 1").orElseThrow();
        assertThat(reader.code()).isEqualTo("READER-001");
        assertThat(reader.ownership()).isEqualTo(Ownership.HIRED);
        assertThat(reader.costMinorUnits()).isEqualTo(6_000L);
        assertThat(reader.hiredUntil()).isEqualTo(desk.today.minusDays(1).plusDays(21));
        assertThat(hires.costs(production.id, production.as(Role.OFFICE).zone(), desk.today))
                .as("its hire began when it came, not when somebody wrote that down")
                .extracting(HiredItemCost::startedOn)
                .containsExactly(desk.today.minusDays(1));
        PurchaseOrder now = now();
        assertThat(now.state()).isEqualTo(State.PART_ARRIVED);
        assertThat(now.lines()).extracting(OrderLine::left).containsExactly(1, 1);
        Document page = get(String.valueOf(result.getResponse().getRedirectedUrl()));
        assertThat(page.select("#sentence").text()).contains("4 items came in order");
        assertThat(page.select("a.primary").attr("href"))
                .endsWith("media/labels?items=SHUTTLE-08%20to%20SHUTTLE-10%2C%20READER-001");
        assertThat(page.text()).contains("slip 88");
        assertThat(acts("order.received")).containsExactly("3 × test drive; 1 × test reader");
    }

    @Test
    void oneWrongSerialNumberKeepsEverythingOutAndAllThatWasTypedStays() throws Exception {
        jdbc.sql("update inventory_item set serial = 'SN-9' where id = ?")
                .param(production.item("OLD-1", "READER", set, null))
                .update();
        MvcTestResult result = receive(form().with("lines[0].serials", "SN-1\nsn-9\nSN-2\nSN-1")
                .with("lines[1].serials", "sn-2")
                .with("lines[1].damaged", "1")
                .with("lines[1].damagedWords", "bent pins")
                .with("note", "slip 88"));
        assertThat(result).hasStatus(422);
        Document page = page(result);
        assertThat(page.getElementById("lines[0].serials-error").text())
                .contains("Line 2: sn-9 is in the book already, as OLD-1.", "Line 4: SN-1 is on line 1 too.");
        assertThat(page.getElementById("lines[1].serials-error").text())
                .contains("Line 1: sn-2 is on this form already, further up.");
        assertThat(page.getElementById("lines[0].serials").wholeText()).isEqualTo("SN-1\nsn-9\nSN-2\nSN-1");
        assertThat(page.getElementById("lines[1].damagedWords").val()).isEqualTo("bent pins");
        assertThat(page.select("details[open]")).hasSize(1);
        assertThat(page.getElementById("note").val()).isEqualTo("slip 88");
        assertThat(items.list(production.id)).hasSize(1);
        assertThat(now()).isEqualTo(order);
    }

    @Test
    void theSameFormSentTwiceChangesNothing() {
        Form form = form().with("lines[0].serials", "SN-1");
        MvcTestResult first = receive(form);
        MvcTestResult second = receive(form);
        assertThat(second).hasStatus(302);
        assertThat(second.getResponse().getRedirectedUrl())
                .isEqualTo(first.getResponse().getRedirectedUrl());
        assertThat(items.list(production.id)).hasSize(1);
        assertThat(receipts.list(now())).hasSize(1);
        assertThat(now().version()).isEqualTo(order.version() + 1);
    }

    @Test
    void ofTwoPeopleAtOnceTheSecondSeesWhatTheFirstEnteredAndSendsItsOwnAgain() throws Exception {
        receive(form().with("lines[0].without", "3"));
        Form second = form().with("lines[0].without", "2");
        assertThat(receive(second)).hasStatus(422);
        second.with("lines[0].without", "1").with("lines[1].serials", "R1");
        MvcTestResult stale = receive(second);
        assertThat(stale).hasStatus(422);
        Document page = page(stale);
        assertThat(page.select(".error-summary").text()).contains("meanwhile");
        assertThat(page.text()).contains("1 of 4 is still to come.");
        assertThat(page.getElementById("lines[1].serials").wholeText()).isEqualTo("R1");
        second.with("version", page.select("input[name=version]").val());
        assertThat(receive(second)).hasStatus(302);
        assertThat(now().lines()).extracting(OrderLine::left).containsExactly(0, 1);
    }

    @Test
    void brokenOnesThatAreReplacedAreStillExpectedAndCreditedOnesAreNotOwed() throws Exception {
        long before = now().owedMinorUnits();
        MvcTestResult result = receive(form().with("lines[0].serials", "SN-1")
                .with("lines[0].damaged", "2")
                .with("lines[0].damagedWords", "crushed in the box")
                .with("lines[0].damagedRemedy", "REPLACED")
                .with("lines[0].wrong", "1")
                .with("lines[0].wrongWords", "a reader")
                .with("lines[0].wrongRemedy", "CREDITED")
                .with("restExpectedOn", desk.today.plusDays(9).toString()));
        assertThat(result).hasStatus(302);
        PurchaseOrder now = now();
        OrderLine drives = now.lines().get(0);
        assertThat(drives.came()).isEqualTo(1);
        assertThat(drives.credited()).isEqualTo(1);
        assertThat(drives.left()).isEqualTo(2);
        assertThat(now.owedMinorUnits()).isEqualTo(before - 19_900);
        assertThat(now.expectedOn()).isEqualTo(desk.today.plusDays(9));
        assertThat(items.list(production.id)).hasSize(1);
        String page =
                get(String.valueOf(result.getResponse().getRedirectedUrl())).text();
        assertThat(page)
                .contains(
                        "2 broken: crushed in the box. The supplier sends others.",
                        "1 was something else: a reader. The supplier takes them off the bill.");
    }

    @Test
    void whatIsWrongIsToldAtItsField() throws Exception {
        Map<String, String> said = new LinkedHashMap<>();
        said.put("cameOn", desk.today.plusDays(1).toString());
        said.put("place", UUID.randomUUID().toString());
        said.put("lines[0].without", "five");
        said.put("lines[0].damaged", "1");
        said.put("lines[1].wrongWords", "cables");
        said.put("lines[1].without", "3");
        said.put("restExpectedOn", "soon");
        Form form = form();
        said.forEach(form::with);
        MvcTestResult result = receive(form);
        assertThat(result).hasStatus(422);
        Document page = page(result);
        assertThat(page.getElementById("cameOn-error").text()).contains("still to come");
        assertThat(page.getElementById("place-error").text()).contains("Choose where they are");
        assertThat(page.getElementById("lines[0].without-error").text()).contains("whole number");
        assertThat(page.getElementById("lines[0].damagedWords-error").text()).contains("what is wrong");
        assertThat(page.getElementById("lines[1].wrong-error").text()).contains("how many");
        assertThat(page.getElementById("lines[1].without-error").text()).contains("more than is still to come: 2");
        assertThat(page.getElementById("restExpectedOn-error").text()).contains("2030-05-31");
        assertThat(receive(form().with("cameOn", desk.today.minusDays(11).toString())
                        .with("lines[0].without", "1")))
                .hasStatus(422)
                .bodyText()
                .contains("before it was ordered");
        assertThat(receive(form())).hasStatus(422).bodyText().contains("Nothing is entered.");
        assertThat(receive(form().with("lines[0].without", "4")
                        .with("lines[1].without", "2")
                        .with("restExpectedOn", desk.today.toString())))
                .hasStatus(422)
                .bodyText()
                .contains("With this nothing is still to come.");
    }

    @Test
    void codesMayBeTypedOneForEachOrTheFirstOfARun() throws Exception {
        production.item("TAKEN-2", "READER", set, null);
        Map<String, String> wrong = Map.of(
                "TAKEN-1", "TAKEN-2 is the code of another item.",
                "A-1, A-2, A-3", "3 codes for 2 items.",
                "DRIVE", "From DRIVE they can’t count up.",
                "-X1", "“-X1” can’t be a code.",
                "A-1 to B-2", "A-1 and B-2 are not the first and last of a run.");
        for (Map.Entry<String, String> entry : wrong.entrySet()) {
            MvcTestResult result =
                    receive(form().with("lines[0].serials", "S1\nS2").with("lines[0].codes", entry.getKey()));
            assertThat(result).hasStatus(422);
            assertThat(page(result).getElementById("lines[0].codes-error").text())
                    .as(entry.getKey())
                    .contains(entry.getValue());
        }
        assertThat(receive(form().with("lines[0].serials", "S1\nS2")
                        .with("lines[0].codes", "blue-09")
                        .with("lines[1].serials", "R1\nR2")
                        .with("lines[1].codes", "RD-B, RD-A")))
                .hasStatus(302);
        assertThat(items.findByCode(production.id, "BLUE-10"))
                .map(MediaItem::serial)
                .hasValue("S2");
        assertThat(items.findByCode(production.id, "RD-A"))
                .map(MediaItem::serial)
                .hasValue("R2");
    }

    @Test
    void itemsMayOnlyBeCounted() {
        assertThat(receive(form().with("lines[0].serials", "S1").with("onlyCount", "true")))
                .hasStatus(422)
                .bodyText()
                .contains("What is only counted has no serial numbers.");
        assertThat(receive(form().with("lines[0].without", "4").with("onlyCount", "true")))
                .hasStatus(302);
        receipts.count(office, order.id(), Map.of(now().lines().get(1).id(), 2), desk.today, now().version());
        assertThat(now().state()).isEqualTo(State.ARRIVED);
        assertThat(items.list(production.id)).isEmpty();
    }

    @Test
    void aReceiptIsTakenBackAsAWholeAndEnteredAgainUnderTheSameNumbers() throws Exception {
        receive(form().with("lines[0].serials", "SN-1\nSN-2").with("lines[0].codes", "D-1"));
        Receipt receipt = receipts.list(now()).get(0);
        String back = path("receipts/" + receipt.id() + "/take-back");
        assertThat(get(back).text()).contains("2 items are to come again then, and 2 leave the book");
        MvcTestResult without = post(back, Map.of("reason", " ", "version", String.valueOf(now().version())));
        assertThat(without).hasStatus(422);
        assertThat(page(without).select("#reason-error").text()).contains("Say why.");
        assertThat(post(back, Map.of("reason", "wrong box", "version", String.valueOf(now().version()))))
                .hasStatus(302);
        PurchaseOrder now = now();
        assertThat(now.state()).isEqualTo(State.PLACED);
        assertThat(now.lines()).extracting(OrderLine::left).containsExactly(4, 2);
        assertThat(items.list(production.id))
                .extracting(MediaItem::code, MediaItem::condition)
                .containsExactly(tuple("D-1.OUT", Condition.RETIRED), tuple("D-2.OUT", Condition.RETIRED));
        assertThat(get(path("receipts/" + receipt.id())).text())
                .contains("This receipt is taken back", "wrong box", "D-1.OUT");
        assertThat(receive(form().with("version", Integer.toString(now.version()))
                        .with("lines[0].serials", "SN-2")
                        .with("lines[0].codes", "D-1")))
                .hasStatus(302);
        assertThat(items.findBySerial(production.id, "SN-2"))
                .map(MediaItem::code)
                .hasValue("D-1");
        assertThatThrownBy(() -> receipts.takeBack(office, order.id(), receipt.id(), "again", now().version()))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.key()).isEqualTo("purchase.refused.receipt-taken-back"));
        assertThat(acts("order.receipt-taken-back")).containsExactly("receipt 1: wrong box");
    }

    @Test
    void aReceiptStaysOnceSomethingWasDoneWithOneOfItsItems() {
        receive(form().with("lines[0].serials", "SN-1\nSN-2").with("lines[0].codes", "D-1"));
        Receipt receipt = receipts.list(now()).get(0);
        MediaItem moved = items.findByCode(production.id, "D-2").orElseThrow();
        custody.move(office, moved.id(), set, "runner", "", moved.version());
        int version = now().version();
        MvcTestResult refused = post(
                path("receipts/" + receipt.id() + "/take-back"),
                Map.of("reason", "wrong box", "version", String.valueOf(version)));
        assertThat(refused).hasStatus(409).bodyText().contains("D-2 was used, moved or put in quarantine since");
        assertThat(now().version()).isEqualTo(version);
        assertThat(items.findByCode(production.id, "D-1"))
                .map(MediaItem::condition)
                .hasValue(Condition.GOOD);
    }

    @Test
    void aClosedOrderTakesNoReceiptAndGivesNoneBack() {
        receipts.count(
                office,
                order.id(),
                Map.of(order.lines().get(0).id(), 4, order.lines().get(1).id(), 2),
                desk.today,
                order.version());
        orders.close(office, order.id(), order.version() + 1);
        UUID receipt = receipts.list(now()).get(0).id();
        assertThatThrownBy(() -> receipts.takeBack(office, order.id(), receipt, "x", now().version()))
                .isInstanceOf(Refusal.class);
        assertThat(get(path("receive")).text()).contains("Nothing can be received");
    }

    @Test
    void anOrderOfAnotherProductionIsUnknownHere() {
        TestProduction other = fixtures.production();
        String there = other.path("orders/" + order.id() + "/receive");
        assertThat(mvc.get().uri(there).with(other.signedInAs(Role.OFFICE))).hasStatus(404);
        assertThat(mvc.post().uri(there).with(other.signedInAs(Role.OFFICE)).with(csrf()))
                .hasStatus(404);
        assertThat(mvc.get().uri(path("receive")).with(production.signedInAs(Role.READER)))
                .hasStatus(403);
    }

    @Test
    void whatTheOrderDoesNotSayOfItsItemsIsAsked() throws Exception {
        jdbc.sql("update purchase_line set capacity_bytes = null where id = ?")
                .param(order.lines().get(0).id())
                .update();
        assertThat(get(path("receive")).getElementById("lines[0].capacityGb")).isNotNull();
        MvcTestResult without = receive(form().with("lines[0].without", "1"));
        assertThat(page(without).getElementById("lines[0].capacityGb-error").text())
                .contains("Write what an item holds");
        assertThat(receive(form().with("lines[0].without", "1").with("lines[0].capacityGb", "0.96")))
                .hasStatus(302);
        assertThat(items.list(production.id))
                .extracting(MediaItem::capacityBytes)
                .containsExactly(960_000_000L);
    }

    /** A form as the page sends it, of yesterday's arrival. */
    private final class Form {
        final Map<String, String> fields = new LinkedHashMap<>();

        Form with(String field, String value) {
            fields.put(field, value);
            return this;
        }
    }

    private Form form() {
        Form form = new Form()
                .with("receipt", UUID.randomUUID().toString())
                .with("version", Integer.toString(order.version()))
                .with("cameOn", desk.today.minusDays(1).toString())
                .with("place", set.toString());
        List<OrderLine> lines = order.lines();
        for (int i = 0; i < lines.size(); i++) {
            form.with("lines[" + i + "].line", lines.get(i).id().toString());
            form.with("lines[" + i + "].damagedRemedy", "REPLACED").with("lines[" + i + "].wrongRemedy", "REPLACED");
        }
        return form;
    }

    private MvcTestResult receive(Form form) {
        return post(path("receive"), form.fields);
    }

    private MvcTestResult post(String path, Map<String, String> fields) {
        var request =
                mvc.post().uri(path).with(production.signedInAs(Role.WRANGLER)).with(csrf());
        fields.forEach(request::param);
        return request.exchange();
    }

    private Document get(String path) {
        MvcTestResult result =
                mvc.get().uri(path).with(production.signedInAs(Role.WRANGLER)).exchange();
        assertThat(result).hasStatusOk();
        return page(result);
    }

    private static Document page(MvcTestResult result) {
        try {
            return Jsoup.parse(result.getResponse().getContentAsString());
        } catch (UnsupportedEncodingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private String path(String page) {
        return production.path("orders/" + order.id() + "/" + page);
    }

    private PurchaseOrder now() {
        return orders.get(production.id, order.id());
    }

    private List<String> acts(String action) {
        return jdbc.sql("select detail from audit_act where production_id = ? and action = ?")
                .params(production.id, action)
                .query(String.class)
                .list();
    }
}
