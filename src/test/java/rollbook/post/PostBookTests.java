package rollbook.post;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.post.SeenFromPost.POST;
import static rollbook.post.SeenFromPost.SET;
import static rollbook.post.SeenFromPost.hour;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.post.MediumAtPost.Step;
import rollbook.post.SeenFromPost.Like;
import rollbook.shipment.ShipmentItem;
import rollbook.verification.MediumStanding;

/** How rolls and media stand at post, worked by hand: shuttles are written at hour 0 and sent from hour 1 on. */
class PostBookTests {
    private final SeenFromPost seen = new SeenFromPost();
    private final Roll roll = seen.roll("A001", 1);
    private final UUID shuttle = UUID.randomUUID();

    @Test
    void aRollThatNobodyCopiedOrSentIsNotSent() {
        assertThat(seen.state(roll, 1)).isEqualTo(PostState.NOT_SENT);
        seen.copy(roll, shuttle, Like.AT_SET);
        assertThat(seen.state(roll, 1)).isEqualTo(PostState.NOT_SENT);
        assertThat(seen.book(1).rolls().get(0).copies())
                .as("where it is instead")
                .hasSize(1);
        assertThat(seen.book(1).media()).isEmpty();
    }

    @Test
    void aShipmentIsOnItsWayAndLateOnceTheTimeIsOver() {
        seen.copy(roll, shuttle, Like.AT_SET);
        seen.sent(shuttle, POST, 2, 14, ShipmentItem.State.UNDER_WAY);
        assertThat(seen.state(roll, 14)).as("to the minute").isEqualTo(PostState.UNDER_WAY);
        assertThat(steps(14)).containsExactly(Step.AWAIT);
        assertThat(seen.state(roll, 15)).isEqualTo(PostState.LATE);
        assertThat(steps(15)).containsExactly(Step.AWAIT_LATE);
        assertThat(seen.book(15).received()).isZero();
    }

    @Test
    void whatWasMissedOnArrivalIsNotThere() {
        seen.copy(roll, shuttle, Like.AT_SET);
        seen.sent(shuttle, POST, 2, 14, ShipmentItem.State.MISSING);
        assertThat(seen.state(roll, 5)).isEqualTo(PostState.NOT_HERE);
        assertThat(steps(5)).containsExactly(Step.SEEK);
    }

    @Test
    void whatPostConfirmedHasArrivedAndWhatSetMovedIsOnlySaidToBeThere() {
        seen.copy(roll, shuttle, Like.AT_POST);
        seen.stay(shuttle, 10, null);
        assertThat(seen.state(roll, 11)).isEqualTo(PostState.SAID);
        assertThat(steps(11)).containsExactly(Step.SAY);
        assertThat(seen.book(11).received()).isZero();

        seen.sent(shuttle, POST, 2, 14, ShipmentItem.State.ARRIVED);
        assertThat(seen.state(roll, 11)).isEqualTo(PostState.ARRIVED);
        assertThat(seen.book(11).received()).isEqualTo(1);
        assertThat(seen.book(11).proven()).isZero();
    }

    @Test
    void theReceiptOfAnEarlierTripConfirmsNothingOfALaterOne() {
        seen.copy(roll, shuttle, Like.AT_POST);
        seen.sent(shuttle, POST, 1, null, ShipmentItem.State.ARRIVED);
        seen.stay(shuttle, 2, 3);
        seen.stay(shuttle, 10, null);
        assertThat(seen.state(roll, 11)).isEqualTo(PostState.SAID);
        assertThat(seen.book(11).media().get(0).receipt()).isNull();
        seen.sent(shuttle, POST, 9, null, ShipmentItem.State.ARRIVED);
        assertThat(seen.book(11).media().get(0).receipt().number()).isEqualTo(2);
    }

    @Test
    void postSaysThatItIsHereOrIsNotAndTheLaterWordCounts() {
        seen.copy(roll, shuttle, Like.AT_POST);
        Stay stay = seen.stay(shuttle, 10, null);
        seen.said(stay, false, 11);
        assertThat(seen.state(roll, 12)).isEqualTo(PostState.NOT_HERE);
        assertThat(steps(12)).containsExactly(Step.SEEK);
        assertThat(seen.book(12).received()).isZero();

        seen.said(seen.stays.get(0), true, 12);
        assertThat(seen.state(roll, 13)).isEqualTo(PostState.ARRIVED);
        assertThat(seen.book(13).received()).isEqualTo(1);
    }

    @Test
    void onlyAListThatWasReadWhileItWasThereProvesItThere() {
        Copy copy = seen.copy(roll, shuttle, Like.AT_POST);
        seen.stay(shuttle, 10, null);
        seen.checked(copy, Verdict.PROVEN, 9);
        assertThat(seen.state(roll, 20)).as("proven on set, before it left").isEqualTo(PostState.SAID);
        seen.checked(copy, Verdict.PROVEN, 10);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.PROVEN);
        assertThat(seen.book(20).received()).as("whoever reads it has it").isEqualTo(1);
        assertThat(seen.book(20).proven()).isEqualTo(1);
        seen.checked(copy, Verdict.CONSISTENT, 12);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.READ);
        assertThat(seen.book(20).proven()).isZero();
    }

    @Test
    void aWordThatItIsNotThereWeighsMoreThanAnEarlierCheck() {
        Copy copy = seen.copy(roll, shuttle, Like.AT_POST);
        Stay stay = seen.stay(shuttle, 10, null);
        seen.checked(copy, Verdict.PROVEN, 12);
        seen.said(stay, false, 11);
        assertThat(seen.state(roll, 20)).as("found and read since").isEqualTo(PostState.PROVEN);
        seen.said(seen.stays.get(0), false, 13);
        assertThat(seen.state(roll, 20)).as("missed since").isEqualTo(PostState.NOT_HERE);
    }

    @Test
    void aBadCopySaysHowTheRollStandsThoughAnotherIsProven() {
        Copy tape = seen.copy(roll, UUID.randomUUID(), Like.TAPE);
        seen.registered(tape.itemId());
        seen.checked(tape, Verdict.PROVEN, 12);
        Copy copy = seen.copy(roll, shuttle, Like.AT_POST);
        seen.stay(shuttle, 10, null);
        seen.checked(copy, Verdict.INCOMPLETE, 12);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.DIFFERS);
        assertThat(seen.book(20).proven()).as("the tape").isEqualTo(1);
    }

    @Test
    void aProvenCopyOfTwoCountsThoughTheOtherIsLostOrOnItsWay() {
        Copy tape = seen.copy(roll, UUID.randomUUID(), Like.TAPE);
        seen.registered(tape.itemId());
        seen.checked(tape, Verdict.PROVEN, 12);
        seen.copy(roll, shuttle, new Like(SET, Condition.LOST, null, null));
        seen.sent(shuttle, POST, 2, 14, ShipmentItem.State.LOST);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.PROVEN);
        assertThat(steps(20)).containsExactly(Step.LOST, Step.KEEP);
    }

    @Test
    void whatIsLostOnItsWayIsLostAndWhatIsLostOnSetIsNoMatterOfPost() {
        seen.copy(roll, shuttle, new Like(SET, Condition.LOST, null, null));
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.NOT_SENT);
        assertThat(seen.book(20).media()).isEmpty();
        seen.sent(shuttle, POST, 2, 14, ShipmentItem.State.LOST);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.LOST);
        assertThat(steps(20)).containsExactly(Step.LOST);
    }

    @Test
    void aTripBeforeTheCopyWasWrittenIsNotItsOwn() {
        seen.copy(roll, shuttle, new Like(SET, Condition.LOST, null, null));
        seen.sent(shuttle, POST, -20, null, ShipmentItem.State.ARRIVED);
        seen.stay(shuttle, -15, -5);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.NOT_SENT);
    }

    @Test
    void whatLeavesUnreadIsSaidToHaveLeftUnread() {
        seen.copy(roll, shuttle, Like.AT_SET);
        Stay stay = seen.stay(shuttle, 10, 30);
        seen.said(stay, true, 11);
        assertThat(seen.state(roll, 31)).isEqualTo(PostState.WENT_BACK);
        assertThat(seen.book(31).received()).as("it was there").isEqualTo(1);
        assertThat(seen.book(31).media()).as("it isn't any more").isEmpty();
    }

    @Test
    void whatWasProvenThereStaysSoWhereverItLiesNow() {
        Copy copy = seen.copy(roll, shuttle, Like.AT_SET);
        seen.stay(shuttle, 10, 30);
        seen.checked(copy, Verdict.PROVEN, 15);
        assertThat(seen.state(roll, 31)).isEqualTo(PostState.PROVEN);
    }

    @Test
    void anErasedCopyIsGoneAndTellsOnlyThatItWasThere() {
        seen.copy(roll, shuttle, new Like(SET, Condition.GOOD, null, hour(40)));
        assertThat(seen.state(roll, 50)).isEqualTo(PostState.NOT_SENT);
        seen.stay(shuttle, 10, 30);
        assertThat(seen.state(roll, 50)).isEqualTo(PostState.WENT_BACK);
    }

    @Test
    void inQuarantineNothingCounts() {
        Copy copy = seen.copy(roll, shuttle, new Like(POST, Condition.QUARANTINED, null, null));
        seen.stay(shuttle, 10, null);
        seen.checked(copy, Verdict.PROVEN, 12);
        assertThat(seen.state(roll, 20)).isEqualTo(PostState.DOUBTED);
        assertThat(seen.book(20).proven()).isZero();
        assertThat(steps(20)).containsExactly(Step.DOUBTED);
    }

    @Test
    void aMediumThatComesBackIsReadThenHeldClearedErasedAndSentBackAsItsGateSays() {
        Copy copy = seen.copy(roll, shuttle, Like.AT_POST);
        Stay stay = seen.stay(shuttle, 10, null);
        seen.said(stay, true, 11);
        gate(MediumStanding.State.HELD);
        assertThat(steps(20)).containsExactly(Step.READ);
        seen.checked(copy, Verdict.PROVEN, 12);
        assertThat(steps(20)).containsExactly(Step.HOLD);
        gate(MediumStanding.State.READY);
        assertThat(steps(20)).containsExactly(Step.CLEAR);
        gate(MediumStanding.State.CLEARED);
        assertThat(steps(20)).containsExactly(Step.ERASE);

        seen.copies.clear();
        seen.copy(roll, shuttle, new Like(POST, Condition.GOOD, SeenFromPost.SHUTTLE_LEG, hour(40)));
        gate(MediumStanding.State.EMPTY);
        assertThat(steps(50)).containsExactly(Step.SEND_BACK);
        seen.sent(shuttle, SET, 45, null, ShipmentItem.State.PACKED);
        assertThat(steps(50)).containsExactly(Step.LEAVES);
    }

    @Test
    void theGateAloneSaysWhetherAMediumMayBeCleared() {
        Copy copy = seen.copy(roll, shuttle, Like.AT_POST);
        seen.stay(shuttle, 10, null);
        seen.checked(copy, Verdict.PROVEN, 12);
        gate(MediumStanding.State.HELD);
        assertThat(seen.book(20).with(Step.CLEAR, Step.ERASE, Step.SEND_BACK))
                .as("proven at post, but nowhere else")
                .isEmpty();
    }

    @Test
    void aKeptMediumIsReadAndStaysWhateverItsGateSays() {
        UUID tape = UUID.randomUUID();
        Copy copy = seen.copy(roll, tape, Like.TAPE);
        seen.registered(tape);
        seen.gates.put(tape, new MediumStanding(MediumStanding.State.READY, 1, List.of()));
        assertThat(steps(20)).containsExactly(Step.READ);
        seen.checked(copy, Verdict.PROVEN, 12);
        assertThat(steps(20)).containsExactly(Step.KEEP);
    }

    @Test
    void aRollStillInTheCameraIsNotWaitedFor() {
        Roll loaded = new Roll(
                UUID.randomUUID(),
                "A002",
                roll.cameraId(),
                "A",
                roll.unitId(),
                "Main",
                roll.dayId(),
                1,
                roll.dayDate(),
                roll.cardId(),
                "CARD-2",
                1L,
                CardState.IN_CAMERA,
                true,
                roll.formatId(),
                hour(0),
                null,
                null,
                null,
                "",
                0);
        seen.rolls.add(loaded);
        assertThat(seen.book(1).rolls()).extracting(one -> one.roll().code()).containsExactly("A001");
    }

    @Test
    void daysWithTheWorstRollComeFirstAndWithinThemTheWorstRoll() {
        seen.rolls.clear();
        Roll provenRoll = seen.roll("A001", 1);
        Roll lateRoll = seen.roll("A003", 2);
        Roll underWay = seen.roll("A002", 2);
        seen.roll("A004", 3);
        Copy copy = seen.copy(provenRoll, shuttle, Like.AT_POST);
        seen.stay(shuttle, 10, null);
        seen.checked(copy, Verdict.PROVEN, 12);
        UUID late = UUID.randomUUID();
        seen.copy(lateRoll, late, Like.AT_SET);
        seen.sent(late, POST, 2, 14, ShipmentItem.State.UNDER_WAY);
        UUID inTime = UUID.randomUUID();
        seen.copy(underWay, inTime, Like.AT_SET);
        seen.sent(inTime, POST, 2, 40, ShipmentItem.State.UNDER_WAY);

        List<PostDay> days = PostDay.of(seen.book(20).rolls());
        assertThat(days).extracting(PostDay::number).containsExactly(2, 3, 1);
        assertThat(days.get(0).rolls())
                .extracting(one -> one.roll().code())
                .as("late before on its way")
                .containsExactly("A003", "A002");
        assertThat(days.get(2).isDone()).isTrue();
        assertThat(PostDay.of(seen.book(20).rolls().stream()
                        .filter(PostFilter.of("late", "")::shows)
                        .toList()))
                .hasSize(1);
        assertThat(seen.book(20).rolls().stream().filter(PostFilter.of("OPEN", " a00 ")::shows))
                .hasSize(3);
    }

    private void gate(MediumStanding.State state) {
        seen.gates.put(shuttle, new MediumStanding(state, 1, List.of()));
    }

    private List<Step> steps(int now) {
        return seen.book(now).media().stream().map(MediumAtPost::step).toList();
    }
}
