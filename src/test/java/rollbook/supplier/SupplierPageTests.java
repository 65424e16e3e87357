package rollbook.supplier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
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
import rollbook.ordering.Hire;
import rollbook.production.MediaKind;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

@PortalTest
class SupplierPageTests {
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
    Contacts contacts;

    @Autowired
    Catalogue catalogue;

    private TestProduction production;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
    }

    private UUID shop() {
        return suppliers.add(
                production.as(Role.OFFICE),
                new SupplierDetails("Corner shop", null, Set.of(), LocalTime.of(16, 0), 1_250, 2, 4, ""));
    }

    private UUID drive(UUID supplier) {
        return catalogue.add(
                production.as(Role.OFFICE),
                supplier,
                new CatalogueDetails(MediaKind.DRIVE, "shuttle drive", 12_000_000_000_000L, null, 480_000_000L, 2));
    }

    @Test
    void aSupplierIsEnteredChangedAndOnRecord() throws Exception {
        assertThat(text("suppliers", "#sentence")).contains("No supplier is known yet");
        assertThat(save("suppliers/new", "Corner shop", "3", "5", "12.50", 0)).hasStatus(HttpStatus.FOUND);

        MediaSupplier kept = suppliers.list(production.id).get(0);
        assertThat(kept.details())
                .isEqualTo(new SupplierDetails(
                        "Corner shop",
                        "PT",
                        Set.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY),
                        LocalTime.of(15, 30),
                        1_250,
                        3,
                        5,
                        "by telephone"));
        assertThat(text("suppliers", "#sentence")).isEqualTo("1 supplier, nothing in a catalogue yet.");
        assertThat(text("suppliers/" + kept.id(), "#sentence"))
                .isEqualTo("From order to delivery usually 3 working days, nine times of ten within 5:"
                        + " as stated, no delivery has been recorded yet.");
        assertThat(text("suppliers/" + kept.id(), "main")).contains("Portugal", "Monday, Tuesday", "€12.50", "15:30");

        assertThat(save("suppliers/" + kept.id() + "/edit", "Corner shop", "2", "5", "12.50", 0))
                .hasStatus(HttpStatus.FOUND);
        assertThat(save("suppliers/" + kept.id() + "/edit", "Corner shop", "1", "5", "12.50", 0))
                .as("two changed it at once")
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(suppliers.get(production.id, kept.id()).details().leadTimeWorkingDays())
                .isEqualTo(2);
        assertThat(onRecord()).containsExactly("supplier.added", "supplier.changed");
    }

    @Test
    void whatIsWrongWithASupplierIsSaidBesideTheField() throws Exception {
        shop();

        assertThat(error(save("suppliers/new", "", "3", "5", "1", 0), "name")).contains("Give the supplier’s name");
        assertThat(error(save("suppliers/new", "corner SHOP", "3", "5", "1", 0), "name"))
                .contains("is there already");
        assertThat(error(save("suppliers/new", "Other", "3", "2", "1", 0), "slowLeadTimeWorkingDays"))
                .contains("at least the usual lead time");
        assertThat(error(save("suppliers/new", "Other", "three", "5", "1", 0), "leadTimeWorkingDays"))
                .isNotEmpty();
        assertThat(error(save("suppliers/new", "Other", "3", "5", "1.005", 0), "deliveryPrice"))
                .contains("no parts that small");
        assertThat(suppliers.list(production.id)).hasSize(1);
    }

    @Test
    void twoCannotEnterTheSameSupplierAtOnce() {
        UUID other = suppliers.add(
                production.as(Role.OFFICE),
                new SupplierDetails("Other", null, Set.of(), LocalTime.of(16, 0), 0, 2, 4, ""));
        shop();

        assertThatThrownBy(this::shop).hasMessageContaining("supplier.refused.name-taken");
        MediaSupplier renamed =
                new MediaSupplier(other, suppliers.list(production.id).get(0).details(), 0);
        assertThatThrownBy(() -> suppliers.change(production.as(Role.OFFICE), renamed))
                .hasMessageContaining("supplier.refused.name-taken");
    }

    @Test
    void aSupplierEnteredByMistakeIsRemovedButNotOneThatOffersSomething() {
        UUID mistake = shop();
        contacts.add(production.as(Role.OFFICE), mistake, "Orders", "", "", "");
        assertThat(post("suppliers/" + mistake + "/remove")).hasStatus(HttpStatus.FOUND);
        assertThat(suppliers.list(production.id)).isEmpty();

        UUID shop = shop();
        drive(shop);
        assertThat(post("suppliers/" + shop + "/remove")).hasStatus(HttpStatus.CONFLICT);
        assertThat(suppliers.list(production.id)).hasSize(1);
    }

    @Test
    void contactsAreEnteredChangedAndRemoved() throws Exception {
        UUID shop = shop();
        String base = "suppliers/" + shop + "/contacts/";
        assertThat(error(post(base + "new", "role", "", "email", "nobody", "version", "0"), "email"))
                .contains("an e-mail address");
        assertThat(post(
                        base + "new",
                        "role",
                        "Orders",
                        "phone",
                        "000 010",
                        "email",
                        "orders@shop.example",
                        "version",
                        "0"))
                .hasStatus(HttpStatus.FOUND);

        Document page = get("suppliers/" + shop);
        assertThat(page.select("a[href^=tel]").attr("href")).isEqualTo("tel:000010");
        assertThat(page.select("a[href^=mailto]").attr("href")).isEqualTo("mailto:orders@shop.example");
        Contact contact = contacts.list(suppliers.get(production.id, shop)).get(0);
        assertThat(post(base + contact.id(), "role", "Returns", "version", "0")).hasStatus(HttpStatus.FOUND);
        assertThat(post(base + contact.id(), "role", "Bills", "version", "0"))
                .as("two changed it at once")
                .hasStatus(HttpStatus.CONFLICT);
        assertThat(post(base + contact.id() + "/remove")).hasStatus(HttpStatus.FOUND);
        assertThat(contacts.list(suppliers.get(production.id, shop))).isEmpty();
        assertThat(onRecord())
                .containsExactly(
                        "supplier.added",
                        "supplier.contact-added",
                        "supplier.contact-changed",
                        "supplier.contact-removed");
    }

    @Test
    void anItemIsEnteredWithItsPriceExactly() throws Exception {
        UUID shop = shop();
        String base = "suppliers/" + shop + "/items/";
        assertThat(error(item(base + "new", "DRIVE", "", 0), "capacityGb")).contains("how much it holds");
        assertThat(item(base + "new", "READER", "", 0))
                .as("readers hold nothing")
                .hasStatus(HttpStatus.FOUND);
        MvcTestResult added = item(base + "new", "DRIVE", "18000.000000001", 0);
        assertThat(added).hasStatus(HttpStatus.FOUND);

        CatalogueItem item = catalogue.list(production.id).get(0);
        assertThat(added.getResponse().getRedirectedUrl()).endsWith(item.id() + "/price");
        assertThat(item.details())
                .isEqualTo(new CatalogueDetails(
                        MediaKind.DRIVE, "shuttle drive", 18_000_000_000_001L, 520_500_000L, null, 2));
        assertThat(price(base + item.id(), "0.29", "45", "2", TODAY, 0)).hasStatus(HttpStatus.FOUND);
        assertThat(catalogue.get(production.id, item.id()).prices().entered())
                .singleElement()
                .satisfies(price -> {
                    assertThat(price.itemMinorUnits()).isEqualTo(29);
                    assertThat(price.hire()).isEqualTo(new Hire(4_500, 2));
                    assertThat(price.enteredBy()).isEqualTo("OFFICE");
                });
        assertThat(get(base + item.id() + "/edit").select("#capacityGb").val()).isEqualTo("18000.000000001");
        assertThat(get(base + item.id() + "/price").select("#itemPrice").val()).isEqualTo("0.29");
        assertThat(item(base + item.id() + "/edit", "DRIVE", "16000", 0)).hasStatus(HttpStatus.FOUND);
        assertThat(item(base + item.id() + "/edit", "DRIVE", "14000", 0))
                .as("two changed it at once")
                .hasStatus(HttpStatus.CONFLICT);
    }

    @Test
    void aPriceIsToBuyOrToHireAndWhatIsWrongIsSaidBesideTheField() throws Exception {
        UUID shop = shop();
        String path = "suppliers/" + shop + "/items/" + drive(shop);

        assertThat(error(price(path, "", "", "", TODAY, 0), "itemPrice")).contains("to buy or to hire");
        assertThat(error(price(path, "", "45", "", TODAY, 0), "hireMinimumWeeks"))
                .contains("or neither");
        assertThat(error(price(path, "1.005", "", "", TODAY, 0), "itemPrice")).contains("no parts that small");
        assertThat(error(price(path, "-1", "", "", TODAY, 0), "itemPrice")).isNotEmpty();
        assertThat(price(path, "", "45", "1", TODAY, 0)).hasStatus(HttpStatus.FOUND);
        assertThat(price(path, "1", "", "", TODAY, 0)).as("two at once").hasStatus(HttpStatus.CONFLICT);
        assertThat(onRecord()).containsExactly("supplier.added", "catalogue.added", "catalogue.priced");
    }

    @Test
    void pricesKeepTheirHistoryAndAreNeverChanged() throws Exception {
        UUID shop = shop();
        UUID item = drive(shop);
        String path = "suppliers/" + shop + "/items/" + item;
        assertThat(text(path, "#sentence")).isEqualTo("No price is known yet.");
        price(path, "590", "", "", TODAY.minusDays(30), 0);
        price(path, "651", "", "", TODAY.minusDays(3), 1);
        price(path, "615", "", "", TODAY.minusDays(3), 2);
        price(path, "640", "", "", TODAY.plusDays(20), 3);

        assertThat(text(path, "#sentence"))
                .startsWith("€615.00 to buy, since ")
                .contains("It went up: before that €590.00 to buy, from ")
                .contains(" on €640.00 to buy.")
                .doesNotContain("651");
        assertThat(get(path).select("tbody tr").eachText())
                .hasSize(4)
                .anySatisfy(row -> assertThat(row).contains("€651.00", "(corrected since)"));
        assertThatThrownBy(() -> jdbc.sql("update supplier_price set item_minor_units = 1 where item_id = ?")
                        .param(item)
                        .update())
                .isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> jdbc.sql("delete from supplier_price where item_id = ?")
                        .param(item)
                        .update())
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void whatIsNoLongerToBeHadStaysReadableAndCanComeBack() throws Exception {
        UUID shop = shop();
        UUID item = drive(shop);
        String path = "suppliers/" + shop + "/items/" + item;
        assertThat(post(path + "/archive", "version", "0", "archived", "true")).hasStatus(HttpStatus.FOUND);
        assertThat(post(path + "/archive", "version", "0", "archived", "true")).hasStatus(HttpStatus.CONFLICT);

        assertThat(text(path, "#sentence")).startsWith("No longer to be had.");
        assertThat(get("suppliers/" + shop).select("details summary").eachText())
                .contains("No longer to be had: 1");
        assertThat(post(path + "/archive", "version", "1", "archived", "false")).hasStatus(HttpStatus.FOUND);
        assertThat(catalogue.get(production.id, item).archived()).isFalse();
        assertThat(onRecord())
                .containsExactly("supplier.added", "catalogue.added", "catalogue.archived", "catalogue.restored");
    }

    @Test
    void everyoneReadsAndTheOfficeChanges() throws Exception {
        UUID shop = shop();
        String item = "suppliers/" + shop + "/items/" + drive(shop);
        for (Role role : Role.values()) {
            boolean may = role == Role.OFFICE || role == Role.ADMINISTRATOR;
            for (String page : List.of("suppliers", "suppliers/" + shop, item)) {
                assertThat(mvc.get().uri(production.path(page)).with(production.signedInAs(role)))
                        .as("%s reads %s", role, page)
                        .hasStatusOk();
            }
            for (String form : List.of(
                    "suppliers/new",
                    "suppliers/" + shop + "/edit",
                    "suppliers/" + shop + "/contacts/new",
                    "suppliers/" + shop + "/items/new",
                    item + "/edit",
                    item + "/price")) {
                assertThat(mvc.get().uri(production.path(form)).with(production.signedInAs(role)))
                        .as("%s opens %s", role, form)
                        .hasStatus(may ? HttpStatus.OK : HttpStatus.FORBIDDEN);
            }
        }
    }

    @Test
    void anotherProductionsSuppliersAreUnknown() {
        UUID shop = shop();
        UUID item = drive(shop);
        TestProduction other = fixtures.production();
        UUID otherShop = suppliers.add(
                other.as(Role.OFFICE), suppliers.list(production.id).get(0).details());
        for (String page : List.of(
                "suppliers/" + shop,
                "suppliers/" + shop + "/edit",
                "suppliers/" + shop + "/contacts/new",
                "suppliers/" + shop + "/items/new",
                "suppliers/" + shop + "/items/" + item,
                "suppliers/" + otherShop + "/items/" + item,
                "suppliers/" + otherShop + "/items/" + item + "/price")) {
            assertThat(mvc.get().uri(other.path(page)).with(other.signedInAs(Role.ADMINISTRATOR)))
                    .as(page)
                    .hasStatus(HttpStatus.NOT_FOUND);
        }
        assertThat(mvc.post()
                        .uri(other.path("suppliers/" + otherShop + "/items/" + item + "/archive"))
                        .with(other.signedInAs(Role.ADMINISTRATOR))
                        .param("version", "0"))
                .hasStatus(HttpStatus.NOT_FOUND);
    }

    private MvcTestResult save(String page, String name, String usual, String slow, String delivery, int version) {
        return post(
                page,
                "name",
                name,
                "country",
                "PT",
                "workingDays",
                "MONDAY",
                "workingDays",
                "TUESDAY",
                "orderCutOff",
                "15:30",
                "leadTimeWorkingDays",
                usual,
                "slowLeadTimeWorkingDays",
                slow,
                "deliveryPrice",
                delivery,
                "note",
                " by telephone ",
                "version",
                Integer.toString(version));
    }

    private MvcTestResult item(String page, String kind, String capacityGb, int version) {
        return post(
                page,
                "kind",
                kind,
                "model",
                "shuttle drive",
                "capacityGb",
                capacityGb,
                "readMbPerSecond",
                "520.5",
                "writeMbPerSecond",
                "",
                "packSize",
                "2",
                "version",
                Integer.toString(version));
    }

    private MvcTestResult price(
            String item, String price, String hireWeek, String hireWeeks, LocalDate validFrom, int seen) {
        return post(
                item + "/price",
                "itemPrice",
                price,
                "hireWeekPrice",
                hireWeek,
                "hireMinimumWeeks",
                hireWeeks,
                "validFrom",
                validFrom.toString(),
                "prices",
                Integer.toString(seen));
    }

    private MvcTestResult post(String page, String... params) {
        var request = mvc.post().uri(production.path(page)).with(production.signedInAs(Role.OFFICE));
        for (int i = 0; i < params.length; i += 2) {
            request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    private static String error(MvcTestResult wrong, String field) throws Exception {
        assertThat(wrong).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return Jsoup.parse(text(wrong)).select("#" + field + "-error").text();
    }

    private String text(String page, String selector) throws Exception {
        return get(page).select(selector).text();
    }

    private Document get(String page) throws Exception {
        MvcTestResult result = mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(result).hasStatusOk();
        return Jsoup.parse(text(result));
    }

    private static String text(MvcTestResult result) {
        return new String(result.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private List<String> onRecord() {
        return jdbc.sql("""
                        select action from audit_act
                        where production_id = ? and (action like 'supplier.%' or action like 'catalogue.%') order by id
                        """).param(production.id).query(String.class).list();
    }
}
