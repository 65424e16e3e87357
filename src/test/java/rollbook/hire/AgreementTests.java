package rollbook.hire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static rollbook.hire.HireScene.TODAY;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.Custody;
import rollbook.inventory.HireReturns;
import rollbook.inventory.Inventory;
import rollbook.inventory.ItemDetails;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.supplier.Suppliers;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

@PortalTest
class AgreementTests {
    private static final LocalDate DUE = TODAY.plusDays(5);

    @Autowired
    Fixtures fixtures;

    @Autowired
    Suppliers suppliers;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    AgreementBook book;

    @Autowired
    Agreements agreements;

    @Autowired
    Hires hires;

    @Autowired
    MediaItems items;

    @Autowired
    Inventory inventory;

    @Autowired
    Custody custody;

    @Autowired
    HireReturns calendar;

    private HireScene scene;
    private TestProduction production;
    private Membership office;
    private UUID one;
    private UUID other;

    @BeforeEach
    void hireTwoDrives() {
        scene = new HireScene(fixtures, suppliers, jdbc);
        production = scene.production;
        office = scene.office;
        one = scene.hired("DRIVE-1", "DRIVE", TODAY.plusDays(1));
        other = scene.hired("DRIVE-2", "DRIVE", null);
    }

    private Hired hired(UUID item) {
        return hires.get(production.id, office.zone(), item);
    }

    private MediaItem item(UUID id) {
        return items.get(production.id, id);
    }

    @Test
    void whatIsAgreedIsWrittenToTheInventoryAndToTheRecord() {
        UUID agreement = book.agree(office, scene.terms(DUE, one, other));

        for (UUID id : List.of(one, other)) {
            assertThat(item(id).supplier()).isEqualTo("Hire house");
            assertThat(item(id).costMinorUnits()).isEqualTo(6_000);
            assertThat(item(id).hiredUntil()).isEqualTo(DUE);
        }
        assertThat(calendar.of(production.id))
                .as("the calendar tells the agreed date")
                .allSatisfy(due -> assertThat(due.hiredUntil()).isEqualTo(DUE))
                .hasSize(2);
        assertThat(agreements.get(production.id, agreement).code()).isEqualTo("HIRE-1");
        assertThat(onRecord()).contains("hire.agreed HIRE-1", "item.hired DRIVE-1", "item.hired DRIVE-2");
        // 19 days from two weeks ago to the due date in five days: three weeks begun at 60.00.
        assertThat(hires.costs(production.id, office.zone(), TODAY)).hasSize(2).allSatisfy(cost -> {
            assertThat(cost.agreementCode()).isEqualTo("HIRE-1");
            assertThat(cost.accruedMinorUnits()).isEqualTo(12_000);
            assertThat(cost.committedMinorUnits()).isEqualTo(18_000);
        });
    }

    @Test
    void withoutAnAgreementWhatTheInventorySaysIsReckonedWith() {
        assertThat(hired(one).startedOn()).isEqualTo(TODAY);
        assertThat(hired(one).committed(TODAY).orElseThrow().totalMinorUnits()).isEqualTo(4_500);
        jdbc.sql("update inventory_item set cost_minor_units = null where id = ?")
                .param(other)
                .update();
        assertThat(hired(other).committed(TODAY)).isEmpty();
        assertThat(hired(other).isOverdue(TODAY.plusYears(1)))
                .as("nobody wrote down when it is due")
                .isFalse();
        assertThat(hires.costs(production.id, office.zone(), TODAY.plusDays(20)))
                .extracting(HiredItemCost::committedMinorUnits)
                .as("DRIVE-1: a week until its due date and three more begun, DRIVE-2 unknown")
                .containsExactly(4 * 4_500L, 0L);
    }

    @Test
    void whatAnAgreementSaysIsNotCorrectedBesideIt() {
        book.agree(office, scene.terms(DUE, one));
        MediaItem item = item(one);
        assertThat(refusal(() -> inventory.edit(office, one, details(item, "DRIVE-1A", 7_000L), item.version())))
                .isEqualTo("inventory.refused.under-agreement");
        inventory.edit(office, one, details(item, "DRIVE-1A", 6_000L), item.version());
        assertThat(item(one).code()).as("what it doesn’t say may be").isEqualTo("DRIVE-1A");
        MediaItem free = item(other);
        inventory.edit(office, other, details(free, "DRIVE-2", 7_000L), free.version());
        assertThat(item(other).costMinorUnits()).isEqualTo(7_000);
    }

    private static ItemDetails details(MediaItem item, String code, long cost) {
        return new ItemDetails(
                code,
                item.serial(),
                item.model(),
                item.capacityBytes(),
                item.readBytesPerSecond(),
                item.writeBytesPerSecond(),
                item.ownership(),
                item.supplier(),
                cost,
                item.hiredUntil(),
                item.legId());
    }

    @Test
    void anItemIsUnderOneAgreementEvenIfTwoWriteOneDownAtOnce() throws Exception {
        List<String> outcomes = atOnce(
                () -> book.agree(office, scene.terms(DUE, one)).toString(),
                () -> book.agree(office, scene.terms(DUE, one, other)).toString());
        assertThat(outcomes).containsOnlyOnce("hire.refused.agreed-elsewhere");
        assertThat(agreements.all(production.id)).hasSize(1);
    }

    @Test
    void agreementsThatAreWrittenDownAtOnceHaveNumbersOfTheirOwn() throws Exception {
        atOnce(
                () -> book.agree(office, scene.terms(DUE, one)).toString(),
                () -> book.agree(office, scene.terms(DUE, other)).toString());
        assertThat(agreements.all(production.id).values())
                .extracting(HireAgreement::code)
                .containsExactly("HIRE-1", "HIRE-2");
    }

    @Test
    void onlyHiredItemsOfTheProductionThatAreHereAreAgreedOn() {
        UUID bought = production.item("DRIVE-3", "DRIVE", scene.set, null);
        assertThat(refusal(() -> book.agree(office, scene.terms(DUE, bought)))).isEqualTo("hire.refused.bought");
        custody.giveBack(office, one, "");
        assertThat(refusal(() -> book.agree(office, scene.terms(DUE, one)))).isEqualTo("hire.refused.left");
        HireScene elsewhere = new HireScene(fixtures, suppliers, jdbc);
        assertThatThrownBy(() -> book.agree(office, elsewhere.terms(DUE, other)))
                .as("a supplier of another production")
                .isInstanceOf(NotFoundException.class);
        UUID foreign = elsewhere.hired("DRIVE-1", "DRIVE", null);
        assertThatThrownBy(() -> book.agree(office, scene.terms(DUE, foreign))).isInstanceOf(NotFoundException.class);
        assertThat(agreements.all(production.id)).isEmpty();
    }

    @Test
    void whatIsExtendedIsDueLaterAndTheRestWhenItWas() {
        UUID agreement = book.agree(office, scene.terms(DUE, one, other));
        book.extend(office, agreement, DUE.plusWeeks(2), Map.of(one, 5_000L), "by telephone", 1);

        assertThat(item(one).hiredUntil()).isEqualTo(DUE.plusWeeks(2));
        assertThat(item(one).costMinorUnits()).isEqualTo(5_000);
        assertThat(item(other).hiredUntil()).isEqualTo(DUE);
        // 33 days: weeks begin 14, 7 and 0 days ago at 60.00, in 7 and 14 days at 50.00.
        assertThat(hired(one).committed(TODAY).orElseThrow().totalMinorUnits()).isEqualTo(3 * 6_000 + 2 * 5_000);
        assertThat(refusal(() -> book.extend(office, agreement, DUE, Map.of(one, 5_000L), "", 2)))
                .isEqualTo("hire.refused.not-longer");
        assertThatThrownBy(() -> book.extend(
                        office, agreement, DUE.plusWeeks(9), Map.of(scene.hired("DRIVE-9", "DRIVE", null), 1L), "", 2))
                .as("an item that is not under it")
                .isInstanceOf(NotFoundException.class);
    }

    @Test
    void ofTwoWhoExtendAtOnceTheSecondIsTold() throws Exception {
        UUID agreement = book.agree(office, scene.terms(DUE, one));
        List<String> outcomes = atOnce(
                () -> {
                    book.extend(office, agreement, DUE.plusWeeks(1), Map.of(one, 1L), "", 1);
                    return "done";
                },
                () -> {
                    book.extend(office, agreement, DUE.plusWeeks(2), Map.of(one, 1L), "", 1);
                    return "done";
                });
        assertThat(outcomes).containsExactlyInAnyOrder("done", "hire.refused.changed");
    }

    @Test
    void whatAHireCameToIsKeptWhenItsItemGoesBackAndReckonedAnewWhenTheAgreementIsCorrected() {
        UUID agreement = book.agree(office, scene.terms(TODAY.minusDays(3), one, other));
        custody.giveBackAll(office, List.of(one), TODAY.minusDays(1), "receipt 12");

        // Eleven days are two weeks begun, and two days late begin another.
        assertThat(hired(one).end()).isNotNull();
        assertThat(hired(one).end().totalMinorUnits()).isEqualTo(3 * 6_000);
        assertThat(hired(one).end().lateMinorUnits()).isEqualTo(6_000);
        assertThat(hired(one).end().endedOn()).isEqualTo(TODAY.minusDays(1));

        book.correct(office, agreement, scene.terms(TODAY.minusDays(1), 5_000, one, other), 1);
        assertThat(hired(one).end().totalMinorUnits()).isEqualTo(2 * 5_000);
        assertThat(hired(one).end().lateMinorUnits()).isZero();
        assertThat(hires.costs(production.id, office.zone(), TODAY).get(0).endedOn())
                .isEqualTo(TODAY.minusDays(1));
        assertThat(count("hire_end"))
                .as("what it came to before stays readable")
                .isEqualTo(2);

        assertThat(refusal(() -> book.correct(office, agreement, scene.terms(DUE, other), 2)))
                .as("what went back stays in the agreement")
                .isEqualTo("hire.refused.ended");
        assertThat(refusal(() -> book.takeBack(office, agreement, "", 2))).isEqualTo("hire.refused.ended");
        assertThat(item(one).hiredUntil())
                .as("what went back is left as it was")
                .isEqualTo(TODAY.minusDays(3));
    }

    @Test
    void theDayOfAReturnCanBeCorrectedByOneAtATime() {
        book.agree(office, scene.terms(TODAY.minusDays(3), one));
        custody.giveBack(office, one, "");
        assertThat(hired(one).end().lateMinorUnits()).isEqualTo(6_000);
        book.correctEnd(office, one, TODAY.minusDays(3), "the receipt says so", 1);
        assertThat(hired(one).end().lateMinorUnits()).isZero();
        assertThat(refusal(() -> book.correctEnd(office, one, TODAY, "", 1))).isEqualTo("hire.refused.changed");
        assertThatThrownBy(() -> book.correctEnd(office, other, TODAY, "", 0)).isInstanceOf(NotFoundException.class);
    }

    @Test
    void anItemThatACorrectionLeavesOutIsFreeAgain() {
        UUID agreement = book.agree(office, scene.terms(DUE, one, other));
        book.correct(office, agreement, scene.terms(DUE, one), 1);
        assertThat(hired(other).agreement()).isNull();
        book.agree(office, scene.terms(DUE.plusDays(1), other));
        assertThat(item(other).hiredUntil()).isEqualTo(DUE.plusDays(1));
        assertThat(refusal(() -> book.correct(office, agreement, scene.terms(DUE, one, other), 2)))
                .isEqualTo("hire.refused.agreed-elsewhere");
    }

    @Test
    void theExtensionAndThenTheAgreementCanBeTakenBack() {
        UUID agreement = book.agree(office, scene.terms(DUE, one));
        book.extend(office, agreement, DUE.plusWeeks(1), Map.of(one, 5_000L), "", 1);
        book.takeBack(office, agreement, "wrong drive", 2);
        assertThat(item(one).hiredUntil()).isEqualTo(DUE);
        assertThat(item(one).costMinorUnits()).isEqualTo(6_000);

        book.takeBack(office, agreement, "wrong production", 3);
        assertThat(hired(one).agreement()).isNull();
        assertThat(refusal(() -> book.takeBack(office, agreement, "", 4))).isEqualTo("hire.refused.withdrawn");
        assertThat(refusal(() -> book.extend(office, agreement, DUE, Map.of(one, 1L), "", 4)))
                .isEqualTo("hire.refused.withdrawn");
        assertThat(book.agree(office, scene.terms(DUE, one))).isNotEqualTo(agreement);
        assertThat(onRecord())
                .contains("hire.agreed HIRE-1", "hire.extended HIRE-1", "hire.taken-back HIRE-1", "hire.agreed HIRE-2");
    }

    @Test
    void aRetiredItemIsHiredNoLongerAndALostOneStill() {
        book.agree(office, scene.terms(TODAY.minusDays(1), one));
        custody.reportLost(production.as(Role.WRANGLER), one, "not on the truck");
        assertThat(hired(one).isOverdue(TODAY)).isTrue();
        custody.retire(office, one, "paid for");
        assertThat(hired(one).isOverdue(TODAY)).isFalse();
        assertThat(hired(one).end().totalMinorUnits()).isEqualTo(3 * 6_000);
    }

    @Test
    void nothingThatWasEnteredIsChangedOrDeletedEvenBySql() {
        UUID agreement = book.agree(office, scene.terms(DUE, one));
        book.extend(office, agreement, DUE.plusWeeks(1), Map.of(one, 5_000L), "", 1);
        custody.giveBack(office, one, "");
        for (String table : List.of("hire_terms", "hire_rate", "hire_end")) {
            assertThatThrownBy(() ->
                            jdbc.sql("update " + table + " set number = number").update())
                    .as("update %s", table)
                    .hasMessageContaining("evidence");
            assertThatThrownBy(() -> jdbc.sql("delete from " + table).update())
                    .as("delete from %s", table)
                    .hasMessageContaining("evidence");
        }
    }

    private int count(String table) {
        return jdbc.sql("select count(*) from " + table + " where production_id = ?")
                .param(production.id)
                .query(Integer.class)
                .single();
    }

    private List<String> onRecord() {
        return jdbc.sql("select action || ' ' || subject_code from audit_act where production_id = ? order by id")
                .param(production.id)
                .query(String.class)
                .list();
    }

    private static String refusal(ThrowingCallable act) {
        return catchThrowableOfType(Refusal.class, act).key();
    }

    static List<String> atOnce(Callable<String> one, Callable<String> other) throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> both = threads.invokeAll(List.of(told(one, together), told(other, together)));
            return List.of(both.get(0).get(), both.get(1).get());
        } finally {
            threads.shutdownNow();
        }
    }

    private static Callable<String> told(Callable<String> action, CyclicBarrier together) {
        return () -> {
            together.await();
            try {
                return action.call();
            } catch (Refusal e) {
                return e.key();
            }
        };
    }
}
