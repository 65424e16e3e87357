package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

@PortalTest
class InventoryTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    Inventory inventory;

    @Autowired
    MediaItems items;

    @Autowired
    Custody custody;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership office;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        set = production.place("Set", false);
    }

    @Test
    void aRunOfNumbersIsRegisteredWithItsCustodyAndOneActOnTheRecord() {
        List<UUID> ids = inventory.registerRun(office, card("x"), new NumberRun("CARD-", 1, 3, 24));
        assertThat(items.list(production.id))
                .hasSize(24)
                .allSatisfy(item -> {
                    assertThat(item.cardState()).isEqualTo(CardState.BLANK);
                    assertThat(item.condition()).isEqualTo(Condition.GOOD);
                    assertThat(item.capacityBytes()).isEqualTo(960_000_000_000L);
                })
                .extracting(MediaItem::code)
                .startsWith("CARD-001", "CARD-002")
                .endsWith("CARD-024");
        assertThat(items.get(production.id, ids.get(23)).code()).isEqualTo("CARD-024");
        assertThat(custody.chain(production.id, ids.get(0)))
                .extracting(CustodyEntry::act)
                .containsExactly(CustodyAct.REGISTERED);
        assertThat(acts("item.registered")).containsExactly("CARD-001…CARD-024");
    }

    @Test
    void aRunWithTakenCodesRegistersNothingAndNamesThem() {
        inventory.register(office, card("CARD-003"));
        inventory.register(office, card("CARD-010"));
        assertThatThrownBy(() -> inventory.registerRun(office, card("x"), new NumberRun("CARD-", 1, 3, 24)))
                .isInstanceOfSatisfying(Refusal.class, refusal -> {
                    assertThat(refusal.key()).isEqualTo("inventory.refused.codes-exist");
                    assertThat(refusal.args()).containsExactly("CARD-003, CARD-010", 2);
                });
        assertThat(items.list(production.id)).hasSize(2);
    }

    @Test
    void twoWhoRegisterTheSameRunAtOnceGetItOnce() throws Exception {
        Callable<Boolean> run = () -> {
            try {
                inventory.registerRun(office, card("x"), new NumberRun("CARD-", 1, 3, 50));
                return true;
            } catch (Refusal refused) {
                return false;
            }
        };
        ExecutorService both = Executors.newFixedThreadPool(2);
        try {
            List<Future<Boolean>> outcomes = both.invokeAll(List.of(run, run));
            assertThat(List.of(outcomes.get(0).get(), outcomes.get(1).get())).containsExactlyInAnyOrder(true, false);
        } finally {
            both.shutdown();
        }
        assertThat(items.list(production.id)).hasSize(50);
    }

    @Test
    void theSameCodeMayBeUsedByAnotherProduction() {
        inventory.register(office, card("CARD-001"));
        TestProduction other = fixtures.production();
        UUID place = other.place("Set", false);
        inventory.register(
                other.as(Role.OFFICE),
                new NewItem(MediaKind.CARD, card("CARD-001").details(), place, ""));
        assertThat(items.list(other.id)).hasSize(1);
    }

    @Test
    void placesAndLegsOfAnotherProductionAreUnknown() {
        TestProduction other = fixtures.production();
        UUID place = other.place("Set", false);
        UUID leg = other.leg("Shuttle", place, true);
        assertThatThrownBy(() -> inventory.register(
                        office, new NewItem(MediaKind.CARD, card("CARD-1").details(), place, "")))
                .isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> inventory.register(
                        office, new NewItem(MediaKind.DRIVE, details("DRIVE-1", "model", leg), set, "")))
                .isInstanceOf(NotFoundException.class);
    }

    @Test
    void aLegTakesOnlyMediaOfItsKind() {
        UUID leg = production.leg("Shuttle", set, true);
        assertThatThrownBy(() -> inventory.register(
                        office, new NewItem(MediaKind.TAPE, details("TAPE-1", "model", leg), set, "")))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo("inventory.refused.leg-kind"));
    }

    @Test
    void ofTwoWhoEditAtOnceTheSecondIsToldThatTheItemChanged() {
        UUID id = inventory.register(office, card("CARD-001"));
        int seen = items.get(production.id, id).version();
        inventory.edit(office, id, details("CARD-001", "first", null), seen);
        assertThatThrownBy(() -> inventory.edit(office, id, details("CARD-001", "second", null), seen))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.key()).isEqualTo("inventory.refused.changed-meanwhile"));
        assertThat(items.get(production.id, id).model()).isEqualTo("first");
        assertThat(jdbc.sql("select detail from audit_act where production_id = ? and action = 'item.edited'")
                        .param(production.id)
                        .query(String.class)
                        .list())
                .containsExactly("model: test card → first");
    }

    @Test
    void anItemCannotTakeTheCodeOfAnother() {
        UUID id = inventory.register(office, card("CARD-001"));
        inventory.register(office, card("CARD-002"));
        assertThatThrownBy(() -> inventory.edit(office, id, details("CARD-002", "m", null), 0))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.args()).first().isEqualTo("CARD-002"));
    }

    @Test
    void aRunFitsItsDigits() {
        assertThat(new NumberRun("T", 98, 2, 2).codes()).containsExactly("T98", "T99");
        assertThat(new NumberRun("T", 0, 1, 1).codes()).containsExactly("T0");
        assertThatThrownBy(() -> new NumberRun("T", 98, 2, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new NumberRun("T", 1, 4, 501)).isInstanceOf(IllegalArgumentException.class);
    }

    private NewItem card(String code) {
        return new NewItem(MediaKind.CARD, details(code, "test card", null), set, "");
    }

    private static ItemDetails details(String code, String model, UUID leg) {
        return new ItemDetails(code, "", model, 960_000_000_000L, null, null, Ownership.BOUGHT, "", null, null, leg);
    }

    private List<String> acts(String action) {
        return jdbc.sql("select subject_code from audit_act where production_id = ? and action = ?")
                .params(production.id, action)
                .query(String.class)
                .list();
    }
}
