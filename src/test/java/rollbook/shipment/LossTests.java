package rollbook.shipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.verification.Clearances;
import rollbook.verification.ManifestIntake;
import rollbook.verification.MediumClearances;
import rollbook.web.Refusal;

/** A loss in transit attacks every clearance that counted on what is lost: none of them goes on as if nothing had happened. */
@PortalTest
class LossTests {
    private static final int ROUNDS = 8;

    @Autowired
    Fixtures fixtures;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    ManifestIntake intake;

    @Autowired
    MediaItems items;

    @Autowired
    Jobs jobs;

    @Autowired
    Shipments shipments;

    @Autowired
    Packing packing;

    @Autowired
    Sending sending;

    @Autowired
    Arrivals arrivals;

    @Autowired
    Losses losses;

    @Autowired
    Custody custody;

    @Autowired
    Clearances clearances;

    @Autowired
    MediumClearances mediumClearances;

    @Autowired
    List<AlarmSource> sources;

    @Autowired
    JdbcClient jdbc;

    private ShipmentScene scene;

    @BeforeEach
    void makeScene() {
        scene = new ShipmentScene(fixtures, rolls, offloads, intake, items, jobs);
        scene.production.policy(2);
    }

    @Test
    void aClearanceThatCountedOnALostCopyIsWithdrawn() throws IOException {
        UUID roll = scene.proven("A001", scene.shuttle, scene.array);
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        lose(sent(scene.shuttle), scene.shuttle);
        // Already before the job has come to it.
        assertThat(refusal(() -> clearances.recordErasure(scene.wrangler, roll, "CARD-A001")))
                .isEqualTo("verification.refused.held");
        jobs.run();
        assertThat(cardState("A001")).isEqualTo(CardState.HELD);
        assertThat(refusal(() -> clearances.clear(scene.wrangler, roll, "CARD-A001")))
                .isEqualTo("verification.refused.held");
        assertThat(lostAlarms()).isEmpty();
    }

    @Test
    void aClearanceThatDidNotNeedTheLostCopyStands() throws IOException {
        scene.production.policy(1);
        UUID roll = scene.proven("A001", scene.shuttle, scene.array);
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        lose(sent(scene.shuttle), scene.shuttle);
        jobs.run();
        assertThat(cardState("A001")).isEqualTo(CardState.CLEAR_TO_ERASE);
    }

    @Test
    void anErasureThatCountedOnALostCopyRaisesAnAlarmUntilAsManyCopiesAreProvenAgain() throws IOException {
        UUID roll = scene.proven("A001", scene.shuttle, scene.array);
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        assertThat(lostAlarms()).isEmpty();
        lose(sent(scene.shuttle), scene.shuttle);
        assertThat(lostAlarms())
                .extracting(Alarm::messageKey, Alarm::args, Alarm::page)
                .containsExactly(
                        tuple("verification.alarm.lost.COPY", List.of("A001", "SHUTTLE-1", 1), "rolls/" + roll));

        scene.list("A001", scene.tape);
        jobs.run();
        assertThat(lostAlarms()).isEmpty();
    }

    @Test
    void theAlarmEndsWhenWhatIsLostIsFoundAndIsAnotherOneWhenItIsLostAgain() throws IOException {
        UUID roll = scene.proven("A001", scene.shuttle, scene.array);
        clearances.clear(scene.wrangler, roll, "CARD-A001");
        clearances.recordErasure(scene.wrangler, roll, "CARD-A001");
        UUID id = sent(scene.shuttle);
        lose(id, scene.shuttle);
        String first = lostAlarms().get(0).key();
        custody.reportFound(scene.wrangler, scene.shuttle, scene.postHouse, "", "at the depot");
        assertThat(lostAlarms()).isEmpty();
        assertThat(scene.item(scene.shuttle).condition()).isEqualTo(Condition.QUARANTINED);
        assertThat(shipments.items(scene.production.id, id).get(0).isFoundAgain())
                .isTrue();
        assertThat(shipments.get(scene.production.id, id).state()).isEqualTo(Shipment.State.LOST);
        custody.reportLost(scene.wrangler, scene.shuttle, "again");
        assertThat(lostAlarms()).hasSize(1).extracting(Alarm::key).doesNotContain(first);
    }

    @Test
    void aDriveThatWasClearedCountingOnALostTapeIsHeldAgain() throws IOException {
        jdbc.sql("update production_clearing_policy set proven_copies = 1, items = 1 where production_id = ?")
                .param(scene.production.id)
                .update();
        UUID roll = scene.proven("A001", scene.shuttle, scene.tape);
        mediumClearances.clear(scene.wrangler, scene.shuttle, "SHUTTLE-1");
        lose(sent(scene.tape), scene.tape);
        assertThat(refusal(() -> mediumClearances.recordErasure(scene.wrangler, scene.shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.medium-held");
        jobs.run();
        assertThat(refusal(() -> mediumClearances.recordErasure(scene.wrangler, scene.shuttle, "SHUTTLE-1")))
                .isEqualTo("verification.refused.not-cleared");
        assertThat(roll).isNotNull();
    }

    @Test
    void aDriveErasedCountingOnATapeThatIsLostLaterRaisesTheAlarm() throws IOException {
        jdbc.sql("update production_clearing_policy set proven_copies = 1, items = 1 where production_id = ?")
                .param(scene.production.id)
                .update();
        UUID roll = scene.proven("A001", scene.shuttle, scene.tape);
        mediumClearances.clear(scene.wrangler, scene.shuttle, "SHUTTLE-1");
        mediumClearances.recordErasure(scene.wrangler, scene.shuttle, "SHUTTLE-1");
        lose(sent(scene.tape), scene.tape);
        assertThat(lostAlarms())
                .extracting(Alarm::args, Alarm::page)
                .containsExactly(tuple(List.of("A001", "TAPE-1", 0), "rolls/" + roll));
    }

    @Test
    void aLostCardWithARollOfWhichNothingElseIsProvenRaisesTheAlarm() {
        UUID roll = scene.copied("A001", scene.shuttle);
        UUID card = scene.cardOf("A001");
        lose(sent(card), card);
        assertThat(lostAlarms())
                .extracting(Alarm::messageKey, Alarm::args, Alarm::page)
                .containsExactly(
                        tuple("verification.alarm.lost.CARD", List.of("A001", "CARD-A001", 0), "rolls/" + roll));
    }

    @Test
    void clearingAndLosingAtOnceLeavesNoClearanceThatCountsOnWhatIsLost() throws Exception {
        List<String> came = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            String code = "A%03d".formatted(round + 1);
            UUID drive = scene.production.item("DRIVE-" + round, "DRIVE", scene.set, null);
            UUID roll = scene.proven(code, drive, scene.array);
            UUID id = sent(drive);
            came.add(atOnce(() -> clearances.clear(scene.wrangler, roll, "CARD-" + code), () -> lose(id, drive)));
            jobs.run();
            assertThat(cardState(code)).as("%s, %s", code, came).isEqualTo(CardState.HELD);
            assertThat(scene.item(drive).condition()).isEqualTo(Condition.LOST);
        }
    }

    @Test
    void erasingAndLosingAtOnceEitherRefusesTheErasureOrRaisesTheAlarm() throws Exception {
        List<String> came = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            String code = "A%03d".formatted(round + 1);
            UUID drive = scene.production.item("DRIVE-" + round, "DRIVE", scene.set, null);
            UUID roll = scene.proven(code, drive, scene.array);
            clearances.clear(scene.wrangler, roll, "CARD-" + code);
            UUID id = sent(drive);
            came.add(atOnce(
                    () -> clearances.recordErasure(scene.wrangler, roll, "CARD-" + code), () -> lose(id, drive)));
            jobs.run();
            boolean erased = cardState(code) == CardState.BLANK;
            boolean told = lostAlarms().stream().anyMatch(alarm -> alarm.args().contains(code));
            assertThat(told).as("%s, %s", code, came).isEqualTo(erased);
            assertThat(cardState(code)).isIn(CardState.BLANK, CardState.HELD);
        }
    }

    @Test
    void confirmingAndLosingAtOnceEndsTheItemsWayOnce() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            UUID drive = scene.production.item("DRIVE-" + round, "DRIVE", scene.set, null);
            UUID id = sent(drive);
            atOnce(
                    () -> arrivals.confirm(scene.post, id, List.of(new Arrival(drive, Arrival.Outcome.ARRIVED, ""))),
                    () -> custody.reportLost(scene.wrangler, drive, "gone"));
            ShipmentItem item = shipments.items(scene.production.id, id).get(0);
            Condition condition = scene.item(drive).condition();
            // What is lost after it arrived was not lost on its way; what was lost on its way doesn't arrive.
            assertThat(condition).isEqualTo(Condition.LOST);
            assertThat(item.isOpen()).isFalse();
            if (item.state() == ShipmentItem.State.LOST) {
                assertThat(scene.item(drive).placeName()).isEqualTo("Set");
            } else {
                assertThat(scene.item(drive).placeName()).isEqualTo("Post house");
            }
        }
    }

    @Test
    void whatIsReportedLostOnItsOwnPageEndsItsWayInTheShipmentToo() {
        UUID id = sent(scene.shuttle, scene.tape);
        custody.reportLost(scene.wrangler, scene.shuttle, "van broken into");
        Shipment shipment = shipments.get(scene.production.id, id);
        assertThat(shipment.lost()).isEqualTo(1);
        assertThat(shipments.acts(scene.production.id, id))
                .extracting(ShipmentAct::act, ShipmentAct::itemCode, ShipmentAct::note)
                .contains(tuple(ShipmentAct.Kind.LOST, "SHUTTLE-1", "van broken into"));
        arrivals.confirm(scene.post, id, List.of(new Arrival(scene.tape, Arrival.Outcome.ARRIVED, "")));
        assertThat(shipments.get(scene.production.id, id).state()).isEqualTo(Shipment.State.LOST_IN_PART);
    }

    @Test
    void whatIsLostBeforeItIsSentIsOutOfItsBox() {
        UUID id = packing.pack(scene.wrangler, scene.toPost("courier"), scene.items(scene.shuttle, scene.tape));
        custody.reportLost(scene.wrangler, scene.shuttle, "gone");
        assertThat(shipments.items(scene.production.id, id))
                .extracting(ShipmentItem::code)
                .containsExactly("TAPE-1");
    }

    @Test
    void onlyWhatIsUnderWayIsLostOnTheWay() {
        UUID id = sent(scene.shuttle, scene.tape);
        arrivals.confirm(scene.post, id, List.of(new Arrival(scene.shuttle, Arrival.Outcome.ARRIVED, "")));
        assertThat(refusal(() -> lose(id, scene.shuttle))).isEqualTo("shipment.refused.changed-meanwhile");
        assertThat(refusal(() -> losses.report(scene.wrangler, id, Set.of(scene.tape), "gone", 0)))
                .isEqualTo("shipment.refused.changed-meanwhile");
        assertThat(scene.item(scene.shuttle).condition()).isEqualTo(Condition.GOOD);
    }

    private List<Alarm> lostAlarms() {
        return sources.stream()
                .flatMap(source -> source.alarms(scene.production.id).stream())
                .filter(alarm -> alarm.messageKey().startsWith("verification.alarm.lost"))
                .toList();
    }

    private UUID sent(UUID... media) {
        UUID id = packing.pack(scene.wrangler, scene.toPost("courier"), scene.items(media));
        sending.send(scene.wrangler, id, ShipmentScene.tomorrow(), 0);
        return id;
    }

    private void lose(UUID id, UUID item) {
        int version = shipments.get(scene.production.id, id).version();
        losses.report(scene.wrangler, id, Set.of(item), "the carrier has no trace of it", version);
    }

    private CardState cardState(String code) {
        return scene.item(scene.cardOf(code)).cardState();
    }

    private static String refusal(Runnable act) {
        return catchThrowableOfType(Refusal.class, act::run).key();
    }

    /** Both at the same moment; what each came to. */
    private static String atOnce(Runnable one, Runnable other) throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> outcomes = two.invokeAll(List.of(told(together, one), told(together, other)));
            return outcomes.get(0).get() + " / " + outcomes.get(1).get();
        } finally {
            two.shutdown();
        }
    }

    private static Callable<String> told(CyclicBarrier together, Runnable act) {
        return () -> {
            together.await();
            try {
                act.run();
                return "done";
            } catch (Refusal refusal) {
                return refusal.key();
            }
        };
    }
}
