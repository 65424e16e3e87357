package rollbook.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.NewOrder;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.purchase.Receipts;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.DeliveredTo;
import rollbook.supplier.SupplierDetails;
import rollbook.supplier.Suppliers;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

@PortalTest
class CostPageTests {
    private static final LocalDate TODAY = LocalDate.now(ZoneId.of("Europe/Lisbon"));

    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Suppliers suppliers;

    @Autowired
    Catalogue catalogue;

    @Autowired
    Orders orders;

    @Autowired
    Receipts receipts;

    private TestProduction production;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
    }

    @Test
    void withNothingPricedThePageSaysWhatBelongsThere() throws Exception {
        assertThat(text("#sentence"))
                .contains("about €0.00 at the end of the show", "Nobody has said yet", "there is no forecast yet");
        assertThat(text("main")).contains("Nothing has a price yet");
        assertThat(text("nav.places [aria-current=page]"))
                .as("the place that the office's pages are under")
                .isEqualTo("Orders");
    }

    @Test
    void aBudgetIsSetAndChangedAndTheEarlierOneStaysOnRecord() throws Exception {
        assertThat(set("1500.50", "agreed with the producer", 0)).hasStatus(HttpStatus.FOUND);
        assertThat(text("#sentence")).contains("a budget of €1,500.50: €1,500.50 are left");
        assertThat(set("1200", "less is shot", 1)).hasStatus(HttpStatus.FOUND);

        assertThat(text("#sentence")).contains("a budget of €1,200.00");
        assertThat(text("main")).contains("€1,500.50 agreed with the producer", "€1,200.00 less is shot");
        assertThat(jdbc.sql("select action from audit_act where production_id = ? order by id")
                        .param(production.id)
                        .query(String.class)
                        .list())
                .containsExactly("production.created", "budget.set", "budget.set");
    }

    @Test
    void ofTwoWhoSetTheBudgetAtOnceTheSecondIsRefused() {
        assertThat(set("1500", "one", 0)).hasStatus(HttpStatus.FOUND);
        assertThat(set("1600", "other", 0)).hasStatus(HttpStatus.CONFLICT);
        assertThat(set("1600", "from the future", 7)).hasStatus(HttpStatus.CONFLICT);
        assertThat(jdbc.sql("select minor_units from cost_budget where production_id = ?")
                        .param(production.id)
                        .query(Long.class)
                        .list())
                .containsExactly(150_000L);
    }

    @Test
    void aBudgetIsNeverChangedInTheDatabase() {
        set("1500", "one", 0);
        assertThatThrownBy(() -> jdbc.sql("update cost_budget set minor_units = 1 where production_id = ?")
                        .param(production.id)
                        .update())
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void whatIsWrongWithABudgetIsSaidBesideItsFieldAndWhatWasTypedStays() throws Exception {
        assertThat(error(set("", "why", 0), "amount")).isNotEmpty();
        assertThat(error(set("-1", "why", 0), "amount")).isNotEmpty();
        assertThat(error(set("a lot", "why", 0), "amount")).isNotEmpty();
        assertThat(error(set("10.005", "why", 0), "amount")).contains("2 decimals at most");
        MvcTestResult noReason = set("10", " ", 0);
        assertThat(error(noReason, "reason")).isNotEmpty();
        assertThat(page(noReason).select("#amount").val()).isEqualTo("10");
    }

    @Test
    void ordersCountAsTheyArriveAndWhatIsOwnedOtherwiseWithItsOwnPrice() throws Exception {
        Membership office = production.as(Role.OFFICE);
        UUID place = production.place("Office", false);
        UUID owned = production.item("D-01", "DRIVE", place, null);
        production.item("D-02", "DRIVE", place, null);
        jdbc.sql("update inventory_item set cost_minor_units = 20000 where id = ?")
                .param(owned)
                .update();
        // Of the model that came: one of the four that were counted.
        UUID counted = production.item("D-03", "DRIVE", place, null);
        jdbc.sql("update inventory_item set cost_minor_units = 17000, model = '=shuttle drive' where id = ?")
                .param(counted)
                .update();
        // Six drives at 180.00 and a delivery for 12.50; four came.
        UUID order = placed(office, 6);
        PurchaseOrder placed = orders.get(production.id, order);
        receipts.count(office, order, Map.of(placed.lines().get(0).id(), 4), TODAY, placed.version());
        set("1000", "for the trial", 0);

        assertThat(text("#sentence"))
                .startsWith("Media will have cost about €1,292.50, and the budget is €1,000.00: €292.50 are lacking."
                        + " €932.50 of it is spent, €360.00 committed.");
        assertThat(text("main")).contains("1 item was bought and has no price");
    }

    @Test
    void theFileListsEachCostExactly() throws Exception {
        placed(production.as(Role.OFFICE), 2);
        MvcTestResult csv = mvc.get()
                .uri(production.path("costs.csv"))
                .with(production.signedInAs(Role.POST))
                .exchange();
        assertThat(csv).hasStatusOk();
        assertThat(csv.getResponse().getContentAsString(StandardCharsets.UTF_8).lines())
                .containsExactly(
                        "stage,kind,way,what,source,on,amount,currency",
                        "COMMITTED,DRIVE,BOUGHT,'=shuttle drive,Order 1," + TODAY.plusDays(3) + ",360.00,EUR",
                        "COMMITTED,DELIVERY,BOUGHT,Corner shop,Order 1," + TODAY.plusDays(3) + ",12.50,EUR");
    }

    private UUID placed(Membership office, int items) {
        UUID shop = suppliers.add(
                office, new SupplierDetails("Corner shop", null, Set.of(), LocalTime.of(16, 0), 1_250, 2, 4, ""));
        UUID drive = catalogue.add(
                office,
                shop,
                new CatalogueDetails(MediaKind.DRIVE, "=shuttle drive", 12_000_000_000_000L, null, 480_000_000L, 2));
        catalogue.price(office, drive, new Catalogue.NewPrice(TODAY, 18_000L, null), 0);
        UUID order = orders.propose(
                office,
                new NewOrder(
                        DeliveredTo.SET,
                        null,
                        null,
                        "",
                        PurchaseOrder.Source.HAND,
                        "",
                        List.of(NewOrder.Line.ofCatalogue(drive, items, null, null, null))));
        orders.approve(office, order, orders.get(production.id, order).version());
        orders.place(
                office,
                order,
                TODAY,
                TODAY.plusDays(3),
                orders.get(production.id, order).version());
        return order;
    }

    private MvcTestResult set(String amount, String reason, int budgets) {
        return mvc.post()
                .uri(production.path("costs/budget"))
                .with(production.signedInAs(Role.OFFICE))
                .param("amount", amount)
                .param("reason", reason)
                .param("budgets", Integer.toString(budgets))
                .exchange();
    }

    private String text(String selector) throws Exception {
        MvcTestResult page = mvc.get()
                .uri(production.path("costs"))
                .with(production.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(page).hasStatusOk();
        return page(page).select(selector).text();
    }

    private static String error(MvcTestResult result, String field) throws Exception {
        assertThat(result).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page(result).select("#" + field + "-error").text();
    }

    private static Document page(MvcTestResult result) throws Exception {
        return Jsoup.parse(result.getResponse().getContentAsString(StandardCharsets.UTF_8));
    }
}
