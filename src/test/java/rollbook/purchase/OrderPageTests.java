package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
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
import rollbook.forecast.Forecasts;
import rollbook.forecast.StorageShow;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

/** The pages about orders, as people use them. */
@PortalTest
class OrderPageTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Orders orders;

    @Autowired
    Receipts receipts;

    @Autowired
    Limits limits;

    @Autowired
    Forecasts forecasts;

    @Autowired
    StatementCount statements;

    private StorageShow show;
    private Membership office;
    private UUID leg;
    private UUID item;
    private TestOrders steps;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        show.everyDayIsAWorkingDay();
        office = show.production.as(Role.OFFICE);
        leg = show.keptLeg("SHUTTLE");
        item = show.supply(leg, 2000, 2, 2, 3, 18_050);
        steps = new TestOrders(orders, receipts, office);
    }

    @Test
    void aPageWithoutOrdersSaysWhatBelongsThere() throws Exception {
        Document page = get(Role.READER, "orders");
        assertThat(page.select("#sentence").text()).isEqualTo("Nothing waits for approval and nothing is on its way.");
        assertThat(page.select(".empty h2").text()).isEqualTo("Orders belong here");
        assertThat(page.select("a.primary")).as("a reader proposes nothing").isEmpty();
        assertThat(get(Role.POST, "orders").select("a.primary").text()).isEqualTo("Propose an order");
    }

    @Test
    void theListSaysFirstWhatWaitsForSomebodyAndIsFilteredByState() throws Exception {
        steps.proposed(item, leg, 2, "");
        UUID toPlace = steps.proposed(item, leg, 4, "");
        orders.approve(office, toPlace, steps.get(toPlace).version());
        steps.placed(item, leg, 2, show.date(-9), show.date(-5));
        steps.placed(item, leg, 2, show.date(-1), show.date(3));
        UUID came = steps.placed(item, leg, 2, show.date(-9), show.date(-8));
        steps.came(came, 2, show.date(-8));

        Document all = get(Role.OFFICE, "orders");
        assertThat(all.select("#sentence").text())
                .startsWith("1 order waits for approval, 1 order is to be placed, 1 order is late,"
                        + " 1 order is on its way, expected on ");
        assertThat(all.select("tbody th").eachText())
                .containsExactly("Order 1", "Order 2", "Order 4", "Order 3", "Order 5");
        assertThat(all.select("dl.facts").text())
                .contains("Proposed or approved: 2 orders €1,083.00")
                .contains("On its way: 2 orders €722.00")
                .contains("Arrived or closed: 1 order €361.00");
        assertThat(get(Role.OFFICE, "orders?state=PLACED").select("tbody th").eachText())
                .containsExactly("Order 4", "Order 3");
        assertThat(get(Role.OFFICE, "orders?state=NONSENSE").select("tbody tr")).hasSize(5);
        assertThat(get(Role.OFFICE, "orders?state=DECLINED").select("main").text())
                .contains("Nothing matches", "State: declined (0)”");
        assertThat(get(Role.OFFICE, "orders?sort=order").select("tbody th").eachText())
                .containsExactly("Order 1", "Order 2", "Order 3", "Order 4", "Order 5");
        assertThat(get(Role.OFFICE, "orders?q=order 4").select("tbody th").eachText())
                .containsExactly("Order 4");
    }

    /** A pool that is full tomorrow: one press on the flag, one on the form, and an order is proposed. */
    @Test
    void fromAFlagItTakesTwoPressesToAProposedOrder() throws Exception {
        show.drive("SHUTTLE-1", leg, 2_000);
        for (int number = 1; number <= 6; number++) {
            show.day(number, number, "PLANNED", 1000);
        }
        forecasts.compute(show.production.id);
        String first =
                get(Role.WRANGLER, "storage").select(".caution a.primary").attr("href");
        assertThat(first).isEqualTo(show.production.path("orders/new?leg=" + leg));

        Document form =
                get(Role.WRANGLER, first.substring(show.production.path("").length()));
        assertThat(form.select("#sentence").text()).contains("for SHUTTLE, filled in as the forecast advises");
        int items = Integer.parseInt(form.select("[name=lines[0].items]").val());
        assertThat(items).isPositive().isEven();
        assertThat(form.select("[name=neededBy]").val()).isNotEmpty();
        assertThat(send(Role.WRANGLER, "orders/new", form)).hasStatus(HttpStatus.FOUND);

        PurchaseOrder order = orders.list(show.production.id).get(0);
        assertThat(order.source()).isEqualTo(PurchaseOrder.Source.FLAG);
        assertThat(order.sourceName()).isEqualTo("SHUTTLE");
        assertThat(order.lines())
                .extracting(OrderLine::catalogueItemId, OrderLine::items, OrderLine::legId)
                .containsExactly(tuple(item, items, leg));
        assertThat(get(Role.READER, "orders/" + order.id()).select("dl.facts").text())
                .contains("the flag of SHUTTLE");
    }

    @Test
    void fromACatalogueItemAPackIsFilledIn() throws Exception {
        Document form = get(Role.OFFICE, "orders/new?item=" + item);
        assertThat(form.select("[name=lines[0].item] option[selected]").text())
                .isEqualTo("Supplier 1: test model, 2.00 TB, €180.50 to buy, packs of 2");
        assertThat(form.select("[name=lines[0].items]").val()).isEqualTo("2");
    }

    @Test
    void whatCannotBeIsSaidAtItsFieldAndWhatWasTypedStays() throws Exception {
        UUID other = show.supply(show.keptLeg("ARRAY"), 8000, 1, 2, 3, 50_000);
        wrong("lines[0].item", "Say what to order.", "lines[0].item", "");
        wrong("lines[0].items", "Say how many.", "lines[0].item", item.toString());
        wrong("lines[0].items", "packs of 2", "lines[0].item", item.toString(), "lines[0].items", "3");
        wrong("lines[0].items", "digits", "lines[0].item", item.toString(), "lines[0].items", "many");
        wrong(
                "lines[0].item",
                "Choose an item of the list.",
                "lines[0].item",
                UUID.randomUUID().toString(),
                "lines[0].items",
                "3");
        wrong("lines[0].item", "Choose an item.", "lines[0].items", "3");
        wrong(
                "lines[0].price",
                "no price for hire",
                "lines[0].item",
                item.toString(),
                "lines[0].items",
                "2",
                "lines[0].weeks",
                "4");
        wrong(
                "lines[0].price",
                "no parts that small",
                "lines[0].item",
                item.toString(),
                "lines[0].items",
                "2",
                "lines[0].price",
                "1.005");
        wrong(
                "lines[0].leg",
                "takes media of another kind",
                "lines[0].item",
                tape(),
                "lines[0].items",
                "5",
                "lines[0].leg",
                leg.toString());
        wrong(
                "lines[1].item",
                "Supplier 2 offers this, and the lines above are of Supplier 1.",
                "lines[0].item",
                item.toString(),
                "lines[0].items",
                "2",
                "lines[1].item",
                other.toString(),
                "lines[1].items",
                "1");
        wrong(
                "deliveredTo",
                "Fill this in.",
                "lines[0].item",
                item.toString(),
                "lines[0].items",
                "2",
                "deliveredTo",
                "");
        assertThat(orders.list(show.production.id)).isEmpty();
    }

    private String tape() {
        UUID supplier = jdbc.sql("select supplier_id from supplier_item where id = ?")
                .param(item)
                .query(UUID.class)
                .single();
        UUID tape = UUID.randomUUID();
        jdbc.sql("""
                        insert into supplier_item (id, supplier_id, kind, model, capacity_bytes, pack_size)
                        values (?, ?, 'TAPE', 'tape', 18000000000000, 5)
                        """).params(tape, supplier).update();
        jdbc.sql("""
                        insert into supplier_price (item_id, number, entered_at, valid_from, item_minor_units)
                        values (?, 1, now(), current_date, 9400)
                        """).param(tape).update();
        return tape.toString();
    }

    private void wrong(String field, String says, String... typed) throws Exception {
        String[] all = new String[typed.length + 2];
        all[0] = "note";
        all[1] = "typed before";
        System.arraycopy(typed, 0, all, 2, typed.length);
        MvcTestResult answer = post(Role.OFFICE, "orders/new", all);
        assertThat(answer).as(says).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = parse(answer);
        assertThat(page.getElementById(field + "-error"))
                .as(field + ": " + says)
                .isNotNull();
        assertThat(page.getElementById(field + "-error").text()).contains(says);
        assertThat(page.select("#note").val()).isEqualTo("typed before");
        assertThat(page.select("title").text()).startsWith("Error:");
        for (int i = 0; i < typed.length; i += 2) {
            if (typed[i].endsWith("items") || typed[i].endsWith("price") || typed[i].endsWith("weeks")) {
                assertThat(page.getElementById(typed[i]).val()).isEqualTo(typed[i + 1]);
            }
        }
    }

    @Test
    void oneMoreLineKeepsWhatWasTypedAndSavesNothing() throws Exception {
        MvcTestResult more = post(
                Role.OFFICE, "orders/new", "more", "true", "lines[0].item", item.toString(), "lines[0].items", "4");
        assertThat(more).hasStatusOk();
        Document form = parse(more);
        assertThat(form.select("fieldset legend").eachText()).contains("Line 1", "Line 2");
        assertThat(form.getElementById("lines[0].items").val()).isEqualTo("4");
        assertThat(orders.list(show.production.id)).isEmpty();

        assertThat(post(
                        Role.OFFICE,
                        "orders/new",
                        "lines[0].item",
                        item.toString(),
                        "lines[0].items",
                        "4",
                        "lines[1].item",
                        item.toString(),
                        "lines[1].items",
                        "2",
                        "lines[1].price",
                        "100",
                        "lines[2].item",
                        ""))
                .hasStatus(HttpStatus.FOUND);
        assertThat(orders.list(show.production.id).get(0).totalMinorUnits()).isEqualTo(4 * 18_050L + 2 * 10_000L);
    }

    @Test
    void aProposedOrderIsChangedAndALineTakenOut() throws Exception {
        UUID order = steps.proposed(item, leg, 4, "for the second unit");
        Document form = get(Role.WRANGLER, "orders/" + order + "/edit");
        assertThat(form.select("#note").val()).isEqualTo("for the second unit");
        String line = form.select("[name=lines[0].id]").val();
        assertThat(post(
                        Role.WRANGLER,
                        "orders/" + order + "/edit",
                        "version",
                        "0",
                        "lines[0].id",
                        line,
                        "lines[0].item",
                        item.toString(),
                        "lines[0].items",
                        "4",
                        "lines[0].remove",
                        "true",
                        "lines[1].item",
                        item.toString(),
                        "lines[1].items",
                        "6"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(steps.get(order).lines()).extracting(OrderLine::items).containsExactly(6);
        assertThat(post(
                        Role.WRANGLER,
                        "orders/" + order + "/edit",
                        "version",
                        "0",
                        "lines[0].item",
                        item.toString(),
                        "lines[0].items",
                        "2"))
                .as("somebody changed it meanwhile")
                .hasStatus(HttpStatus.CONFLICT);
    }

    @Test
    void whatCannotBeReadOfAChangedOrderIsSaidAtItsFieldToo() throws Exception {
        UUID order = steps.proposed(item, leg, 4, "");
        MvcTestResult answer = post(
                Role.OFFICE,
                "orders/" + order + "/edit",
                "lines[0].id",
                steps.get(order).lines().get(0).id().toString(),
                "lines[0].item",
                item.toString(),
                "lines[0].items",
                "many",
                "lines[1].item",
                item.toString(),
                "lines[1].items",
                "2");
        assertThat(answer).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = parse(answer);
        assertThat(page.getElementById("lines[0].items-error").text()).contains("digits");
        assertThat(page.getElementById("lines[0].items").val()).isEqualTo("many");
        assertThat(page.getElementById("lines[1].items").val()).isEqualTo("2");
    }

    @Test
    void theOrderSaysWhatComesNextAndOffersOneThingToDo() throws Exception {
        UUID order = steps.proposed(item, leg, 4, "");
        Document proposed = get(Role.OFFICE, "orders/" + order);
        assertThat(proposed.select("#sentence").text())
                .isEqualTo("OFFICE proposed it for €722.00. It waits for approval.");
        assertThat(proposed.select(".primary").text()).isEqualTo("Approve it for €722.00");
        assertThat(get(Role.WRANGLER, "orders/" + order).select("main").text())
                .contains("It may be approved by: the office, administrators.")
                .doesNotContain("Approve it for");

        assertThat(post(Role.OFFICE, "orders/" + order + "/approval", "version", "0"))
                .hasStatus(HttpStatus.FOUND);
        Document approved = get(Role.OFFICE, "orders/" + order);
        assertThat(approved.select("#sentence").text())
                .isEqualTo("OFFICE approved it. Next it is placed with Supplier 1.");
        assertThat(approved.select("#orderedOn").val()).isEqualTo(show.today.toString());
        assertThat(approved.select("#expectedOn").val())
                .as("its usual lead time")
                .isNotEmpty();
        assertThat(get(Role.POST, "orders/" + order).select("#orderedOn")).isEmpty();

        assertThat(place(order, show.date(1), show.date(3), "orderedOn", "a day to come"))
                .isTrue();
        assertThat(place(order, show.date(-1), show.date(-2), "expectedOn", "before it is ordered"))
                .isTrue();
        assertThat(post(
                        Role.OFFICE,
                        "orders/" + order + "/placing",
                        "version",
                        "1",
                        "orderedOn",
                        show.date(-1).toString(),
                        "expectedOn",
                        show.date(2).toString()))
                .hasStatus(HttpStatus.FOUND);
        Document placed = get(Role.WRANGLER, "orders/" + order);
        assertThat(placed.select("#sentence").text()).startsWith("4 items are expected on ");
        assertThat(placed.select("a.primary").attr("href")).endsWith("orders/" + order + "/receive");

        steps.came(order, 4, show.today);
        Document came = get(Role.OFFICE, "orders/" + order);
        assertThat(came.select("#sentence").text()).startsWith("All 4 items came.");
        assertThat(came.select(".primary").text()).isEqualTo("Close the order");
        assertThat(post(Role.OFFICE, "orders/" + order + "/closing", "version", "3"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(get(Role.OFFICE, "orders/" + order).select("#sentence").text())
                .isEqualTo("All 4 items came, and the order is closed.");
    }

    private boolean place(UUID order, LocalDate on, LocalDate expected, String field, String says) throws Exception {
        MvcTestResult answer = post(
                Role.OFFICE,
                "orders/" + order + "/placing",
                "version",
                "1",
                "orderedOn",
                on.toString(),
                "expectedOn",
                expected.toString());
        assertThat(answer).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        Document page = parse(answer);
        assertThat(page.select("#orderedOn").val()).isEqualTo(on.toString());
        return page.getElementById(field + "-error").text().contains(says);
    }

    @Test
    void whoMayNotApproveThatMuchReadsWhoMay() throws Exception {
        limits.change(
                show.production.as(Role.ADMINISTRATOR),
                new ApprovalLimits(50_000L, 0L, 100_000L, ApprovalLimits.NOT_KEPT));
        UUID order = steps.proposed(item, leg, 4, "");
        Document page = get(Role.OFFICE, "orders/" + order);
        assertThat(page.select("main").text()).contains("It may be approved by: post, administrators.");
        assertThat(page.select("button.primary")).isEmpty();
        assertThat(post(Role.OFFICE, "orders/" + order + "/approval", "version", "0"))
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(post(Role.POST, "orders/" + order + "/approval", "version", "0"))
                .hasStatus(HttpStatus.FOUND);
    }

    @Test
    void decliningAndCallingOffNeedAReason() throws Exception {
        UUID order = steps.proposed(item, leg, 4, "");
        MvcTestResult without = post(Role.OFFICE, "orders/" + order + "/decline", "version", "0", "declineReason", " ");
        assertThat(without).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(parse(without).select("details[open] #declineReason-error").text())
                .contains("Say why.");
        assertThat(post(Role.OFFICE, "orders/" + order + "/decline", "version", "0", "declineReason", "too dear"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(get(Role.READER, "orders/" + order).select("#sentence").text())
                .isEqualTo("OFFICE declined it: too dear");

        assertThat(post(Role.OFFICE, "orders/" + order + "/correction", "version", "1", "number", "2"))
                .hasStatus(HttpStatus.FOUND);
        MvcTestResult off = post(Role.WRANGLER, "orders/" + order + "/cancellation", "version", "2");
        assertThat(off).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(parse(off).select("details[open] #cancelReason-error").text())
                .contains("Say why.");
        assertThat(post(
                        Role.WRANGLER,
                        "orders/" + order + "/cancellation",
                        "version",
                        "2",
                        "cancelReason",
                        "found two"))
                .hasStatus(HttpStatus.FOUND);
        Document page = get(Role.READER, "orders/" + order);
        assertThat(page.select("#sentence").text()).isEqualTo("WRANGLER called it off: found two");
        assertThat(page.select("#history + ul li").eachText())
                .hasSize(4)
                .anySatisfy(line -> assertThat(line).contains("declined by OFFICE: too dear (taken back)"))
                .anySatisfy(line -> assertThat(line).contains("OFFICE took back that it was declined"));
        assertThat(page.select("#history + ul button"))
                .as("a reader takes nothing back")
                .isEmpty();
        assertThat(get(Role.OFFICE, "orders/" + order).select("#history + ul button"))
                .hasSize(1);
    }

    @Test
    void ofAnOrderThatCameInPartTheRestIsCalledOff() throws Exception {
        UUID order = steps.placed(item, leg, 4, show.date(-3), show.date(1));
        steps.came(order, 2, show.today);
        Document page = get(Role.OFFICE, "orders/" + order);
        assertThat(page.select("#sentence").text()).startsWith("2 of 4 items came. The rest is expected on ");
        assertThat(page.select("details").text()).contains("2 items aren’t expected any more then");
        assertThat(post(Role.OFFICE, "orders/" + order + "/cancellation", "version", "3", "cancelReason", "sold out"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(steps.get(order).state()).isEqualTo(State.ARRIVED);
        assertThat(get(Role.OFFICE, "orders/" + order).select("#sentence").text())
                .startsWith("2 of 4 items came, and nothing more is expected.");
    }

    @Test
    void limitsAreTheAdministrators() throws Exception {
        assertThat(mvc.get().uri(show.production.path("orders/limits")).with(show.production.signedInAs(Role.OFFICE)))
                .hasStatus(HttpStatus.FORBIDDEN);
        Document form = get(Role.ADMINISTRATOR, "orders/limits");
        assertThat(form.select("#office").val()).isEmpty();
        assertThat(form.select("#wrangler").val()).isEqualTo("0.00");
        MvcTestResult wrong =
                post(Role.ADMINISTRATOR, "orders/limits", "version", "-1", "office", "5000.001", "wrangler", "0");
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(parse(wrong).select("#office-error").text()).contains("no parts that small");
        assertThat(post(
                        Role.ADMINISTRATOR,
                        "orders/limits",
                        "version",
                        "-1",
                        "office",
                        "5000",
                        "wrangler",
                        "0",
                        "post",
                        "0"))
                .hasStatus(HttpStatus.FOUND);
        assertThat(limits.of(show.production.id).officeMinorUnits()).isEqualTo(500_000L);
    }

    @Test
    void pagesTakeFewStatementsHoweverManyOrdersThereAre() throws Exception {
        for (int i = 0; i < 15; i++) {
            steps.placed(item, leg, 2, show.date(-3), show.date(i));
        }
        UUID toPlace = steps.proposed(item, leg, 2, "");
        orders.approve(office, toPlace, steps.get(toPlace).version());
        assertThat(statements.during(() -> get(Role.OFFICE, "orders"))).isLessThanOrEqualTo(12);
        assertThat(statements.during(() -> get(Role.OFFICE, "orders/" + toPlace)))
                .isLessThanOrEqualTo(12);
        assertThat(statements.during(() -> get(Role.OFFICE, "orders/new?leg=" + leg)))
                .isLessThanOrEqualTo(12);
        assertThat(statements.during(() -> get(Role.OFFICE, "orders/" + toPlace)))
                .isLessThanOrEqualTo(12);
        assertThat(statements.during(() -> get(Role.OFFICE, "storage"))).isLessThanOrEqualTo(12);
    }

    private Document get(Role role, String path) throws Exception {
        MvcTestResult page = mvc.get()
                .uri(show.production.path(path))
                .with(show.production.signedInAs(role))
                .exchange();
        assertThat(page).as(path).hasStatusOk();
        return parse(page);
    }

    private static Document parse(MvcTestResult page) {
        return Jsoup.parse(new String(page.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8));
    }

    /** With a delivery to the office, if nothing else is said. */
    private MvcTestResult post(Role role, String path, String... params) {
        var request = mvc.post().uri(show.production.path(path)).with(show.production.signedInAs(role));
        if (!List.of(params).contains("deliveredTo")) {
            request.param("deliveredTo", "OFFICE");
        }
        if (!List.of(params).contains("version")) {
            request.param("version", "0");
        }
        for (int i = 0; i < params.length; i += 2) {
            request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    /** A form just as it is. */
    private MvcTestResult send(Role role, String path, Document form) {
        var request = mvc.post().uri(show.production.path(path)).with(show.production.signedInAs(role));
        form.select("main form input, main form textarea").stream()
                .filter(input -> !input.attr("type").equals("radio")
                                && !input.attr("type").equals("checkbox")
                        || input.hasAttr("checked"))
                .forEach(input -> request.param(input.attr("name"), input.val()));
        form.select("main form select")
                .forEach(select -> request.param(
                        select.attr("name"), select.select("option[selected]").val()));
        return request.exchange();
    }
}
