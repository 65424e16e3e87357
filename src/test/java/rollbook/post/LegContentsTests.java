package rollbook.post;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.post.SeenFromPost.Like;

/** What lies on tapes, worked by hand: two rolls on each of three days. */
class LegContentsTests {
    private final SeenFromPost seen = new SeenFromPost();
    private final UUID first = UUID.randomUUID();
    private final UUID second = UUID.randomUUID();
    private List<Roll> rolls;

    @BeforeEach
    void shootThreeDays() {
        rolls = List.of(
                seen.roll("A001", 1),
                seen.roll("A002", 1),
                seen.roll("A003", 2),
                seen.roll("A004", 2),
                seen.roll("A005", 3),
                seen.roll("A006", 3));
    }

    @Test
    void isCompleteUpToTheLastDayBeforeTheFirstGap() {
        assertThat(contents().completeUpTo()).isNull();
        proven(0, first);
        proven(1, first);
        assertThat(contents().completeUpTo().number()).isEqualTo(1);
        proven(2, first);
        proven(4, second);
        proven(5, second);
        assertThat(contents().completeUpTo().number()).as("A004 is missing").isEqualTo(1);
        assertThat(contents().gaps()).extracting(roll -> roll.roll().code()).containsExactly("A004");
        proven(3, second);
        assertThat(contents().completeUpTo().number()).isEqualTo(3);
        assertThat(contents().gaps()).isEmpty();
    }

    @Test
    void aRollThatIsThereButNotProvenIsAGap() {
        proven(0, first);
        Copy copy = seen.copy(rolls.get(1), first, Like.TAPE);
        assertThat(contents().completeUpTo()).as("nobody has read it").isNull();
        seen.checked(copy, Verdict.CONSISTENT, 5);
        assertThat(contents().completeUpTo()).isNull();
        seen.checked(copy, Verdict.PROVEN, 5);
        assertThat(contents().completeUpTo().number()).isEqualTo(1);
    }

    @Test
    void aBadTapeDoesNoHarmWhileAnotherHoldsTheRollProven() {
        proven(0, first);
        proven(1, first);
        seen.checked(seen.copy(rolls.get(1), second, Like.TAPE), Verdict.FAILED, 5);
        assertThat(contents().completeUpTo().number()).isEqualTo(1);
    }

    @Test
    void whatIsLostErasedOrOfAnotherLegIsNotOnIt() {
        proven(0, first);
        seen.copy(rolls.get(1), second, new Like(SeenFromPost.POST, Condition.LOST, SeenFromPost.TAPE_LEG, null));
        seen.copy(
                rolls.get(1),
                first,
                new Like(SeenFromPost.POST, Condition.GOOD, SeenFromPost.TAPE_LEG, SeenFromPost.hour(2)));
        seen.checked(seen.copy(rolls.get(1), UUID.randomUUID(), Like.AT_POST), Verdict.PROVEN, 5);
        assertThat(contents().gaps().get(0).isMissing()).isTrue();
        assertThat(contents().media()).hasSize(1);
    }

    @Test
    void aMediumTellsItsRollsAndItsDays() {
        proven(1, first);
        proven(2, first);
        seen.copy(rolls.get(4), first, Like.TAPE);
        LegContents.Medium medium = contents().media().get(0);
        assertThat(medium.rolls()).isEqualTo(3);
        assertThat(medium.proven()).isEqualTo(2);
        assertThat(medium.first().number()).isEqualTo(1);
        assertThat(medium.last().number()).isEqualTo(3);
    }

    @Test
    void upToADateIsAllThatWasShotUntilItsEnd() {
        assertThat(contents().upTo(SeenFromPost.DAY_1.plusDays(1)).rolls())
                .extracting(roll -> roll.roll().code())
                .containsExactly("A001", "A002", "A003", "A004");
    }

    private void proven(int roll, UUID tape) {
        seen.checked(seen.copy(rolls.get(roll), tape, Like.TAPE), Verdict.PROVEN, 5);
    }

    private LegContents contents() {
        return LegContents.of(
                SeenFromPost.leg(SeenFromPost.TAPE_LEG, "Tape", null), seen.rolls, seen.copies, seen.allStandings());
    }
}
