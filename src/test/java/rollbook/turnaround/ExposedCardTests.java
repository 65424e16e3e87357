package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.bars;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Days that begin with cards which are exposed already. Worked by hand: 60 GB at 100 MB/s are 10 minutes. */
class ExposedCardTests {
    private static final double BYTES_PER_FRAME = 4_000_000;

    @Test
    void exposedCardsTakeTheReaderInTheirOrderBeforeThatOfTheDay() {
        DayResult day = played(TestDay.ofOneCard(), exposed("X", 60), exposed("Y", 30));

        assertThat(bars(day, "X")).startsWith("0–10 COPYING");
        assertThat(bars(day, "Y")).startsWith("0–10 QUEUED", "10–15 COPYING");
        assertThat(bars(day, "CARD 1")).contains("10–15 QUEUED", "15–25 COPYING");
        assertThat(day.overtimeMillis()).isEqualTo(15 * MINUTE);
        assertThat(day.offloads()).isEqualTo(3);
    }

    /** Without the exposed card the camera waits for its only card from minute 10 to 20, with it for nothing. */
    @Test
    void onceItIsClearedItGoesRoundWithTheOthers() {
        TestDay day = TestDay.ofOneCard();
        day.wrapMillis = 20 * MINUTE;
        day.cards = 1;

        assertThat(day.played().waitingMillis()).isEqualTo(10 * MINUTE);
        assertThat(played(day, exposed("X", 60)).waitingMillis()).isZero();
    }

    @Test
    void aDayOnWhichNothingIsRecordedEndsWhenTheExposedCardsAreProven() {
        TestDay day = TestDay.ofOneCard();
        day.cards = 0;

        assertThat(played(day, exposed("X", 60), exposed("Y", 60)).lastProvenMillis())
                .isEqualTo(20 * MINUTE);
    }

    /** An encoder of 10 frames of 4 MB a second takes 1,500 s for 60 GB; the drive alone would take 60. */
    @Test
    void anEncoderCountsTheFramesOnAnExposedCard() {
        TestDay day = TestDay.ofOneCard();
        day.cards = 0;
        day.encoder = new Encoder.ByFrames(10);
        day.destinations =
                List.of(new Destination("DRIVE", TestDay.megabytes(1000), TestDay.megabytes(1000), true, 0.6));

        assertThat(played(day, exposed("X", 60)).lastProvenMillis()).isEqualTo(25 * MINUTE);
    }

    @Test
    void aCardThatNoReaderTakesOrThatHoldsMoreThanItCanIsRefused() {
        DayPlan plan = TestDay.ofOneCard().plan();
        assertThatThrownBy(() -> with(plan, new ExposedCard("X", "STATION", "OTHER", 1, BYTES_PER_FRAME)))
                .hasMessageStartingWith("exposed");
        assertThatThrownBy(() -> with(plan, exposed("X", 61))).hasMessageStartingWith("exposed");
        assertThatThrownBy(() -> with(plan, new ExposedCard("X", "ELSEWHERE", "CARD", 1, BYTES_PER_FRAME)))
                .hasMessageStartingWith("exposed");
        assertThatThrownBy(() -> with(plan, exposed("X", 1), exposed("X", 2))).hasMessageStartingWith("exposed");
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void onDrawnDaysAnExposedCardIsInOnePlaceAtEveryInstantAndEveryOneIsCopied(long seed) {
        DayPlan drawn = RandomDay.of(seed);
        Station station = drawn.stations().get(0);
        String type = station.readers().get(0).ways().get(0).cardType();
        DayPlan plan = with(
                drawn,
                new ExposedCard("X", station.name(), type, 100 * TestDay.GB, BYTES_PER_FRAME),
                new ExposedCard("Y", station.name(), type, 50 * TestDay.GB, BYTES_PER_FRAME));
        DayResult day = Simulation.run(plan, Draws.of(seed, 0));

        for (String card : List.of("X", "Y")) {
            long at = day.startMillis();
            for (Activity bar : day.activities()) {
                if (bar.of() == Activity.Lane.CARD && bar.lane().equals(card)) {
                    assertThat(bar.fromMillis()).isEqualTo(at);
                    at = bar.toMillis();
                }
            }
            assertThat(at).isEqualTo(day.endMillis());
        }
        if (day.unprovenCards() == 0) {
            assertThat(day.activities())
                    .filteredOn(bar -> bar.kind() == Activity.Kind.WRITING && bar.camera() == null)
                    .extracting(Activity::card)
                    .contains("X", "Y");
        }
    }

    private static DayResult played(TestDay day, ExposedCard... exposed) {
        return Simulation.run(with(day.plan(), exposed), Draws.MEANS);
    }

    private static DayPlan with(DayPlan plan, ExposedCard... exposed) {
        return new DayPlan(
                plan.cameras(), plan.cards(), List.of(exposed), plan.runner(), plan.stations(), plan.mishaps());
    }

    private static ExposedCard exposed(String name, long gigabytes) {
        return new ExposedCard(name, "STATION", "CARD", gigabytes * TestDay.GB, BYTES_PER_FRAME);
    }
}
