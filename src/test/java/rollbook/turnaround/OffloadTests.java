package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.bars;
import static rollbook.turnaround.TestDay.destination;
import static rollbook.turnaround.TestDay.megabytes;
import static rollbook.turnaround.TestDay.reader;

import java.util.List;
import org.junit.jupiter.api.Test;

/** All days are worked by hand. */
class OffloadTests {
    private static final String ADAPTER = "ADAPTER";

    /** That an adapter for a faster port nearly doubles what a reader passes is common practice, no source. */
    @Test
    void ofTwoReadersTheOneWithAnAdapterIsNearlyTwiceAsFast() {
        TestDay day = new TestDay();
        day.readers = List.of(
                reader("READER 1", 400), new Reader("READER 2", List.of(new Way("CARD", ADAPTER, megabytes(750)))));
        day.destinations = List.of(destination("DRIVE", 2000));
        day.wrapMillis = 10 * MINUTE;

        // 60 GB at 750 MB/s are 80 s, at 400 MB/s 150 s; the first in the queue gets the faster way.
        DayResult played = day.played();
        assertThat(bars(played, "READER 2")).containsExactly("10–" + (10 + 80 / 60.0) + " COPYING");
        assertThat(bars(played, "READER 1")).containsExactly("10–12.5 COPYING");
        assertThat(bars(played, "CARD 1")).contains("10–" + (10 + 80 / 60.0) + " COPYING");
    }

    @Test
    void anAdapterThatTwoReadersShareIsInOneOfThemAtATime() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1", "CAM 2", "CAM 3");
        List<Way> ways = List.of(new Way("CARD", null, megabytes(50)), new Way("CARD", ADAPTER, megabytes(100)));
        day.readers = List.of(new Reader("READER 1", ways), new Reader("READER 2", ways));
        day.wrapMillis = 10 * MINUTE;

        // The first card has the adapter until 20; the second goes directly, 20 minutes; the third has the adapter
        // then.
        DayResult played = day.played();
        assertThat(bars(played, "CARD 1")).contains("10–20 COPYING");
        assertThat(bars(played, "CARD 2")).contains("10–30 COPYING");
        assertThat(bars(played, "CARD 3")).endsWith("10–20 QUEUED", "20–30 COPYING");
        assertThat(played.parts())
                .contains(
                        new PartUse(new Part(Part.Kind.ADAPTER, ADAPTER), 20 * MINUTE, 20 / 30.0),
                        new PartUse(new Part(Part.Kind.READER, "READER 2"), 20 * MINUTE, 20 / 30.0));
    }

    @Test
    void aCardThatNoFreeReaderTakesLetsTheNextGoFirst() {
        TestDay day = new TestDay();
        day.readers = List.of(
                reader("READER 1", 100), new Reader("READER 2", List.of(new Way("OTHER", null, megabytes(100)))));
        day.wrapMillis = 10 * MINUTE;
        DayPlan plan = new DayPlan(
                List.of(day.shift("CAM 1", "CARD"), day.shift("CAM 2", "CARD"), day.shift("CAM 3", "OTHER")),
                List.of(new CardStock("CARD", day.cardBytes, 2), new CardStock("OTHER", day.cardBytes, 1)),
                day.runner,
                day.plan().stations(),
                List.of());

        DayResult played = Simulation.run(plan, Draws.MEANS);
        assertThat(bars(played, "CARD 2")).endsWith("10–20 QUEUED", "20–30 COPYING");
        assertThat(bars(played, "OTHER 1")).startsWith("0–10 IN_CAMERA", "10–20 COPYING");
        assertThat(played.greatestQueue()).isEqualTo(1);
        assertThat(played.stations().get(0)).isEqualTo(new StationDay("STATION", 3, 10 * MINUTE, 40 * MINUTE, 1));
    }

    @Test
    void handlingHoldsTheReaderAndClearingDoesNot() {
        TestDay day = new TestDay();
        day.handling = Delay.fixed(2 * MINUTE);
        day.clearing = Delay.fixed(5 * MINUTE);
        day.wrapMillis = 10 * MINUTE;

        assertThat(bars(day.played(), "CARD 1"))
                .endsWith("10–12 HANDLING", "12–22 COPYING", "22–27 CLEARING", "27–39 BLANK");
        assertThat(bars(day.played(), "CARD 2")).endsWith("22–24 HANDLING", "24–34 COPYING", "34–39 CLEARING");
        assertThat(day.played().overtimeMillis()).isEqualTo(24 * MINUTE);
    }

    @Test
    void aReaderIsHeldUntilAllIsReadBackOrIsFreeMeanwhile() {
        TestDay day = new TestDay();
        day.destinations = List.of(destination("DRIVE", 200));
        day.wrapMillis = 10 * MINUTE;

        day.readBack = new ReadBack(ReadBack.When.HOLDING_READER, Order.TOGETHER);
        // Copied in 10, read back in 5 minutes.
        assertThat(bars(day.played(), "READER"))
                .containsExactly("10–20 COPYING", "20–25 READING_BACK", "25–35 COPYING", "35–40 READING_BACK");

        day.readBack = new ReadBack(ReadBack.When.READER_FREE, Order.TOGETHER);
        // From 20 on the drive both writes at 100 of 200 MB/s and reads with the half of its time that is left.
        DayResult free = day.played();
        assertThat(bars(free, "READER")).containsExactly("10–20 COPYING", "20–30 COPYING");
        assertThat(bars(free, "CARD 1")).endsWith("20–30 READING_BACK", "30–35 BLANK");
        assertThat(bars(free, "CARD 2")).endsWith("20–30 COPYING", "30–35 READING_BACK");
    }

    @Test
    void verifyingLaterBeginsWhenTheLastCameraHasWrappedAndKeepsAllCards() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.cards = 2;
        day.destinations = List.of(destination("DRIVE", 200));
        day.readBack = new ReadBack(ReadBack.When.AFTER_WRAP, Order.TOGETHER);

        // Both cards are full at 20 and nothing comes back. At 30 card 1 begins to be read back, card 2 is just copied
        // and begins too: 120 GB at 200 MB/s are ten minutes.
        DayResult played = day.played();
        assertThat(bars(played, "CARD 1"))
                .containsExactly("0–10 IN_CAMERA", "10–20 COPYING", "20–30 UNPROVEN", "30–40 READING_BACK");
        assertThat(bars(played, "CARD 2"))
                .containsExactly("0–10 BLANK", "10–20 IN_CAMERA", "20–30 COPYING", "30–40 READING_BACK");
        assertThat(played.waitingMillis()).isEqualTo(10 * MINUTE);
        assertThat(played.overtimeMillis()).isEqualTo(10 * MINUTE);
    }

    @Test
    void aCardThatIsCopiedAfterTheWrapIsReadBackAtOnce() {
        TestDay day = TestDay.ofOneCard();
        day.readBack = new ReadBack(ReadBack.When.AFTER_WRAP, Order.TOGETHER);

        assertThat(bars(day.played(), "CARD 1")).endsWith("10–20 COPYING", "20–21 READING_BACK");
    }

    @Test
    void theBusCarriesTheBytesInAndOutAgain() {
        TestDay day = TestDay.ofOneCard();
        day.destinations = List.of(destination("DRIVE 1", 1000), destination("DRIVE 2", 1000));
        day.readBack = new ReadBack(ReadBack.When.HOLDING_READER, Order.ONE_AFTER_ANOTHER);
        day.hostBus = megabytes(150);

        // 3 × 60 GB at 150 MB/s are 1,200 s, then twice 60 GB: 400 s each.
        assertThat(day.overtimeSeconds()).isEqualTo(1200 + 2 * 400);
        assertThat(day.played().parts())
                .contains(new PartUse(new Part(Part.Kind.BUS, "STATION"), 2_000_000, 2000 / 2600.0));
    }

    @Test
    void twoOffloadsShareWhatIsTooNarrowForBothAndTheOneWithASlowerWayLeavesTheRest() {
        TestDay day = new TestDay();
        day.readers = List.of(reader("FAST", 500), reader("SLOW", 50));
        day.destinations = List.of(destination("DRIVE", 250));
        day.wrapMillis = 10 * MINUTE;

        // The slow reader takes 50 of 250 MB/s, 1,200 s; the fast one the other 200, 300 s.
        DayResult played = day.played();
        assertThat(bars(played, "FAST")).containsExactly("10–15 COPYING");
        assertThat(bars(played, "SLOW")).containsExactly("10–30 COPYING");
        assertThat(played.hours())
                .containsExactly(
                        new HourLimit(0, new Part(Part.Kind.READER, "SLOW"), 20 * MINUTE),
                        new HourLimit(0, new Part(Part.Kind.DESTINATION, "DRIVE"), 5 * MINUTE));
    }

    @Test
    void whatHoldsOffloadsBackIsToldByTheHour() {
        TestDay day = TestDay.ofOneCard();
        day.cameras = List.of("CAM 1", "CAM 2");
        day.readers = List.of(reader("READER", 15));

        // 4,000 s each: from 0:10 to 1:16:40 and from there to 2:23:20, the second waiting during the first.
        Part readers = new Part(Part.Kind.READERS, "STATION");
        Part reader = new Part(Part.Kind.READER, "READER");
        assertThat(day.played().hours())
                .containsExactly(
                        new HourLimit(0, readers, 50 * MINUTE),
                        new HourLimit(0, reader, 50 * MINUTE),
                        new HourLimit(TestDay.HOUR, readers, 1000 * TestDay.SECOND),
                        new HourLimit(TestDay.HOUR, reader, 60 * MINUTE),
                        new HourLimit(2 * TestDay.HOUR, reader, 1400 * TestDay.SECOND));
    }

    /** That encoding can leave 60 % of the bytes is common practice, no source. */
    @Test
    void encodingCutsTheTimeWhereTheDestinationIsTheBottleneckAndCostsTimeWhereTheEncoderIs() {
        TestDay day = TestDay.ofOneCard();
        day.readers = List.of(reader("READER", 1000));
        day.destinations = List.of(destination("DRIVE", 100));
        assertThat(day.overtimeSeconds()).isEqualTo(600);

        day.destinations = List.of(new Destination("DRIVE", megabytes(100), megabytes(100), true, 0.6));
        day.encoder = new Encoder.ByBytes(megabytes(500));
        assertThat(day.overtimeSeconds()).isEqualTo(360); // 40 % less: 36 GB at 100 MB/s

        day.encoder = new Encoder.ByBytes(megabytes(80));
        assertThat(day.overtimeSeconds()).isEqualTo(750); // 60 GB at 80 MB/s
    }

    @Test
    void anEncoderThatCountsFramesTakesTheirBytesAsTheyCome() {
        TestDay day = TestDay.ofOneCard();
        day.readers = List.of(reader("READER", 1000));
        day.destinations = List.of(new Destination("DRIVE", megabytes(1000), megabytes(1000), true, 0.6));
        day.encoder = new Encoder.ByFrames(50);

        // Ten minutes at 25 frames a second are 15,000 frames: 300 s at 50.
        assertThat(day.overtimeSeconds()).isEqualTo(300);
        day.framesPerSecond = 50;
        assertThat(day.overtimeSeconds()).isEqualTo(600);
    }

    @Test
    void theEncoderWorksOnlyForTheDestinationsThatAreEncoded() {
        TestDay day = TestDay.ofOneCard();
        day.readers = List.of(reader("READER", 1000));
        day.destinations = List.of(
                new Destination("TAPE", megabytes(1000), megabytes(1000), true, 0.6), destination("DRIVE", 200));
        day.encoder = new Encoder.ByBytes(megabytes(100));

        assertThat(day.overtimeSeconds()).isEqualTo(600);
        day.writing = Order.ONE_AFTER_ANOTHER;
        assertThat(day.overtimeSeconds()).isEqualTo(300 + 600);
        assertThat(bars(day.played(), "TAPE")).containsExactly("10–20 WRITING");
        assertThat(bars(day.played(), "DRIVE")).containsExactly("20–25 WRITING");
    }

    @Test
    void slowWorkTakesLonger() {
        TestDay day = TestDay.ofOneCard();
        day.work = new Spread.Uniform(0.5);

        Draws slow = (purpose, entity) -> () -> 0.9; // 1 + 0.5 × (2 × 0.9 − 1) = 1.4
        assertThat(Simulation.run(day.plan(), slow).overtimeMillis()).isEqualTo(14 * MINUTE);
    }
}
