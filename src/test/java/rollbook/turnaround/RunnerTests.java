package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.bars;

import java.util.List;
import org.junit.jupiter.api.Test;

/** All days are worked by hand. */
class RunnerTests {
    @Test
    void aRunnerLeavesWithABatchOrWhenTheOldestCardHasWaitedLongEnough() {
        TestDay day = TestDay.ofOneCard();
        day.runner = new Runner(Delay.fixed(2 * MINUTE), 2, 15 * MINUTE, Delay.fixed(3 * MINUTE));
        day.wrapMillis = 60 * MINUTE;
        DayResult batches = day.played();

        // Pulled at 10, 20, …: the second makes the batch full, the fourth the next one, wrap takes the last.
        assertThat(bars(batches, "CARD 1"))
                .startsWith("0–10 IN_CAMERA", "10–20 PULLED", "20–22 CARRIED", "22–32 COPYING", "32–35 RETURNING");
        assertThat(bars(batches, "CARD 2"))
                .startsWith("0–10 BLANK", "10–20 IN_CAMERA", "20–22 CARRIED", "22–32 QUEUED");
        assertThat(bars(batches, "CARD 6")).contains("60–62 CARRIED");

        day.runner = new Runner(Delay.NONE, 2, 7 * MINUTE, Delay.NONE);
        assertThat(bars(day.played(), "CARD 1")).startsWith("0–10 IN_CAMERA", "10–17 PULLED", "17–27 COPYING");
        assertThat(bars(day.played(), "CARD 2")).startsWith("0–10 BLANK", "10–20 IN_CAMERA", "20–27 PULLED");
    }

    @Test
    void cardsThatArePulledAtTheSameInstantGoTogether() {
        TestDay day = new TestDay();
        day.wrapMillis = 20 * MINUTE;
        day.runner = new Runner(Delay.exponential(5 * MINUTE), 1, 0, Delay.NONE);

        DayResult played = Simulation.run(day.plan(), Draws.of(1, 0));
        assertThat(bars(played, "CARD 1").get(1))
                .endsWith("CARRIED")
                .isEqualTo(bars(played, "CARD 2").get(1));
    }

    @Test
    void theLongestWaitIsCountedFromTheOldestCardOfEachBatch() {
        TestDay day = TestDay.ofOneCard();
        day.runner = new Runner(Delay.NONE, 3, 25 * MINUTE, Delay.NONE);
        day.wrapMillis = 70 * MINUTE;
        day.breaks = List.of(new Break(40 * MINUTE, 60 * MINUTE));

        // Pulled at 10, 20, 30: a batch. The next at 40 and not before 70, so it leaves at 65.
        assertThat(bars(day.played(), "CARD 1")).contains("10–30 PULLED");
        assertThat(bars(day.played(), "CARD 4")).contains("40–65 PULLED");
    }

    @Test
    void atTheLastWrapOfAStationTheRunnerTakesWhateverIsThere() {
        TestDay day = TestDay.ofOneCard();
        day.runner = new Runner(Delay.fixed(MINUTE), 5, TestDay.HOUR, Delay.NONE);
        day.wrapMillis = 25 * MINUTE;

        assertThat(bars(day.played(), "CARD 1")).contains("10–25 PULLED", "25–26 CARRIED", "26–36 COPYING");
        assertThat(bars(day.played(), "CARD 3")).contains("20–25 IN_CAMERA", "25–26 CARRIED");
    }
}
