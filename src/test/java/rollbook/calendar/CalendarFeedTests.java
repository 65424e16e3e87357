package rollbook.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.component.VEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.forecast.Forecasts;
import rollbook.forecast.StorageOutlook;
import rollbook.forecast.StorageShow;
import rollbook.production.Role;
import rollbook.purchase.Orders;
import rollbook.purchase.Receipts;
import rollbook.purchase.TestOrders;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

/** What is due, as a calendar program reads it, and who may read it. That of re-checks stands in {@code RechecksTests}. */
@PortalTest
class CalendarFeedTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    StatementCount statements;

    @Autowired
    Forecasts forecasts;

    @Autowired
    Orders allOrders;

    @Autowired
    Receipts receipts;

    private StorageShow show;
    private final Map<UUID, UUID> supplied = new HashMap<>();
    private TestOrders orders;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        orders = new TestOrders(allOrders, receipts, show.production.as(Role.OFFICE));
    }

    @Test
    void theLastDayToOrderIsThatOfTheStoragePageWhileTheFlagIsUp() throws Exception {
        UUID leg = runShort("SHUTTLE, to; post");
        StorageOutlook.Leg outlook =
                forecasts.latest(show.production.id).orElseThrow().legs().get(0);
        assertThat(outlook.orderBy()).as("an order helps").isNotNull();
        String address = make(Role.OFFICE);

        VEvent event = only(address);
        assertThat(event.getUid().getValue()).isEqualTo("order-by-" + leg + "@rollbook");
        assertThat(date(event)).isEqualTo(outlook.orderBy());
        assertThat(event.getSummary().getValue())
                .matches("Last day to order (1 item|\\d+ items) for SHUTTLE, to; post");
        assertThat(event.getDescription().getValue())
                .isEqualTo(outlook.sentence())
                .contains("Order ");
        assertThat(event.getUrl().getValue()).isEqualTo("http://localhost" + show.production.path("storage"));

        jdbc.sql("""
                        insert into forecast_flag_act (flag_id, number, at, act, by_id, by_name, reason, until)
                        select id, 2, now(), 'SNOOZED', ?, 'Office', 'wait', ? from forecast_flag where production_id = ?
                        """)
                .params(show.production.as(Role.OFFICE).personId(), show.date(3), show.production.id)
                .update();
        assertThat(events(address)).as("put off").isEmpty();
    }

    @Test
    void mediaOnOrderStandsThereUntilAllOfItHasCome() throws Exception {
        UUID leg = show.keptLeg("SHUTTLE");
        UUID order = order(leg, 5, 4, "by telephone; ask for Wren,\r\nnot for Hale");
        String address = make(Role.OFFICE);

        VEvent before = only(address);
        assertThat(before.getUid().getValue()).isEqualTo("arrival-" + order + "@rollbook");
        assertThat(date(before)).isEqualTo(show.date(4));
        assertThat(before.getSummary().getValue()).isEqualTo("5 items of order 1 expected");
        assertThat(before.getDescription().getValue())
                .matches(
                        "(?s)5 of 5 × test model for SHUTTLE still to come\\.\\R+Ordered on .* from Supplier 1\\.\\R+by telephone; ask for Wren,\\R+not for Hale");
        assertThat(before.getUrl().getValue()).endsWith(show.production.path("orders/" + order));

        orders.came(order, 3, show.date(0));
        VEvent partly = only(address);
        assertThat(partly.getUid()).isEqualTo(before.getUid());
        assertThat(partly.getSummary().getValue()).isEqualTo("2 items of order 1 expected");
        assertThat(partly.getSequence().getValue())
                .isGreaterThan(before.getSequence().getValue());

        orders.came(order, 2, show.date(0));
        assertThat(events(address)).isEmpty();
    }

    @Test
    void ofAnOrderEverybodyReadsTheSameAsOnItsPage() throws Exception {
        UUID order = order(show.keptLeg("SHUTTLE"), 5, 4, "for the insurer");
        VEvent event = only(make(Role.READER));
        assertThat(event.getDescription().getValue()).contains("Supplier 1", "for the insurer");
        assertThat(event.getUrl().getValue()).endsWith(show.production.path("orders/" + order));
        assertThat(mvc.get().uri(show.production.path("orders/" + order)).with(show.production.signedInAs(Role.READER)))
                .bodyText()
                .contains("Supplier 1", "for the insurer");
    }

    @Test
    void aHiredItemStandsThereOnTheDayItGoesBackWhileItIsHere() throws Exception {
        UUID drive = show.production.item("DRIVE-1", "DRIVE", show.production.place("Office", false), null);
        show.hiredUntil(drive, -2);
        String address = make(Role.WRANGLER);

        VEvent late = only(address);
        assertThat(late.getUid().getValue()).isEqualTo("hire-return-" + drive + "@rollbook");
        assertThat(date(late)).isEqualTo(show.date(-2));
        assertThat(late.getSummary().getValue()).isEqualTo("DRIVE-1 goes back");
        assertThat(late.getDescription().getValue()).isEqualTo("Hired until this day: DRIVE-1.");
        assertThat(late.getUrl().getValue()).endsWith(show.production.path("media/" + drive));

        jdbc.sql("update inventory_item set supplier = 'Larkfield, Hire' where id = ?")
                .param(drive)
                .update();
        show.hiredUntil(drive, 9);
        VEvent extended = only(address);
        assertThat(extended.getUid()).isEqualTo(late.getUid());
        assertThat(date(extended)).isEqualTo(show.date(9));
        assertThat(extended.getSummary().getValue()).isEqualTo("DRIVE-1 goes back to Larkfield, Hire");

        show.condition(drive, "RETURNED");
        assertThat(events(address)).isEmpty();
    }

    @Test
    void whatGoesBackToASupplierOnOneDayIsOneEntryThatMovesWithTheHire() throws Exception {
        UUID place = show.production.place("Office", false);
        UUID first = show.production.item("DRIVE-1", "DRIVE", place, null);
        UUID second = show.production.item("DRIVE-2", "DRIVE", place, null);
        UUID elsewhere = show.production.item("DRIVE-3", "DRIVE", place, null);
        for (UUID drive : List.of(second, elsewhere, first)) {
            show.hiredUntil(drive, 5);
        }
        jdbc.sql(
                        "update inventory_item set supplier = case when id = ? then 'Larkfield' else 'Ottermere' end where id in (?, ?, ?)")
                .params(elsewhere, first, second, elsewhere)
                .update();
        String address = make(Role.OFFICE);
        assertThat(events(address))
                .extracting(event -> event.getSummary().getValue())
                .containsExactlyInAnyOrder("DRIVE-3 goes back to Larkfield", "2 hired items go back to Ottermere");
        assertThat(together(address).getDescription().getValue()).isEqualTo("Hired until this day: DRIVE-1, DRIVE-2.");
        assertThat(together(address).getUrl().getValue()).endsWith(show.production.path("media"));
        String id = together(address).getUid().getValue();

        show.hiredUntil(first, 12);
        show.hiredUntil(second, 12);
        assertThat(together(address).getUid().getValue()).isEqualTo(id);
        assertThat(date(together(address))).isEqualTo(show.date(12));
    }

    private VEvent together(String address) throws IOException {
        return events(address).stream()
                .filter(event -> event.getSummary().getValue().startsWith("2 hired items"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whileNothingChangesTheAnswerIsTheSameToTheByteAndIsLeftOut() throws Exception {
        runShort("SHUTTLE");
        order(show.keptLeg("ARRAY"), 5, 4, "");
        String address = make(Role.OFFICE);
        MvcTestResult first = get(address);
        assertThat(get(address).getResponse().getContentAsByteArray())
                .isEqualTo(first.getResponse().getContentAsByteArray())
                .isNotEmpty();
        String tag = Objects.requireNonNull(first.getResponse().getHeader(HttpHeaders.ETAG));
        assertThat(mvc.get().uri(address).header(HttpHeaders.IF_NONE_MATCH, tag))
                .hasStatus(304)
                .body()
                .isEmpty();
        show.hiredUntil(show.production.item("DRIVE-9", "DRIVE", show.production.place("Truck", false), null), 3);
        assertThat(mvc.get().uri(address).header(HttpHeaders.IF_NONE_MATCH, tag))
                .hasStatusOk();
    }

    @Test
    void itIsReadWithoutASessionAndKeptByNobodyInBetween() throws Exception {
        String address = make(Role.OFFICE);
        MvcTestResult answer = get(address);
        assertThat(answer).hasContentType("text/calendar;charset=UTF-8");
        assertThat(answer.getResponse().getHeader(HttpHeaders.CACHE_CONTROL)).contains("private");
        assertThat(answer.getResponse().getHeaderNames()).doesNotContain(HttpHeaders.SET_COOKIE);
        assertThat(answer.getRequest().getSession(false)).isNull();
        assertThat(mvc.head().uri(address)).hasStatusOk();
        assertThat(mvc.post().uri(address)).hasStatus(403);
    }

    @Test
    void theAddressIsShownOnceAndTheDatabaseDoesNotTellIt() throws Exception {
        String address = make(Role.OFFICE);
        String secret = address.replaceAll(".*/calendar/(.*)\\.ics", "$1");
        assertThat(secret).as("256 bits in base64url").matches("[\\w-]{43}");
        assertThat(page(Role.OFFICE).outerHtml()).doesNotContain(secret).contains("Last read", "not yet");
        assertThat(jdbc.sql("select f::text from calendar_feed f where production_id = ?")
                        .param(show.production.id)
                        .query(String.class)
                        .single())
                .doesNotContain(secret);
        assertThat(jdbc.sql("select a::text from audit_act a where production_id = ?")
                        .param(show.production.id)
                        .query(String.class)
                        .list())
                .anyMatch(act -> act.contains("calendar.address-made"))
                .noneMatch(act -> act.contains(secret));
        get(address);
        assertThat(page(Role.OFFICE).select("#fetched").text())
                .contains("(Lisbon)")
                .doesNotContain("not yet");
    }

    @Test
    void aNewAddressReplacesTheOldOneAndARevokedOneAnswersAsOneThatNeverWas() throws Exception {
        String first = make(Role.OFFICE);
        String second = make(Role.OFFICE);
        assertThat(second).isNotEqualTo(first);
        assertThat(mvc.get().uri(first)).hasStatus(404);
        assertThat(mvc.get().uri(second)).hasStatusOk();

        assertThat(post("calendar/revocation", Role.OFFICE, present(Role.OFFICE)))
                .hasStatus(302)
                .hasRedirectedUrl(show.production.path("calendar"));
        MvcTestResult revoked = mvc.get().uri(second).exchange();
        MvcTestResult unknown =
                mvc.get().uri("/calendar/" + "x".repeat(43) + ".ics").exchange();
        MvcTestResult malformed = mvc.get().uri("/calendar/x.ics").exchange();
        assertThat(revoked).hasStatus(404);
        assertThat(unknown).hasStatus(404);
        assertThat(malformed).hasStatus(404);
        assertThat(revoked.getResponse().getContentAsString())
                .isEqualTo(unknown.getResponse().getContentAsString())
                .isEqualTo(malformed.getResponse().getContentAsString());
        assertThat(revoked.getResponse().getHeaderNames())
                .isEqualTo(unknown.getResponse().getHeaderNames())
                .doesNotContain(HttpHeaders.SET_COOKIE);
        assertThat(revoked.getRequest().getSession(false)).isNull();
        assertThat(page(Role.OFFICE).select("button").eachText()).contains("Make an address");
    }

    @Test
    void whoActsOnAnAddressThatHasChangedMeanwhileIsTold() throws Exception {
        make(Role.OFFICE);
        String old = present(Role.OFFICE);
        assertThat(post("calendar/address", Role.OFFICE, "")).hasStatus(409);
        String address = make(Role.OFFICE);
        assertThat(post("calendar/revocation", Role.OFFICE, old)).hasStatus(409);
        assertThat(post("calendar/address", Role.OFFICE, old)).hasStatus(409);
        assertThat(mvc.get().uri(address)).hasStatusOk();
        assertThat(post("calendar/revocation", Role.POST, present(Role.OFFICE)))
                .as("another person’s")
                .hasStatus(409);
        assertThat(post("calendar/revocation", Role.OFFICE, "x")).hasStatus(400);
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void everybodyHasTheirOwn(Role role) throws Exception {
        String own = make(role);
        for (Role other : Role.values()) {
            if (other != role) {
                make(other);
                assertThat(post("calendar/revocation", other, present(other))).hasStatus(302);
            }
        }
        assertThat(mvc.get().uri(own)).hasStatusOk();
    }

    @Test
    void nothingOfAnotherProductionIsInIt() throws Exception {
        runShort("SHUTTLE");
        order(show.keptLeg("ARRAY"), 5, 4, "");
        show.hiredUntil(show.production.item("DRIVE-9", "DRIVE", show.production.place("Truck", false), null), 3);
        String full = make(Role.OFFICE);
        StorageShow other = new StorageShow(fixtures, jdbc);
        String empty = make(other, Role.OFFICE);
        assertThat(events(full)).hasSize(3);
        assertThat(events(empty)).isEmpty();
    }

    @Test
    void itDiesWithTheMembershipAndDoesNotComeBackWithIt() throws Exception {
        String address = make(Role.WRANGLER);
        UUID person = show.production.as(Role.WRANGLER).personId();
        assertThat(mvc.post()
                        .uri(show.production.path("settings/people/" + person))
                        .with(show.production.signedInAs(Role.ADMINISTRATOR))
                        .param("before", "WRANGLER")
                        .param("roles", "POST"))
                .hasStatus(302);
        assertThat(mvc.get().uri(address)).as("with another role").hasStatusOk();

        assertThat(mvc.post()
                        .uri(show.production.path("settings/people/" + person + "/remove"))
                        .with(show.production.signedInAs(Role.ADMINISTRATOR)))
                .hasStatus(302);
        assertThat(mvc.get().uri(address)).hasStatus(404);
        join(person);
        assertThat(mvc.get().uri(address)).as("back again").hasStatus(404);
    }

    @Test
    void whoHasNoRoleLeftReadsNothingWhateverBecameOfTheAddress() throws Exception {
        String address = make(Role.WRANGLER);
        UUID person = show.production.as(Role.WRANGLER).personId();
        jdbc.sql("delete from production_member where person_id = ?")
                .param(person)
                .update();
        assertThat(mvc.get().uri(address)).hasStatus(404);
    }

    @Test
    void feedAndPageTakeFewStatementsHoweverMuchIsDue() throws Exception {
        runShort("SHUTTLE");
        UUID place = show.production.place("Truck", false);
        UUID leg = show.keptLeg("ARRAY");
        for (int i = 0; i < 20; i++) {
            order(leg, 2, i, "");
            hired("HIRED-" + i, place, i, "");
        }
        String address = make(Role.OFFICE);
        assertThat(statements.during(() -> get(address))).isLessThanOrEqualTo(12);
        assertThat(statements.during(() -> page(Role.OFFICE))).isLessThanOrEqualTo(12);
        assertThat(page(Role.OFFICE).select("tbody tr")).hasSize(41);
    }

    @Test
    void everyEntryHasAnIdOfItsOwn() throws Exception {
        long seed = 41;
        Random chance = new Random(seed);
        runShort("SHUTTLE");
        UUID leg = show.keptLeg("ARRAY");
        UUID place = show.production.place("Truck", false);
        for (int i = 0; i < 30; i++) {
            if (chance.nextBoolean()) {
                order(leg, 1 + chance.nextInt(3), chance.nextInt(3), "");
            } else {
                hired("HIRED-" + i, place, chance.nextInt(3), "Supplier " + i);
            }
        }
        List<VEvent> events = events(make(Role.OFFICE));
        Set<String> ids = new HashSet<>();
        events.forEach(event -> ids.add(event.getUid().getValue()));
        assertThat(events).as("seed %d", seed).hasSize(31);
        assertThat(ids).as("seed %d", seed).hasSize(31);
        assertThat(events.stream().map(CalendarFeedTests::date)).isSorted();
    }

    /** Ten days of 1,440 GB to come, and room for five of them: an order is needed, and in time within a few days. */
    private UUID runShort(String legName) {
        show.everyDayIsAWorkingDay();
        UUID leg = show.keptLeg(legName);
        show.drive("SHUTTLE-1", leg, 8_000);
        for (int number = 1; number <= 10; number++) {
            show.day(number, number, "PLANNED", 1000);
        }
        show.supply(leg, 2000, 1, 1, 2, 18_050);
        forecasts.compute(show.production.id);
        return leg;
    }

    private UUID order(UUID leg, int items, int inDays, String note) {
        UUID item = supplied.computeIfAbsent(leg, any -> show.supply(leg, 2000, 1, 1, 2, 18_050));
        return orders.placed(item, leg, items, show.date(0), show.date(inDays), note);
    }

    private void hired(String code, UUID place, int untilInDays, String supplier) {
        UUID item = show.production.item(code, "DRIVE", place, null);
        show.hiredUntil(item, untilInDays);
        jdbc.sql("update inventory_item set supplier = ? where id = ?")
                .params(supplier, item)
                .update();
    }

    private void join(UUID person) {
        jdbc.sql("insert into production_member (production_id, person_id, role) values (?, ?, 'WRANGLER')")
                .params(show.production.id, person)
                .update();
    }

    private String make(Role role) throws IOException {
        return make(show, role);
    }

    private String make(StorageShow where, Role role) throws IOException {
        MvcTestResult made = post(where, "calendar/address", role, present(where, role));
        assertThat(made).hasStatusOk();
        assertThat(made.getResponse().getHeader(HttpHeaders.CACHE_CONTROL)).contains("no-store");
        return Jsoup.parse(made.getResponse().getContentAsString())
                .select("#address")
                .text();
    }

    private MvcTestResult post(String page, Role role, String before) {
        return post(show, page, role, before);
    }

    private MvcTestResult post(StorageShow where, String page, Role role, String before) {
        return mvc.post()
                .uri(where.production.path(page))
                .with(where.production.signedInAs(role))
                .param("before", before)
                .exchange();
    }

    private String present(Role role) throws IOException {
        return present(show, role);
    }

    /** The id of the present address, empty for none. */
    private String present(StorageShow where, Role role) throws IOException {
        return page(where, role).select("input[name=before]").attr("value");
    }

    private Document page(Role role) throws IOException {
        return page(show, role);
    }

    private Document page(StorageShow where, Role role) throws IOException {
        MvcTestResult answer = mvc.get()
                .uri(where.production.path("calendar"))
                .with(where.production.signedInAs(role))
                .exchange();
        assertThat(answer).hasStatusOk();
        return Jsoup.parse(answer.getResponse().getContentAsString());
    }

    private MvcTestResult get(String address) {
        MvcTestResult answer = mvc.get().uri(address).exchange();
        assertThat(answer).hasStatusOk();
        return answer;
    }

    private List<VEvent> events(String address) throws IOException {
        String text = new String(get(address).getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
        return CalendarTextTests.read(text).getEvents();
    }

    private VEvent only(String address) throws IOException {
        List<VEvent> events = events(address);
        assertThat(events).hasSize(1);
        return events.get(0);
    }

    private static LocalDate date(VEvent event) {
        var date = event.getDateStart().getValue().getRawComponents();
        return LocalDate.of(date.getYear(), date.getMonth(), date.getDate());
    }
}
