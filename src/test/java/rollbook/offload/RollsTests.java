package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

@PortalTest
class RollsTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Copies copies;

    @Autowired
    MediaItems items;

    private TestProduction production;
    private Membership wrangler;
    private UUID camera;
    private UUID day;
    private UUID format;
    private UUID card;
    private UUID reader;
    private UUID drive;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        UUID set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("Test format");
        card = production.item("CARD-1", "CARD", set, null);
        reader = production.item("READER-1", "READER", set, null);
        drive = production.item("DRIVE-1", "DRIVE", set, null);
    }

    @Test
    void aCardGoesFromBlankThroughTheCameraToHeldAsItsRollIsCopied() {
        UUID roll = rolls.load(wrangler, "a001", camera, day, card, format);
        assertThat(cardState()).isEqualTo(CardState.IN_CAMERA);
        assertThat(rolls.get(production.id, roll).code()).isEqualTo("A001");

        rolls.pull(wrangler, roll, new BigDecimal("31.5"));
        assertThat(cardState()).isEqualTo(CardState.EXPOSED);

        UUID session = offloads.start(wrangler, roll, reader, null, toDrive());
        assertThat(cardState()).isEqualTo(CardState.COPYING);

        offloads.finish(wrangler, session, 45_360_000_000L);
        assertThat(cardState()).isEqualTo(CardState.HELD);
        Offload finished = offloads.get(production.id, session);
        assertThat(finished.destinations()).isEqualTo("DRIVE-1");
        assertThat(finished.expectedBytesPerSecond()).isEqualTo(500_000_000);
        assertThat(rolls.get(production.id, roll).sizeBytes()).isEqualTo(45_360_000_000L);
        assertThat(copies.usedBytes(production.id)).containsExactly(new Copies.Used(drive, 45_360_000_000L));
    }

    @Test
    void aCardThatIsNotBlankIsNotLoaded() {
        rolls.load(wrangler, "A001", camera, day, card, format);
        assertThatThrownBy(() -> rolls.load(wrangler, "A002", camera, day, card, format))
                .isInstanceOfSatisfying(Refusal.class, refusal -> {
                    assertThat(refusal.key()).isEqualTo("inventory.refused.card-state");
                    assertThat(refusal.args()).first().isEqualTo("CARD-1");
                    assertThat(refusal.args().get(1).toString()).contains("web.card-state.IN_CAMERA");
                });
        assertThat(rolls.findByCode(production.id, "A002")).isEmpty();
    }

    @Test
    void aRollCodeIsUsedOnceWhateverItsCase() {
        rolls.load(wrangler, "A001", camera, day, card, format);
        UUID other = production.item("CARD-2", "CARD", production.place("Truck", false), null);
        assertThatThrownBy(() -> rolls.load(wrangler, "a001", camera, day, other, format))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo("offload.refused.roll-exists"));
        assertThat(items.get(production.id, other).cardState()).isEqualTo(CardState.BLANK);
    }

    @Test
    void aLoadingTakenBackLeavesTheCardBlank() {
        UUID roll = rolls.load(wrangler, "A001", camera, day, card, format);
        rolls.unload(wrangler, roll);
        assertThat(cardState()).isEqualTo(CardState.BLANK);
        assertThat(rolls.list(production.id)).isEmpty();
    }

    @Test
    void anAbandonedOffloadLeavesTheCardExposedAndCanBeginAgain() {
        UUID roll = pulledRoll();
        UUID first = offloads.start(wrangler, roll, reader, null, toDrive());
        offloads.abandon(wrangler, first, "reader lost power");
        assertThat(cardState()).isEqualTo(CardState.EXPOSED);
        UUID second = offloads.start(wrangler, roll, reader, null, toDrive());
        offloads.finish(wrangler, second, 1_000);
        assertThat(copies.ofRoll(production.id, roll)).hasSize(1);
        assertThat(offloads.get(production.id, first).outcome()).isEqualTo(Offload.Outcome.ABANDONED);
    }

    @Test
    void anOffloadEndsOnce() {
        UUID roll = pulledRoll();
        UUID session = offloads.start(wrangler, roll, reader, null, toDrive());
        offloads.finish(wrangler, session, 1_000);
        assertThatThrownBy(() -> offloads.finish(wrangler, session, 2_000))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo("offload.refused.ended-already"));
        assertThat(rolls.get(production.id, roll).sizeBytes()).isEqualTo(1_000);
    }

    @Test
    void anotherProductionsRollCardOrDayIsUnknown() {
        TestProduction other = fixtures.production();
        UUID roll = pulledRoll();
        Membership stranger = other.as(Role.WRANGLER);
        assertThatThrownBy(() -> rolls.get(other.id, roll)).isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> rolls.pull(stranger, roll, BigDecimal.ONE)).isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> offloads.start(stranger, roll, reader, null, toDrive()))
                .isInstanceOf(NotFoundException.class);
        assertThatThrownBy(() -> rolls.load(stranger, "A009", camera, day, card, format))
                .isInstanceOf(NotFoundException.class);
    }

    private UUID pulledRoll() {
        UUID roll = rolls.load(wrangler, "A001", camera, day, card, format);
        rolls.pull(wrangler, roll, new BigDecimal("10"));
        return roll;
    }

    private List<Offloads.Destination> toDrive() {
        return List.of(new Offloads.Destination(drive, null));
    }

    private CardState cardState() {
        return items.get(production.id, card).cardState();
    }
}
