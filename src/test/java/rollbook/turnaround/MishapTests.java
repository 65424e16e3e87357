package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.bars;
import static rollbook.turnaround.TestDay.reader;

import java.util.List;
import org.junit.jupiter.api.Test;

/** All days are worked by hand. */
class MishapTests {
    @Test
    void anOffloadThatProvesBadStartsAgainAtTheHeadOfTheQueue() {
        TestDay day = new TestDay();
        day.wrapMillis = 10 * MINUTE;
        day.handling = Delay.fixed(MINUTE);
        day.mishaps = List.of(new Mishap.Repeat(1));

        assertThat(bars(day.played(), "CARD 1"))
                .endsWith("10–11 HANDLING", "11–21 COPYING", "21–22 HANDLING", "22–32 COPYING", "32–43 BLANK");
        assertThat(bars(day.played(), "CARD 2")).endsWith("10–32 QUEUED", "32–33 HANDLING", "33–43 COPYING");
        assertThat(day.played().offloads()).isEqualTo(3);
    }

    @Test
    void badCopiesAreFoundOnlyWhenTheyAreReadBack() {
        TestDay day = TestDay.ofOneCard();
        day.readBack = new ReadBack(ReadBack.When.READER_FREE, Order.TOGETHER);
        day.mishaps = List.of(new Mishap.Repeat(1));

        assertThat(bars(day.played(), "CARD 1"))
                .endsWith("10–20 COPYING", "20–21 READING_BACK", "21–31 COPYING", "31–32 READING_BACK");
    }

    @Test
    void withAChanceOfARepeatTheNumberOfTheOffloadDecides() {
        TestDay day = TestDay.ofOneCard();
        day.repeatChance = 0.25;

        assertThat(Simulation.run(day.plan(), (purpose, entity) -> () -> 0.3).offloads())
                .isEqualTo(1);
        double[] numbers = {0.1, 0.2, 0.3};
        int[] used = {0};
        assertThat(Simulation.run(day.plan(), (purpose, entity) -> () -> numbers[used[0]++])
                        .offloads())
                .isEqualTo(3);
        assertThat(day.played().offloads()).isEqualTo(1);
    }

    @Test
    void theCardInAReaderThatDiesIsNextForAnotherAndStartsAgain() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1", "CAM 2", "CAM 3");
        day.wrapMillis = 10 * MINUTE;
        day.readers = List.of(reader("READER 1", 100), reader("READER 2", 75));
        day.mishaps = List.of(new Mishap.ReaderDies("READER 1", 15 * MINUTE));

        // READER 2 is free at 10 + 60 GB / 75 MB/s = 23:20; the third card, in the queue since 10, comes after the
        // first.
        DayResult played = day.played();
        assertThat(played.activities().stream().filter(bar -> bar.lane().equals("READER 2")))
                .extracting(Activity::card)
                .containsExactly("CARD 2", "CARD 1", "CARD 3");
        assertThat(bars(played, "READER 1")).containsExactly("10–15 COPYING");
        assertThat(played.overtimeMillis()).isEqualTo(40 * MINUTE);
        assertThat(played.parts()).anySatisfy(use -> {
            assertThat(use.part().name()).isEqualTo("READER 1");
            assertThat(use.busyMillis()).isEqualTo(5 * MINUTE);
        });
    }

    @Test
    void aReaderThatDiesWhenACardComesDoesNotGetIt() {
        TestDay day = TestDay.ofOneCard();
        day.readers = List.of(reader("READER 1", 100), reader("READER 2", 75));
        day.mishaps = List.of(new Mishap.ReaderDies("READER 1", 10 * MINUTE));

        assertThat(day.played().offloads()).isEqualTo(1);
    }

    @Test
    void withoutAReaderCardsStayUnproven() {
        TestDay day = new TestDay();
        day.mishaps = List.of(new Mishap.ReaderDies("READER", 15 * MINUTE));

        DayResult played = day.played();
        assertThat(played.unprovenCards()).isEqualTo(6);
        assertThat(played.lastProvenMillis()).isEqualTo(day.wrapMillis);
        assertThat(bars(played, "CARD 1")).containsExactly("0–10 IN_CAMERA", "10–15 COPYING", "15–30 QUEUED");
    }

    @Test
    void aReaderThatDiesAfterTheDayOrWhileNobodyHasItChangesNothing() {
        TestDay day = TestDay.ofOneCard();
        day.readers = List.of(reader("READER", 100), reader("READER 2", 50));
        DayResult usual = day.played();

        day.mishaps = List.of(new Mishap.ReaderDies("READER", 5 * TestDay.HOUR), new Mishap.ReaderDies("READER 2", 1));
        assertThat(day.played()).isEqualTo(usual);
    }
}
