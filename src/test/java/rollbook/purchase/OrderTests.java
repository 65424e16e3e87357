package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.forecast.StorageShow;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.supplier.DeliveredTo;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** What may be done with an order by whom and when. */
@PortalTest
class OrderTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Orders orders;

    @Autowired
    Receipts receipts;

    @Autowired
    Limits limits;

    private StorageShow show;
    private Membership office;
    private UUID leg;
    private UUID item;
    private TestOrders steps;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        office = show.production.as(Role.OFFICE);
        leg = show.keptLeg("SHUTTLE");
        item = show.supply(leg, 2000, 1, 2, 3, 18_050);
        steps = new TestOrders(orders, receipts, office);
    }

    private Membership as(Role role) {
        return show.production.as(role);
    }

    private int version(UUID order) {
        return steps.get(order).version();
    }

    private static NewOrder order(NewOrder.Line... lines) {
        return new NewOrder(DeliveredTo.OFFICE, null, null, "", PurchaseOrder.Source.HAND, "", List.of(lines));
    }

    private NewOrder.Line drives(@Nullable UUID line, int items, @Nullable Long unit) {
        return new NewOrder.Line(line, item, null, "", items, null, unit, leg);
    }

    @Test
    void ordersAreNumberedInEachProductionAndKeepThePriceOfTheDay() {
        UUID first = orders.propose(as(Role.WRANGLER), order(drives(null, 5, null)));
        UUID second = orders.propose(as(Role.POST), order(drives(null, 1, 17_000L)));
        StorageShow other = new StorageShow(fixtures, jdbc);
        UUID elsewhere = other.supply(other.keptLeg("SHUTTLE"), 2000, 1, 2, 3, 18_050);
        UUID theirs =
                new TestOrders(orders, receipts, other.production.as(Role.OFFICE)).proposed(elsewhere, null, 1, "");

        jdbc.sql("""
                        insert into supplier_price (item_id, number, entered_at, valid_from, item_minor_units)
                        values (?, 2, now(), current_date, 99900)
                        """).param(item).update();
        assertThat(steps.get(first).number()).isEqualTo(1);
        assertThat(steps.get(first).totalMinorUnits()).isEqualTo(5 * 18_050L);
        assertThat(steps.get(second).number()).isEqualTo(2);
        assertThat(steps.get(second).totalMinorUnits()).isEqualTo(17_000L);
        assertThat(orders.get(other.production.id, theirs).number()).isEqualTo(1);
        assertThatThrownBy(() -> orders.get(show.production.id, theirs)).isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> orders.approve(office, theirs, 0)).isInstanceOf(NotFoundException.class);
    }

    @Test
    void nothingOfAnotherProductionIsOrdered() {
        StorageShow other = new StorageShow(fixtures, jdbc);
        UUID theirLeg = other.keptLeg("SHUTTLE");
        UUID theirItem = other.supply(theirLeg, 2000, 1, 2, 3, 18_050);

        assertThatThrownBy(
                        () -> orders.propose(office, order(NewOrder.Line.ofCatalogue(theirItem, 1, null, null, null))))
                .isInstanceOf(NotFoundException.class);
        assertThatThrownBy(
                        () -> orders.propose(office, order(NewOrder.Line.ofCatalogue(item, 1, null, null, theirLeg))))
                .isInstanceOf(NotFoundException.class);
        UUID mine = steps.proposed(item, leg, 1, "");
        UUID theirs =
                new TestOrders(orders, receipts, other.production.as(Role.OFFICE)).proposed(theirItem, null, 1, "");
        UUID theirLine = orders.get(other.production.id, theirs).lines().get(0).id();
        assertThatThrownBy(() -> orders.change(office, mine, order(drives(theirLine, 7, null)), version(mine)))
                .isInstanceOf(NotFoundException.class);
        assertThat(orders.get(other.production.id, theirs).items()).isEqualTo(1);
        assertThat(orders.list(show.production.id)).hasSize(1);
        assertThat(steps.get(mine).items()).as("nothing of the change is kept").isEqualTo(1);
    }

    @Test
    void itGoesStepByStepAndEachStandsOnRecordWithItsPerson() {
        UUID order = orders.propose(as(Role.WRANGLER), order(drives(null, 5, null)));
        orders.approve(office, order, version(order));
        orders.place(office, order, show.date(-3), show.date(1), version(order));
        assertThat(orders.expected(show.production.id))
                .extracting(PurchaseOrder::id)
                .containsExactly(order);
        steps.came(order, 3, show.date(-1));
        assertThat(steps.get(order).state()).isEqualTo(State.PART_ARRIVED);
        assertThat(steps.get(order).left()).isEqualTo(2);
        steps.came(order, 2, show.date(0));
        assertThat(steps.get(order).state()).isEqualTo(State.ARRIVED);
        assertThat(orders.expected(show.production.id)).isEmpty();
        orders.close(office, order, version(order));

        assertThat(steps.get(order).state()).isEqualTo(State.CLOSED);
        assertThat(steps.get(order).steps())
                .extracting(OrderStep::kind, OrderStep::byName)
                .containsExactly(
                        tuple(OrderStep.Kind.PROPOSED, "WRANGLER"),
                        tuple(OrderStep.Kind.APPROVED, "OFFICE"),
                        tuple(OrderStep.Kind.PLACED, "OFFICE"),
                        tuple(OrderStep.Kind.CLOSED, "OFFICE"));
        assertThat(onRecord())
                .containsExactly(
                        "order.proposed",
                        "order.approved",
                        "order.placed",
                        "order.received",
                        "order.received",
                        "order.closed");
    }

    @Test
    void aStepOutOfItsTurnIsRefused() {
        UUID order = steps.proposed(item, leg, 5, "");
        refused("purchase.refused.state", () -> orders.place(office, order, show.today, show.today, version(order)));
        refused("purchase.refused.state", () -> orders.close(office, order, version(order)));
        refused("purchase.refused.state", () -> orders.promise(office, order, show.today, "", version(order)));
        refused("purchase.refused.state", () -> steps.came(order, 1, show.today));
        orders.approve(office, order, version(order));
        refused("purchase.refused.state", () -> orders.approve(office, order, version(order)));
        refused("purchase.refused.state", () -> orders.decline(office, order, "late", version(order)));
        refused(
                "purchase.refused.state",
                () -> orders.change(office, order, order(drives(null, 1, null)), version(order)));
        orders.place(office, order, show.today, show.today, version(order));
        refused("purchase.refused.state", () -> orders.close(office, order, version(order)));
        steps.cancel(order);
        refused("purchase.refused.state", () -> orders.cancel(office, order, "again", version(order)));
        refused("purchase.refused.state", () -> steps.came(order, 1, show.today));
    }

    @Test
    void itIsApprovedUpToTheLimitOfTheRole() {
        limits.change(as(Role.ADMINISTRATOR), new ApprovalLimits(90_250L, 18_050L, 0L, ApprovalLimits.NOT_KEPT));
        UUID five = steps.proposed(item, leg, 5, "");
        UUID six = steps.proposed(item, leg, 6, "");
        UUID one = steps.proposed(item, leg, 1, "");

        refused("purchase.refused.over-limit", () -> orders.approve(as(Role.WRANGLER), five, version(five)));
        orders.approve(office, five, version(five));
        refused("purchase.refused.over-limit", () -> orders.approve(office, six, version(six)));
        orders.approve(as(Role.ADMINISTRATOR), six, version(six));
        refused("purchase.refused.over-limit", () -> orders.approve(as(Role.POST), one, version(one)));
        orders.approve(as(Role.WRANGLER), one, version(one));
        assertThat(orders.list(show.production.id))
                .extracting(PurchaseOrder::state)
                .containsOnly(State.APPROVED);
    }

    @Test
    void theDeliveryCountsTowardsTheLimit() {
        limits.change(as(Role.ADMINISTRATOR), new ApprovalLimits(90_250L, 0L, 0L, ApprovalLimits.NOT_KEPT));
        jdbc.sql("update supplier_supplier set delivery_minor_units = 1 where production_id = ?")
                .param(show.production.id)
                .update();
        UUID five = steps.proposed(item, leg, 5, "");
        assertThat(steps.get(five).totalMinorUnits()).isEqualTo(90_251L);
        refused("purchase.refused.over-limit", () -> orders.approve(office, five, version(five)));
    }

    @Test
    void limitsAreChangedByOnePersonAtATime() {
        assertThat(limits.of(show.production.id)).isEqualTo(ApprovalLimits.USUAL);
        limits.change(as(Role.ADMINISTRATOR), new ApprovalLimits(100L, 0L, 0L, ApprovalLimits.NOT_KEPT));
        refused(
                "purchase.refused.limits-changed",
                () -> limits.change(as(Role.ADMINISTRATOR), new ApprovalLimits(null, 0L, 0L, ApprovalLimits.NOT_KEPT)));
        limits.change(as(Role.ADMINISTRATOR), new ApprovalLimits(200L, 0L, 50L, 0));
        assertThat(limits.of(show.production.id)).isEqualTo(new ApprovalLimits(200L, 0L, 50L, 1));
    }

    @Test
    void whatIsInNoCatalogueOrHasNoPriceIsNotApproved() {
        UUID words = orders.propose(
                office, order(NewOrder.Line.inWords(MediaKind.READER, "further reader", 2, 3, 6_000L, null)));
        assertThat(steps.get(words).totalMinorUnits()).isEqualTo(36_000L);
        refused("purchase.refused.incomplete", () -> orders.approve(office, words, version(words)));

        UUID hired = orders.propose(office, order(NewOrder.Line.ofCatalogue(item, 1, 4, null, null)));
        assertThat(steps.get(hired).totalMinorUnits())
                .as("it has no price for hire")
                .isNull();
        refused("purchase.refused.incomplete", () -> orders.approve(office, hired, version(hired)));
        UUID line = steps.get(hired).lines().get(0).id();
        orders.change(
                office, hired, order(new NewOrder.Line(line, item, null, "", 1, 4, 4_500L, null)), version(hired));
        orders.approve(office, hired, version(hired));
        assertThat(steps.get(hired).totalMinorUnits()).isEqualTo(18_000L);
    }

    @Test
    void anOrderGoesToOneSupplier() {
        UUID other = show.supply(show.keptLeg("ARRAY"), 8000, 1, 2, 3, 50_000);
        refused(
                "purchase.refused.suppliers",
                () -> orders.propose(
                        office, order(drives(null, 1, null), NewOrder.Line.ofCatalogue(other, 1, null, null, null))));
    }

    @Test
    void linesAreChangedTakenOutAndAddedWhileItIsProposed() {
        UUID order = orders.propose(office, order(drives(null, 5, null), drives(null, 2, null)));
        OrderLine first = steps.get(order).lines().get(0);
        orders.change(office, order, order(drives(first.id(), 4, null), drives(null, 9, 1L)), version(order));

        assertThat(steps.get(order).lines()).extracting(OrderLine::items).containsExactly(4, 9);
        assertThat(steps.get(order).lines().get(0).id()).isEqualTo(first.id());
        assertThat(steps.get(order).history().last(OrderStep.Kind.CHANGED)).isPresent();
    }

    @Test
    void aLineThatCameByMistakeCanStillBeTakenOut() {
        UUID order = orders.propose(office, order(drives(null, 5, null), drives(null, 2, null)));
        orders.approve(office, order, version(order));
        orders.place(office, order, show.date(-3), show.date(1), version(order));
        UUID receipt = steps.came(order, 3, show.date(0));
        refused("purchase.refused.rests-on-it", () -> steps.takeBack(order, OrderStep.Kind.PLACED));
        steps.takeBack(order, receipt);
        steps.takeBack(order, OrderStep.Kind.PLACED);
        steps.takeBack(order, OrderStep.Kind.APPROVED);
        OrderLine second = steps.get(order).lines().get(1);
        orders.change(office, order, order(drives(second.id(), 2, null)), version(order));

        assertThat(steps.get(order).lines()).extracting(OrderLine::items).containsExactly(2);
        assertThat(steps.get(order).state()).isEqualTo(State.PROPOSED);
    }

    @Test
    void whoTookAStepTakesItBackAndTheOffice() {
        limits.change(as(Role.ADMINISTRATOR), new ApprovalLimits(null, null, null, ApprovalLimits.NOT_KEPT));
        UUID order = steps.proposed(item, leg, 1, "");
        orders.approve(as(Role.WRANGLER), order, version(order));
        refused("purchase.refused.not-yours", () -> orders.takeBack(as(Role.POST), order, 2, version(order)));
        orders.takeBack(as(Role.WRANGLER), order, 2, version(order));
        orders.approve(as(Role.WRANGLER), order, version(order));
        orders.takeBack(office, order, 4, version(order));
        assertThat(steps.get(order).state()).isEqualTo(State.PROPOSED);
        refused("purchase.refused.rests-on-it", () -> orders.takeBack(office, order, 4, version(order)));
        refused("purchase.refused.rests-on-it", () -> orders.takeBack(office, order, 1, version(order)));
        assertThat(onRecord()).filteredOn("order.step-taken-back"::equals).hasSize(2);
    }

    @Test
    void aProposalIsWithdrawnByWhoMayProposeAndAnApprovedOrderByTheOfficeOnly() {
        UUID order = steps.proposed(item, leg, 1, "");
        orders.approve(office, order, version(order));
        refused("purchase.refused.office-cancels", () -> orders.cancel(as(Role.POST), order, "no", version(order)));
        steps.takeBack(order, OrderStep.Kind.APPROVED);
        orders.cancel(as(Role.POST), order, "no", version(order));
        assertThat(steps.get(order).state()).isEqualTo(State.CANCELLED);
    }

    @Test
    void whatBecameOfAnOrderIsNeverChanged() {
        UUID order = steps.proposed(item, leg, 1, "");
        assertThatThrownBy(() -> jdbc.sql("update purchase_step set reason = 'x' where order_id = ?")
                        .param(order)
                        .update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("never changed or deleted");
        assertThatThrownBy(() -> jdbc.sql("delete from purchase_step where order_id = ?")
                        .param(order)
                        .update())
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void whoSawAnOlderStateIsRefused() {
        UUID order = steps.proposed(item, leg, 2, "");
        int seen = version(order);
        orders.approve(office, order, seen);
        refused("purchase.refused.changed", () -> orders.cancel(office, order, "no", seen));
        refused("purchase.refused.changed", () -> orders.takeBack(office, order, 2, seen));
        assertThat(steps.get(order).state()).isEqualTo(State.APPROVED);
    }

    @Test
    void ofTwoPeopleAtOnceOneApprovesAndOneIsRefused() throws Exception {
        UUID order = steps.proposed(item, leg, 2, "");
        int seen = version(order);
        List<Boolean> done = atOnce(
                () -> orders.approve(office, order, seen), () -> orders.decline(office, order, "too dear", seen));
        assertThat(done).containsExactlyInAnyOrder(true, false);
        assertThat(steps.get(order).steps()).hasSize(2);
    }

    @Test
    void ordersOfOneMomentGetNumbersOfTheirOwn() throws Exception {
        assertThat(atOnce(() -> steps.proposed(item, leg, 1, ""), () -> steps.proposed(item, leg, 1, "")))
                .containsExactly(true, true);
        assertThat(orders.list(show.production.id))
                .extracting(PurchaseOrder::number)
                .containsExactly(1, 2);
    }

    /** Whether each was done; a refusal is a no, and nothing else may happen. */
    private static List<Boolean> atOnce(Runnable... acts) throws Exception {
        CyclicBarrier together = new CyclicBarrier(acts.length);
        ExecutorService people = Executors.newFixedThreadPool(acts.length);
        try {
            List<Future<Boolean>> answers = new ArrayList<>();
            for (Runnable act : acts) {
                answers.add(people.submit((Callable<Boolean>) () -> {
                    together.await();
                    act.run();
                    return true;
                }));
            }
            List<Boolean> done = new ArrayList<>();
            for (Future<Boolean> answer : answers) {
                try {
                    done.add(answer.get());
                } catch (ExecutionException refused) {
                    assertThat(refused.getCause()).isInstanceOf(Refusal.class);
                    done.add(false);
                }
            }
            return done;
        } finally {
            people.shutdown();
        }
    }

    private static void refused(String key, Runnable act) {
        assertThatThrownBy(act::run)
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo(key));
    }

    private List<String> onRecord() {
        return jdbc.sql("select action from audit_act where production_id = ? and action like 'order.%' order by id")
                .param(show.production.id)
                .query(String.class)
                .list();
    }
}
