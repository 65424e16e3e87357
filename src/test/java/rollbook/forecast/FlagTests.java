package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
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
import rollbook.ordering.Flag;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.Orders;
import rollbook.purchase.Receipts;
import rollbook.purchase.TestOrders;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.web.Refusal;

/** A pool that is full tomorrow: nobody needs a fine calculation to see that an order is due. */
@PortalTest
class FlagTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Jobs jobs;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ForecastRequests requests;

    @Autowired
    Forecasts forecasts;

    @Autowired
    FlagActs flags;

    @Autowired
    Orders allOrders;

    @Autowired
    Receipts receipts;

    private StorageShow show;
    private Membership office;
    private UUID leg;
    private UUID item;
    private TestOrders orders;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        show.everyDayIsAWorkingDay();
        office = show.production.as(Role.OFFICE);
        leg = show.keptLeg("SHUTTLE");
        show.drive("SHUTTLE-1", leg, 2_000);
        for (int number = 1; number <= 20; number++) {
            show.day(number, number, "PLANNED", 1000);
        }
        item = show.supply(leg, 2000, 1, 2, 3, 18_050);
        orders = new TestOrders(allOrders, receipts, office);
        compute();
    }

    private void compute() {
        requests.ask(show.production.id, Because.SCHEDULE);
        jobs.run();
    }

    private PoolFlag flag() {
        return flags.newestByLeg(show.production.id).get(leg);
    }

    private List<PoolFlag.Kind> acts() {
        return flag().acts().stream().map(PoolFlag.Act::kind).toList();
    }

    @Test
    void aForecastThatSeesTheNeedOpensAFlagOnceAndTellsTodaysPage() {
        compute();
        show.day(21, 21, "PLANNED", 1000);
        compute();

        assertThat(acts()).containsExactly(PoolFlag.Kind.OPENED);
        assertThat(flag().flag()).isEqualTo(new Flag(Flag.State.OPEN, show.today, null, null));
        assertThat(outlook().waitsForSomebody()).isTrue();
        assertThat(page().select("section .caution").text())
                .contains("An order is needed. The flag is up since", "Propose an order", "I see to it", "Put it off");
    }

    @Test
    void thePageSaysWhyThisOrderByThisDateAndWhatWaitingCosts() {
        Document page = page();

        assertThat(page.select("section dt").eachText())
                .contains("Why this date", "Why so many", "To the end of the show", "Risk with and without");
        assertThat(page.select("section caption").eachText()).contains("What each day of waiting costs");
    }

    @Test
    void itIsAcknowledgedOrPutOffAndThatIsTakenBack() {
        assertThat(post("acknowledgement", "lastAct", "1")).hasStatus(HttpStatus.FOUND);
        assertThat(flag().state()).isEqualTo(Flag.State.ACKNOWLEDGED);
        assertThat(page().select("section .caution").text()).contains("sees to it.", "Take that back");

        assertThat(snooze("rain on the whole coast", show.date(3), 2)).hasStatus(HttpStatus.FOUND);
        assertThat(flag().flag().snoozedUntil()).isEqualTo(show.date(3));
        assertThat(outlook().waitsForSomebody()).isFalse();
        assertThat(page().select("section .caution").text()).contains("rain on the whole coast");
        compute();
        assertThat(flag().state()).as("the forecast leaves it alone until then").isEqualTo(Flag.State.SNOOZED);

        assertThat(post("reopening", "lastAct", "3")).hasStatus(HttpStatus.FOUND);
        assertThat(flag().state()).isEqualTo(Flag.State.OPEN);
        assertThat(acts())
                .containsExactly(
                        PoolFlag.Kind.OPENED,
                        PoolFlag.Kind.ACKNOWLEDGED,
                        PoolFlag.Kind.SNOOZED,
                        PoolFlag.Kind.REOPENED);
        assertThat(onRecord()).contains("flag.acknowledged", "flag.snoozed", "flag.reopened");
    }

    @Test
    void aSnoozeNeedsAReasonAndADateToCome() throws Exception {
        assertThat(snooze(" ", show.date(3), 1)).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        MvcTestResult past = snooze("later", show.date(0), 1);
        assertThat(past).hasStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        assertThat(Jsoup.parse(past.getResponse().getContentAsString())
                        .select("#until-error")
                        .text())
                .contains("after today");
        assertThat(acts()).containsExactly(PoolFlag.Kind.OPENED);
    }

    @Test
    void ofTwoPeopleAtOnceTheSecondIsRefused() {
        flags.acknowledge(office, flag().id(), 1);

        assertThatThrownBy(() -> flags.snooze(office, flag().id(), "I was quicker", show.date(3), 1))
                .isInstanceOf(Refusal.class);
        assertThat(acts()).hasSize(2);
    }

    @Test
    void onTheDateOfASnoozeItIsUpAgain() {
        flags.snooze(office, flag().id(), "later", show.date(3), 1);
        jdbc.sql("alter table forecast_flag_act disable trigger forecast_flag_act_immutable")
                .update();
        jdbc.sql("update forecast_flag_act set until = current_date - 1 where flag_id = ? and act = 'SNOOZED'")
                .param(flag().id())
                .update();
        jdbc.sql("alter table forecast_flag_act enable trigger forecast_flag_act_immutable")
                .update();
        compute();

        assertThat(acts()).endsWith(PoolFlag.Kind.SNOOZED, PoolFlag.Kind.WOKEN);
        assertThat(flag().state()).isEqualTo(Flag.State.OPEN);
    }

    @Test
    void anOrderClosesItAndOneThatIsTooSmallLetsTheForecastOpenTheNext() {
        UUID first = flag().id();
        UUID proposed = orders.proposed(item, leg, 1, "one drive");
        assertThat(flag().isOpen()).as("it isn’t ordered yet").isTrue();
        assertThat(page().select("section .lines").text()).contains("Order 1 waits for approval: 1 item of 2.00 TB.");
        allOrders.approve(office, proposed, orders.get(proposed).version());
        allOrders.place(
                office,
                proposed,
                show.date(0),
                show.date(1),
                orders.get(proposed).version());
        assertThat(acts()).endsWith(PoolFlag.Kind.CLOSED_BY_ORDER);
        assertThat(page().select("section .caution")).isEmpty();

        jobs.run();
        assertThat(flag().id()).as("one drive doesn't do").isNotEqualTo(first);
        assertThat(acts()).containsExactly(PoolFlag.Kind.OPENED);
    }

    @Test
    void anOrderThatIsEnoughLeavesItClosedAndTheForecastSeesItComing() {
        jdbc.sql(
                        "update supplier_supplier set slow_lead_time_working_days = lead_time_working_days where production_id = ?")
                .param(show.production.id)
                .update();
        orders.placed(item, leg, 60, show.date(-3), show.date(0), "plenty");
        jobs.run();

        assertThat(flag().state()).isEqualTo(Flag.State.CLOSED_BY_ORDER);
        assertThat(outlook().waitsForSomebody()).isFalse();
        assertThat(page().select("section .lines").text()).contains("Order 1: 60 items of 2.00 TB");
    }

    @Test
    void anOrderThatMayComeTooLateClosesItAndThePageSaysThatNoOtherOrderHelps() {
        // Today's orders are closed, at whatever hour this runs: another one would come no sooner.
        jdbc.sql("update supplier_supplier set order_cut_off = '00:00' where production_id = ?")
                .param(show.production.id)
                .update();
        orders.placed(item, leg, 60, show.date(-1), show.date(1), "plenty");
        jobs.run();

        assertThat(flag().state()).isEqualTo(Flag.State.CLOSED_BY_ORDER);
        assertThat(outlook().flag()).isEqualTo(OrderFlag.NO_HELP);
        assertThat(outlook().waitsForSomebody()).isTrue();
        assertThat(page().select("#sentence").text()).contains("Nothing that is ordered now comes in time");
    }

    @Test
    void whatIsPlentyClosesItWhenForecastsHaveSeenNoNeedForAWhile() {
        show.drive("SHUTTLE-2", leg, 900_000);
        compute();
        assertThat(flag().isOpen()).as("not at the first sight").isTrue();
        assertThat(flag().calmSince()).isEqualTo(show.today);

        jdbc.sql("update forecast_flag set calm_since = current_date - 30 where id = ?")
                .param(flag().id())
                .update();
        compute();
        assertThat(acts()).endsWith(PoolFlag.Kind.CLOSED_BY_FORECAST);
    }

    @Test
    void aLegThatIsRemovedTakesItsFlagAlongAndItsOrdersStay() {
        UUID order = orders.placed(item, leg, 1, show.date(0), show.date(1));
        jdbc.sql("delete from forecast_supply where leg_id = ?").param(leg).update();
        jdbc.sql("update inventory_item set leg_id = null where leg_id = ?")
                .param(leg)
                .update();
        jdbc.sql("delete from production_leg where id = ?").param(leg).update();

        assertThat(flags.newestByLeg(show.production.id)).isEmpty();
        assertThat(orders.get(order).lines().get(0).legId()).isNull();
        assertThat(orders.get(order).isAwaited()).isTrue();
    }

    @Test
    void whatBecameOfAFlagIsNeverChanged() {
        assertThatThrownBy(() -> jdbc.sql("update forecast_flag_act set reason = 'x' where flag_id = ?")
                        .param(flag().id())
                        .update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("never changed or deleted");
    }

    private StorageOutlook.Leg outlook() {
        return forecasts.latest(show.production.id).orElseThrow().legs().get(0);
    }

    private MvcTestResult snooze(String reason, LocalDate until, int lastAct) {
        return post("snooze", "reason", reason, "until", until.toString(), "lastAct", Integer.toString(lastAct));
    }

    private MvcTestResult post(String act, String... params) {
        var request = mvc.post()
                .uri(show.production.path("storage/flags/" + flag().id() + "/" + act))
                .with(show.production.signedInAs(Role.OFFICE));
        for (int i = 0; i < params.length; i += 2) {
            request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    private Document page() {
        MvcTestResult page = mvc.get()
                .uri(show.production.path("storage"))
                .with(show.production.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(page).hasStatusOk();
        return Jsoup.parse(
                new String(page.getResponse().getContentAsByteArray(), java.nio.charset.StandardCharsets.UTF_8));
    }

    private List<String> onRecord() {
        return jdbc.sql("select action from audit_act where production_id = ?")
                .param(show.production.id)
                .query(String.class)
                .list();
    }
}
