package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.bars;

import java.util.List;
import org.junit.jupiter.api.Test;

/** All days are worked by hand. */
class CameraTests {
    @Test
    void aCameraWithOneCardWaitsWhileItIsCopied() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.cards = 1;

        // Full at 10, copied at 20, full again at 30, which is the wrap; copied at 40.
        assertThat(bars(day.played(), "CARD 1"))
                .containsExactly("0–10 IN_CAMERA", "10–20 COPYING", "20–30 IN_CAMERA", "30–40 COPYING");
        assertThat(day.played().cameras())
                .containsExactly(new CameraDay("CAM 1", 20 * MINUTE, 120 * TestDay.GB, 10 * MINUTE, 2));
        assertThat(day.played().overtimeMillis()).isEqualTo(10 * MINUTE);
    }

    /** Source: a hand trace, confirmed by another simulation of the same day when the figures were gathered. */
    @Test
    void twoCamerasWithThreeCardsAndOneReaderAreIdleForAnHourOfTheFirst140Minutes() {
        TestDay day = new TestDay();
        day.cards = 3;
        day.cardBytes = 180 * TestDay.GB; // filled in 30 minutes
        day.takes = TestDay.rolling(30);
        day.readers = List.of(TestDay.reader("READER", 150)); // copied in 20
        day.wrapMillis = 140 * MINUTE;
        DayResult played = day.played();

        assertThat(bars(played, "CARD 1"))
                .containsSubsequence(
                        "0–30 IN_CAMERA", "30–50 COPYING", "50–80 IN_CAMERA", "90–110 COPYING", "110–140 IN_CAMERA");
        assertThat(bars(played, "CARD 2"))
                .containsSubsequence("0–30 IN_CAMERA", "50–70 COPYING", "70–100 IN_CAMERA", "110–130 COPYING");
        assertThat(bars(played, "CARD 3"))
                .containsSubsequence("30–60 IN_CAMERA", "70–90 COPYING", "90–120 IN_CAMERA", "130–150 COPYING");
        assertThat(played.waitingMillis()).isEqualTo(60 * MINUTE);
    }

    @Test
    void aSetUpComesBeforeEachTake() {
        TestDay day = TestDay.ofOneCard();
        day.takes = Takes.of(20, 2, Spread.NONE); // 2 minutes of 6: a set-up takes 4

        assertThat(bars(day.played(), "CAM 1")).containsExactly("4–6 RECORDING");
        day.wrapMillis = 60 * MINUTE;
        assertThat(day.played().cameras().get(0).recordedMillis()).isEqualTo(20 * MINUTE);
    }

    @Test
    void aTakeThatFillsACardGoesOnOnTheNext() {
        TestDay day = TestDay.ofOneCard();
        day.takes = TestDay.rolling(15);
        day.change = Delay.fixed(MINUTE);
        day.wrapMillis = 20 * MINUTE;

        assertThat(bars(day.played(), "CAM 1"))
                .containsExactly("0–10 RECORDING", "10–11 CHANGING", "11–16 RECORDING", "16–20 RECORDING");
    }

    @Test
    void aWrapEndsATake() {
        TestDay day = TestDay.ofOneCard();
        day.takes = TestDay.rolling(4);

        assertThat(bars(day.played(), "CAM 1")).containsExactly("0–4 RECORDING", "4–8 RECORDING", "8–10 RECORDING");
        assertThat(day.played().recordedBytes()).isEqualTo(60 * TestDay.GB);
    }

    @Test
    void takesAndSetUpsStandStillInABreak() {
        TestDay day = TestDay.ofOneCard();
        day.takes = new Takes(Delay.fixed(3 * MINUTE), Delay.fixed(2 * MINUTE));
        day.breaks = List.of(new Break(MINUTE, 6 * MINUTE), new Break(8 * MINUTE, 9 * MINUTE));
        day.wrapMillis = 15 * MINUTE;

        // A minute of the set-up is left at 6, so the take begins at 7; a minute of it is done at 8, the others by 11.
        assertThat(bars(day.played(), "CAM 1"))
                .containsExactly("1–6 BREAK", "7–8 RECORDING", "8–9 BREAK", "9–11 RECORDING", "13–15 RECORDING");
    }

    @Test
    void aCardIsPulledAfterTheTakeThatReachedTheLevel() {
        TestDay day = TestDay.ofOneCard();
        day.takes = TestDay.rolling(3);
        day.pull = new PullRule(0.5, false);

        // Half a card is five minutes, so the take that ends at 6 reaches it.
        assertThat(bars(day.played(), "CARD 1")).startsWith("0–6 IN_CAMERA", "6–12 COPYING");
        assertThat(bars(day.played(), "CARD 2")).startsWith("0–6 BLANK", "6–10 IN_CAMERA");
    }

    @Test
    void aCardIsPulledAtABreakOnlyIfAskedAndIfAnythingIsOnIt() {
        TestDay day = TestDay.ofOneCard();
        day.takes = TestDay.rolling(2);
        day.breaks = List.of(new Break(4 * MINUTE, 5 * MINUTE), new Break(5 * MINUTE, 6 * MINUTE));

        assertThat(bars(day.played(), "CARD 1")).startsWith("0–10 IN_CAMERA");
        day.pull = new PullRule(1, true);
        assertThat(bars(day.played(), "CARD 1")).startsWith("0–4 IN_CAMERA");
        assertThat(bars(day.played(), "CARD 2")).startsWith("0–4 BLANK", "4–10 IN_CAMERA");
    }

    @Test
    void changingIsNotWaitingAndGoesOnInTheSetUp() {
        TestDay day = TestDay.ofOneCard();
        day.takes = new Takes(Delay.fixed(3 * MINUTE), Delay.fixed(2 * MINUTE));
        day.pull = new PullRule(0, false);
        day.change = Delay.fixed(4 * MINUTE);
        day.wrapMillis = 12 * MINUTE;

        // Pulled at 5; the next take is due at 7, and the card is in at 9.
        assertThat(bars(day.played(), "CAM 1")).containsExactly("2–5 RECORDING", "5–9 CHANGING", "9–12 RECORDING");
        assertThat(day.played().waitingMillis()).isZero();
    }

    @Test
    void noCameraWaitsInItsBreakOrBeforeATakeIsDue() {
        TestDay day = TestDay.ofOneCard();
        day.cards = 1;
        day.takes = new Takes(Delay.fixed(10 * MINUTE), Delay.fixed(2 * MINUTE));
        day.breaks = List.of(new Break(16 * MINUTE, 18 * MINUTE));
        day.wrapMillis = 25 * MINUTE;

        // Full at 12, due at 14, copied at 22: waiting from 14 to 16 and from 18 to 22.
        assertThat(bars(day.played(), "CAM 1"))
                .containsExactly("2–12 RECORDING", "14–16 WAITING", "16–18 BREAK", "18–22 WAITING", "22–25 RECORDING");
        assertThat(day.played().waitingMillis()).isEqualTo(6 * MINUTE);
    }

    @Test
    void aWaitThatTheWrapEndsCounts() {
        TestDay day = TestDay.ofOneCard();
        day.cards = 1;
        day.wrapMillis = 17 * MINUTE;

        assertThat(day.played().waitingMillis()).isEqualTo(7 * MINUTE);
        assertThat(bars(day.played(), "CARD 1")).containsExactly("0–10 IN_CAMERA", "10–20 COPYING");
    }

    @Test
    void aCardThatNothingWasRecordedOnGoesBackToTheShelf() {
        TestDay day = TestDay.ofOneCard();
        day.takes = new Takes(Delay.fixed(MINUTE), Delay.fixed(10 * MINUTE));

        assertThat(day.played().offloads()).isZero();
        assertThat(day.played().lastProvenMillis()).isEqualTo(10 * MINUTE);
        assertThat(day.played().cameras().get(0).cardsPulled()).isZero();
    }

    @Test
    void camerasGetBlankCardsInTheOrderInWhichTheyAsked() {
        TestDay day = new TestDay();
        day.cards = 2;
        day.pull = new PullRule(0, false);
        day.takes = TestDay.rolling(10);
        day.readers = List.of(TestDay.reader("READER 1", 100), TestDay.reader("READER 2", 60));
        day.wrapMillis = 40 * MINUTE;

        // Both pulled at 10. READER 1 has done CARD 1 at 20, for CAM 1; READER 2 has done CARD 2 at 26:40, for CAM 2,
        // which pulls it at 36:40: 16:40 and 3:20 waiting.
        assertThat(bars(day.played(), "CAM 1")).startsWith("0–10 RECORDING", "10–20 WAITING", "20–30 RECORDING");
        assertThat(day.played().cameras().get(1).waitingMillis()).isEqualTo(20 * MINUTE);
    }
}
