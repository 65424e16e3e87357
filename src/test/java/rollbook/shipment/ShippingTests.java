package rollbook.shipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.audit.ActFilter;
import rollbook.audit.AuditTrail;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.CustodyAct;
import rollbook.inventory.CustodyEntry;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.manifest.Verdict;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Alarm;
import rollbook.production.Role;
import rollbook.shipment.Arrival.Outcome;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.verification.ManifestIntake;
import rollbook.web.Listing;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** From packing to arrival, and every step back. */
@PortalTest
class ShippingTests {
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
    LateShipments late;

    @Autowired
    Custody custody;

    @Autowired
    AuditTrail trail;

    @Autowired
    JdbcClient jdbc;

    private ShipmentScene scene;

    @BeforeEach
    void makeScene() {
        scene = new ShipmentScene(fixtures, rolls, offloads, intake, items, jobs);
    }

    @Test
    void shipmentsAreNumberedInEachProduction() {
        pack(scene.shuttle);
        UUID second = pack(scene.tape);
        assertThat(get(second).number()).isEqualTo(2);
        assertThat(shipments.ofProduction(scene.production.id))
                .extracting(Shipment::number)
                .containsExactly(2, 1);
        ShipmentScene other = new ShipmentScene(fixtures, rolls, offloads, intake, items, jobs);
        UUID theirs = packing.pack(other.wrangler, other.toPost("courier"), other.items(other.shuttle));
        assertThat(shipments.get(other.production.id, theirs).number()).isEqualTo(1);
        assertThatThrownBy(() -> shipments.get(other.production.id, second)).isInstanceOf(NotFoundException.class);
    }

    @Test
    void whatIsSentIsWithTheCarrierAndStaysWhereItCameFromUntilItIsConfirmed() {
        UUID id = sent(scene.shuttle);
        MediaItem under = scene.item(scene.shuttle);
        assertThat(under.placeName()).isEqualTo("Set");
        assertThat(under.offSite()).isFalse();
        assertThat(under.holder()).isEqualTo("courier");
        assertThat(newest(scene.shuttle).note()).isEqualTo("On its way to Post house in shipment 1.");
        assertThat(get(id).state()).isEqualTo(Shipment.State.SENT);

        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        MediaItem there = scene.item(scene.shuttle);
        assertThat(there.placeName()).isEqualTo("Post house");
        assertThat(there.offSite()).isTrue();
        assertThat(there.holder()).isEmpty();
        assertThat(newest(scene.shuttle).personName()).isEqualTo("POST");
        assertThat(get(id).state()).isEqualTo(Shipment.State.ARRIVED);
        assertThat(trail.list(
                        scene.production.id, ActFilter.ALL, new Listing.Order<>(ActFilter.Column.WHEN, true), 0, 10))
                .extracting(act -> act.action() + " " + act.subjectCode())
                .contains("shipment.arrived 1", "shipment.sent 1", "shipment.packed 1");
    }

    @Test
    void itArrivesInPartItemByItem() {
        UUID id = sent(scene.shuttle, scene.tape);
        arrivals.confirm(
                scene.post,
                id,
                List.of(
                        new Arrival(scene.shuttle, Outcome.ARRIVED, ""),
                        new Arrival(scene.tape, Outcome.MISSING, "not in the box")));
        Shipment shipment = get(id);
        assertThat(shipment.state()).isEqualTo(Shipment.State.ARRIVED_IN_PART);
        assertThat(shipment.missing()).isEqualTo(1);
        assertThat(scene.item(scene.tape).placeName()).isEqualTo("Set");
        confirm(id, scene.tape, Outcome.ARRIVED, "came a day later");
        assertThat(get(id).state()).isEqualTo(Shipment.State.ARRIVED);
        assertThat(shipments.acts(scene.production.id, id))
                .extracting(act -> act.act() + " " + act.itemCode())
                .containsExactly("SENT null", "ARRIVED SHUTTLE-1", "MISSING TAPE-1", "ARRIVED TAPE-1");
    }

    @Test
    void anItemWhoseSealIsDamagedArrivesInQuarantine() {
        UUID id = sent(scene.shuttle);
        confirm(id, scene.shuttle, Outcome.SEAL_DAMAGED, "torn");
        MediaItem item = scene.item(scene.shuttle);
        assertThat(item.condition()).isEqualTo(Condition.QUARANTINED);
        assertThat(item.placeName()).isEqualTo("Post house");
        assertThat(newest(scene.shuttle).act()).isEqualTo(CustodyAct.QUARANTINED);
        assertThat(newest(scene.shuttle).note()).isEqualTo("Its seal was damaged on arrival in shipment 1. torn");
    }

    @Test
    void whatSomebodyConfirmedIsNotConfirmedAgain() {
        UUID id = sent(scene.shuttle, scene.tape);
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        int links = custody.chain(scene.production.id, scene.shuttle).size();
        arrivals.confirm(
                scene.wrangler,
                id,
                List.of(new Arrival(scene.shuttle, Outcome.MISSING, ""), new Arrival(scene.tape, Outcome.ARRIVED, "")));
        assertThat(scene.item(scene.shuttle).placeName()).isEqualTo("Post house");
        assertThat(custody.chain(scene.production.id, scene.shuttle)).hasSize(links);
        assertThat(refusal(() -> confirm(id, scene.shuttle, Outcome.ARRIVED, "")))
                .isEqualTo("shipment.refused.not-under-way");
    }

    @Test
    void twoWhoConfirmAtOnceGiveOneEntryOfCustody() throws Exception {
        UUID id = sent(scene.shuttle);
        List<String> outcomes = atOnce(() -> {
            confirm(id, scene.shuttle, Outcome.ARRIVED, "");
            return "confirmed";
        });
        assertThat(outcomes).containsExactlyInAnyOrder("confirmed", "shipment.refused.not-under-way");
        assertThat(custody.chain(scene.production.id, scene.shuttle))
                .filteredOn(entry -> entry.placeName().equals("Post house"))
                .hasSize(1);
    }

    @Test
    void anItemIsInOneBoxOnlyEvenIfTwoPackAtOnce() throws Exception {
        List<String> outcomes = atOnce(() -> {
            pack(scene.shuttle, scene.tape);
            return "packed";
        });
        assertThat(outcomes).containsExactlyInAnyOrder("packed", "shipment.refused.in-another");
        assertThat(shipments.ofProduction(scene.production.id)).hasSize(1);
        assertThat(refusal(() -> pack(scene.tape))).isEqualTo("shipment.refused.in-another");
    }

    @Test
    void whatArrivedMayTravelOn() {
        UUID id = sent(scene.shuttle);
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        ShipmentDetails back = new ShipmentDetails(scene.postHouse, scene.set, "", "courier", "", null, "", null);
        UUID second = packing.pack(scene.post, back, scene.items(scene.shuttle));
        sending.send(scene.post, second, ShipmentScene.tomorrow(), 0);
        assertThat(get(second).state()).isEqualTo(Shipment.State.SENT);
        assertThat(get(id).state()).isEqualTo(Shipment.State.ARRIVED);
    }

    @Test
    void whatIsPackedIsPackedAnewOrGivenUpUntilItIsSent() {
        UUID id = pack(scene.shuttle, scene.tape);
        packing.change(scene.wrangler, id, scene.toPost("another courier"), scene.items(scene.tape), 0);
        assertThat(shipments.items(scene.production.id, id))
                .extracting(ShipmentItem::code)
                .containsExactly("TAPE-1");
        assertThat(refusal(() -> packing.change(scene.wrangler, id, scene.toPost(""), scene.items(scene.tape), 0)))
                .isEqualTo("shipment.refused.changed-meanwhile");
        packing.discard(scene.wrangler, id, 1);
        assertThat(get(id).state()).isEqualTo(Shipment.State.DISCARDED);
        UUID next = pack(scene.shuttle, scene.tape);
        sending.send(scene.wrangler, next, ShipmentScene.tomorrow(), 0);
        assertThat(refusal(() -> packing.discard(scene.wrangler, next, 1))).isEqualTo("shipment.refused.not-packing");
    }

    @Test
    void aSendingIsTakenBackWhileNothingHasHappenedAndStaysOnRecord() throws IOException {
        jdbc.sql("update inventory_item set holder = 'first assistant' where id = ?")
                .param(scene.shuttle)
                .update();
        UUID id = sent(scene.shuttle, scene.tape);
        sending.takeBack(scene.wrangler, id, 1);
        assertThat(get(id).state()).isEqualTo(Shipment.State.PACKING);
        assertThat(scene.item(scene.shuttle).holder()).isEqualTo("first assistant");
        assertThat(shipments.acts(scene.production.id, id))
                .extracting(ShipmentAct::act)
                .containsExactly(ShipmentAct.Kind.SENT, ShipmentAct.Kind.TAKEN_BACK);

        scene.proven("A001", scene.shuttle);
        sending.send(scene.wrangler, id, ShipmentScene.tomorrow(), 2);
        assertThat(shipments.sent(scene.production.id, id))
                .extracting(content -> content.itemCode() + " " + content.rollCode())
                .containsExactly("SHUTTLE-1 A001", "TAPE-1 null");
        confirm(id, scene.tape, Outcome.ARRIVED, "");
        int version = get(id).version();
        assertThat(refusal(() -> sending.takeBack(scene.wrangler, id, version)))
                .isEqualTo("shipment.refused.not-taken-back");
    }

    @Test
    void whatIsElsewhereOrAtWorkDoesNotLeave() {
        UUID id = pack(scene.shuttle);
        custody.move(
                scene.wrangler,
                scene.shuttle,
                scene.postHouse,
                "",
                "",
                scene.item(scene.shuttle).version());
        assertThat(refusal(() -> sending.send(scene.wrangler, id, ShipmentScene.tomorrow(), 0)))
                .isEqualTo("shipment.refused.elsewhere");
        UUID card = scene.production.item("CARD-9", "CARD", scene.set, null);
        jdbc.sql("update inventory_item set card_state = 'IN_CAMERA' where id = ?")
                .param(card)
                .update();
        UUID second = pack(card);
        assertThat(refusal(() -> sending.send(scene.wrangler, second, ShipmentScene.tomorrow(), 0)))
                .isEqualTo("shipment.refused.at-work");
        custody.reportLost(scene.wrangler, scene.tape, "gone");
        assertThat(refusal(() -> pack(scene.tape))).isEqualTo("shipment.refused.not-here");
    }

    @Test
    void whatIsOnItsWayIsNotMovedRetiredOrGivenBackByHand() {
        UUID id = sent(scene.shuttle);
        int version = scene.item(scene.shuttle).version();
        assertThat(refusal(() -> custody.move(scene.wrangler, scene.shuttle, scene.postHouse, "", "", version)))
                .isEqualTo("inventory.refused.under-way");
        assertThat(refusal(() -> custody.retire(scene.production.as(Role.OFFICE), scene.shuttle, "worn")))
                .isEqualTo("inventory.refused.needed");
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        custody.move(
                scene.wrangler,
                scene.shuttle,
                scene.set,
                "",
                "",
                scene.item(scene.shuttle).version());
        assertThat(scene.item(scene.shuttle).placeName()).isEqualTo("Set");
    }

    @Test
    void anArrivalConfirmedByMistakeIsTakenBackUnlessTheItemHasGoneOn() {
        UUID id = sent(scene.shuttle, scene.tape);
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        arrivals.takeBack(scene.post, id, scene.shuttle, "the other box");
        assertThat(scene.item(scene.shuttle).placeName()).isEqualTo("Set");
        assertThat(scene.item(scene.shuttle).holder()).isEqualTo("courier");
        assertThat(get(id).missing()).isEqualTo(1);
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        custody.move(
                scene.wrangler,
                scene.shuttle,
                scene.set,
                "",
                "",
                scene.item(scene.shuttle).version());
        assertThat(refusal(() -> arrivals.takeBack(scene.post, id, scene.shuttle, "x")))
                .isEqualTo("shipment.refused.gone-on");
        assertThat(refusal(() -> arrivals.takeBack(scene.post, id, scene.tape, "x")))
                .isEqualTo("shipment.refused.gone-on");
    }

    @Test
    void whatWasInItIsKeptAsItWasWhenItLeft() throws Exception {
        scene.proven("A001", scene.shuttle, scene.array);
        scene.copied("A002", scene.shuttle);
        UUID id = sent(scene.shuttle, scene.cardOf("A002"));
        List<SentContent> sent = shipments.sent(scene.production.id, id);
        assertThat(sent)
                .extracting(
                        SentContent::itemCode,
                        SentContent::rollCode,
                        SentContent::verdict,
                        SentContent::isOriginal,
                        SentContent::sizeBytes)
                .containsExactly(
                        tuple("CARD-A002", "A002", null, true, 1_000_000L),
                        tuple("SHUTTLE-1", "A001", Verdict.PROVEN, false, 1_000_000L),
                        tuple("SHUTTLE-1", "A002", Verdict.UNKNOWN, false, 1_000_000L));
        // The digest of the list that speaks for the shuttle's copy, computed here from its text.
        String list = "# reading 2\n0cc175b9c0f1b6a831c399e269772661  A001/one.mxf\n";
        assertThat(sent.get(1).manifests()).containsExactly(sha256(list));

        scene.list("A001", scene.shuttle);
        jobs.run();
        assertThat(shipments.sent(scene.production.id, id)).isEqualTo(sent);
        for (String table : List.of("shipment_content", "shipment_act")) {
            assertThatThrownBy(() -> jdbc.sql("delete from " + table).update())
                    .as(table)
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("evidence");
        }
    }

    @Test
    void aHandOverIsTheSameWithoutACarrier() {
        ShipmentDetails details = new ShipmentDetails(scene.set, scene.set, "second unit", "", "", null, "", null);
        UUID id = sending.handOver(scene.wrangler, details, scene.items(scene.shuttle));
        assertThat(scene.item(scene.shuttle).holder()).isEqualTo("WRANGLER");
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        assertThat(scene.item(scene.shuttle).holder()).isEqualTo("second unit");
    }

    @Test
    void anAlarmStandsWhileItIsLateAndEndsWhenItIsExpectedAnewOrArrives() {
        UUID id = sent(scene.shuttle);
        assertThat(late.alarms(scene.production.id)).isEmpty();
        expectedAt(id, Instant.now().minusSeconds(60));
        List<Alarm> first = late.alarms(scene.production.id);
        assertThat(first)
                .extracting(Alarm::messageKey, Alarm::page)
                .containsExactly(tuple("shipment.alarm.LATE", "shipments/" + id));
        assertThat(late.alarms(scene.production.id)).isEqualTo(first);
        sending.expectAnew(scene.wrangler, id, ShipmentScene.tomorrow(), "storm", get(id).version());
        assertThat(late.alarms(scene.production.id)).isEmpty();
        expectedAt(id, Instant.now().minusSeconds(30));
        assertThat(late.alarms(scene.production.id))
                .hasSize(1)
                .extracting(Alarm::key)
                .doesNotContain(first.get(0).key());
        confirm(id, scene.shuttle, Outcome.ARRIVED, "");
        assertThat(late.alarms(scene.production.id)).isEmpty();
    }

    @Test
    void anAlarmTellsWhatWasMissingOnArrival() {
        UUID id = sent(scene.shuttle, scene.tape);
        confirm(id, scene.tape, Outcome.MISSING, "");
        assertThat(late.alarms(scene.production.id))
                .extracting(Alarm::messageKey, Alarm::args)
                .containsExactly(tuple("shipment.alarm.MISSING", List.of(1, "Post house", 1, "TAPE-1")));
        confirm(id, scene.tape, Outcome.ARRIVED, "");
        assertThat(late.alarms(scene.production.id)).isEmpty();
    }

    private void expectedAt(UUID id, Instant at) {
        jdbc.sql("update shipment_shipment set expected_by = ? where id = ?")
                .params(java.sql.Timestamp.from(at), id)
                .update();
    }

    private static org.assertj.core.groups.Tuple tuple(Object... values) {
        return org.assertj.core.api.Assertions.tuple(values);
    }

    private static String sha256(String text) throws Exception {
        return HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private UUID pack(UUID... media) {
        return packing.pack(scene.wrangler, scene.toPost("courier"), scene.items(media));
    }

    private UUID sent(UUID... media) {
        UUID id = pack(media);
        sending.send(scene.wrangler, id, ShipmentScene.tomorrow(), 0);
        return id;
    }

    private void confirm(UUID id, UUID item, Outcome outcome, String note) {
        arrivals.confirm(scene.post, id, List.of(new Arrival(item, outcome, note)));
    }

    private Shipment get(UUID id) {
        return shipments.get(scene.production.id, id);
    }

    private CustodyEntry newest(UUID item) {
        return custody.chain(scene.production.id, item).get(0);
    }

    private static String refusal(Runnable act) {
        return org.assertj.core.api.Assertions.catchThrowableOfType(Refusal.class, act::run)
                .key();
    }

    private static List<String> atOnce(Callable<String> act) throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        Callable<String> one = () -> {
            together.await();
            try {
                return act.call();
            } catch (Refusal refusal) {
                return refusal.key();
            }
        };
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> outcomes = two.invokeAll(List.of(one, one));
            return List.of(outcomes.get(0).get(), outcomes.get(1).get());
        } finally {
            two.shutdown();
        }
    }
}
