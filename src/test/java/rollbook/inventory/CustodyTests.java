package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.audit.AuditTrail;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Places;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

@PortalTest
class CustodyTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    Custody custody;

    @Autowired
    MediaItems items;

    @Autowired
    Rolls rolls;

    @Autowired
    Display display;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Places places;

    @Autowired
    AuditTrail trail;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    Clock clock;

    @Autowired
    TransactionTemplate transaction;

    private TestProduction production;
    private Membership office;
    private UUID set;
    private UUID vault;
    private UUID card;
    private UUID drive;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        set = production.place("Set", false);
        vault = production.place("Vault", true);
        card = production.item("CARD-1", "CARD", set, null);
        drive = production.item("DRIVE-1", "DRIVE", set, null);
    }

    @Test
    void theChainTellsWhereAnItemWasAndTheItemSaysWhereItIs() {
        custody.move(office, drive, vault, "guard", "evening run", 0);
        custody.quarantine(office, drive, "dropped");
        custody.release(office, drive, "surface scan without errors");
        custody.reportLost(office, drive, "not in the case");
        custody.reportFound(office, drive, set, "", "under a seat");
        assertThat(custody.chain(production.id, drive))
                .extracting(CustodyEntry::act, CustodyEntry::placeName, CustodyEntry::holder, CustodyEntry::condition)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.FOUND, "Set", "", Condition.QUARANTINED),
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.LOST, "Vault", "guard", Condition.LOST),
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.RELEASED, "Vault", "guard", Condition.GOOD),
                        org.assertj.core.groups.Tuple.tuple(
                                CustodyAct.QUARANTINED, "Vault", "guard", Condition.QUARANTINED),
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.MOVED, "Vault", "guard", Condition.GOOD),
                        org.assertj.core.groups.Tuple.tuple(CustodyAct.REGISTERED, "Set", "", Condition.GOOD));
        MediaItem item = items.get(production.id, drive);
        assertThat(item.placeName()).isEqualTo("Set");
        assertThat(item.condition()).isEqualTo(Condition.QUARANTINED);
        assertThat(jdbc.sql(
                                "select action from audit_act where production_id = ? and subject_code = 'DRIVE-1' order by id")
                        .param(production.id)
                        .query(String.class)
                        .list())
                .containsExactly("item.moved", "item.quarantined", "item.released", "item.lost", "item.found");
    }

    @Test
    void theChainCannotBeChangedEvenBySql() {
        for (String attack : new String[] {
            "update inventory_custody set note = 'never happened' where item_id = ?",
            "delete from inventory_custody where item_id = ?"
        }) {
            assertThatThrownBy(() -> jdbc.sql(attack).param(card).update())
                    .as(attack)
                    .isInstanceOf(Exception.class);
        }
        assertThat(custody.chain(production.id, card)).hasSize(1);
    }

    @Test
    void ofTwoWhoMoveAtOnceTheSecondIsToldThatTheItemChanged() {
        custody.move(office, drive, vault, "", "", 0);
        assertRefused("changed-meanwhile", () -> custody.move(office, drive, set, "", "", 0));
        assertThat(items.get(production.id, drive).placeName()).isEqualTo("Vault");
    }

    @Test
    void anItemMovesOnlyToPlacesOfItsProduction() {
        UUID elsewhere = fixtures.production().place("Elsewhere", false);
        assertThatThrownBy(() -> custody.move(office, drive, elsewhere, "", "", 0))
                .isInstanceOf(NotFoundException.class);
        assertThat(custody.chain(production.id, drive)).hasSize(1);
    }

    @Test
    void aQuarantinedCardCannotBeLoaded() {
        UUID unit = production.unit("Main");
        UUID camera = production.camera(unit, "A");
        UUID day = production.day(unit, 1, "SHOOTING");
        UUID format = production.format("f");
        Membership wrangler = production.as(Role.WRANGLER);
        custody.quarantine(wrangler, card, "bent pin");
        assertThatThrownBy(() -> rolls.load(wrangler, "A001", camera, day, card, format))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.key()).isEqualTo("offload.refused.card-condition"));
        custody.release(wrangler, card, "it was the reader");
        rolls.load(wrangler, "A001", camera, day, card, format);
        assertThat(items.get(production.id, card).cardState()).isEqualTo(CardState.IN_CAMERA);
    }

    @Test
    void aCardWithARollIsNeitherRetiredNorReturnedAndTheRefusalNamesItsState() {
        UUID unit = production.unit("Main");
        UUID roll = rolls.load(
                office,
                "A001",
                production.camera(unit, "A"),
                production.day(unit, 1, "SHOOTING"),
                card,
                production.format("f"));
        rolls.pull(office, roll, BigDecimal.TEN);
        hire("CARD-1");
        Refusal retiring = refusal(() -> custody.retire(office, card, "worn"));
        assertThat(display.text(retiring))
                .isEqualTo("CARD-1 is exposed: it may hold the only original of a roll, and can’t leave.");
        assertRefused("holds-roll", () -> custody.giveBack(office, card, ""));
        for (CardState state : CardState.values()) {
            jdbc.sql("update inventory_item set card_state = ? where id = ?")
                    .params(state.name(), card)
                    .update();
            if (state != CardState.BLANK) {
                assertRefused("holds-roll", () -> custody.retire(office, card, "worn"));
            }
        }
        jdbc.sql("update inventory_item set card_state = 'BLANK' where id = ?")
                .param(card)
                .update();
        custody.giveBack(office, card, "receipt 12");
        assertThat(items.get(production.id, card).condition()).isEqualTo(Condition.RETURNED);
    }

    @Test
    void whatSomethingDependsOnStaysWithTheReason() {
        ItemHold hold = (production, item) ->
                item.equals(drive) ? Optional.of(Hold.of("inventory.refused.no-capacity", "A001")) : Optional.empty();
        Custody guarded = new Custody(jdbc, items, places, only(hold), only(), trail, events, clock);
        UUID free = production.item("DRIVE-2", "DRIVE", set, null);
        Refusal refused =
                refusal(() -> transaction.executeWithoutResult(status -> guarded.retire(office, drive, "full")));
        assertThat(display.text(refused)).isEqualTo("DRIVE-1 can’t leave. A001 needs a capacity.");
        transaction.executeWithoutResult(status -> guarded.retire(office, free, "full"));
        assertThat(items.get(production.id, drive).condition()).isEqualTo(Condition.GOOD);
        assertThat(items.get(production.id, free).condition()).isEqualTo(Condition.RETIRED);
    }

    @Test
    void onlyWhatIsHiredIsReturnedAndItsSupplierHoldsItThen() {
        assertRefused("not-hired", () -> custody.giveBack(office, drive, ""));
        hire("DRIVE-1");
        custody.giveBack(office, drive, "");
        assertThat(items.get(production.id, drive).holder()).isEqualTo("Harbour Hire");
    }

    @Test
    void eachActStartsFromTheConditionsThatAllowItOnly() {
        assertRefused("condition", () -> custody.release(office, drive, "x"));
        assertRefused("condition", () -> custody.reportFound(office, drive, set, "", "x"));
        custody.quarantine(office, drive, "x");
        assertRefused("condition", () -> custody.quarantine(office, drive, "x"));
        custody.retire(office, drive, "x");
        int version = items.get(production.id, drive).version();
        assertRefused("condition", () -> custody.move(office, drive, vault, "", "", version));
        assertRefused("condition", () -> custody.retire(office, drive, "x"));
        assertRefused("condition", () -> custody.reportLost(office, drive, "x"));
        assertRefused("condition", () -> custody.release(office, drive, "x"));
        assertThat(custody.chain(production.id, drive)).hasSize(3);
    }

    private void hire(String code) {
        jdbc.sql(
                        "update inventory_item set ownership = 'HIRED', supplier = 'Harbour Hire' where production_id = ? and code = ?")
                .params(production.id, code)
                .update();
    }

    private static void assertRefused(String why, ThrowingCallable act) {
        assertThat(refusal(act).key()).isEqualTo("inventory.refused." + why);
    }

    private static Refusal refusal(ThrowingCallable act) {
        return org.assertj.core.api.Assertions.catchThrowableOfType(Refusal.class, act);
    }

    @SafeVarargs
    private static <T> ObjectProvider<T> only(T... beans) {
        return new ObjectProvider<>() {
            @Override
            public Stream<T> orderedStream() {
                return Stream.of(beans);
            }
        };
    }
}
