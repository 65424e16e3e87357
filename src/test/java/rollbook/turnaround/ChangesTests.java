package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import rollbook.turnaround.Changes.Effect;

/** Days without chance, so that each difference is exact. Minutes since midnight, when the camera is called. */
class ChangesTests {
    private static final long SEED = 7;

    /**
     * A card is full after 10 minutes and away for 15: with two cards the camera waits from 20 to 25, with three never. So
     * the last card is half full at the wrap, at 30, and proven at 35; with three it is full and proven at 40.
     */
    @Test
    void oneMoreCardEndsTheWaiting() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.cards = 2;
        day.clearing = Delay.fixed(5 * TestDay.MINUTE);

        assertThat(effect(day, new Change.MoreCards("CARD", 1)).waitingMinutes())
                .isEqualTo(new Estimate(-5, -5, -5));
        assertThat(lastProven(day, new Change.MoreCards("CARD", 1))).isEqualTo(5);
        assertThat(effect(day, new Change.MoreCards("CARD", 1)).helps()).isTrue();
    }

    /** Both cards come at 10 and are read in 10 minutes each: proven at 20 and 30 by one reader, both at 20 by two. */
    @Test
    void oneMoreReaderEndsTheQueue() {
        TestDay day = twoCards();
        Change reader =
                Change.OneMoreReader.likeTheFastest(day.plan().stations().get(0));

        assertThat(effect(day, reader).lastProvenMinutes()).isEqualTo(new Estimate(-10, -10, -10));
        assertThat(effect(day, reader).overtimeMinutes()).isEqualTo(new Estimate(-10, -10, -10));
    }

    /**
     * Two cards, both full at 10, on a drive of 100 MB/s; the cameras wrap at 30. Through one reader they are back at 20 and
     * 30, so the cameras wait 10 and 20 minutes. Through two they share the drive and are both back at 30.
     */
    @Test
    void oneMoreReaderBeforeADriveThatIsTheSlowestMakesTheFirstCardWaitForTheSecond() {
        TestDay day = new TestDay();
        day.cards = 2;
        day.readers = List.of(TestDay.reader("READER", 1000));
        day.destinations = List.of(TestDay.destination("DRIVE", 100));
        Change reader =
                Change.OneMoreReader.likeTheFastest(day.plan().stations().get(0));

        assertThat(effect(day, reader).waitingMinutes()).isEqualTo(new Estimate(10, 10, 10));
        assertThat(effect(day, reader).helps()).isFalse();
    }

    /** 60 GB at 200 MB/s take 5 minutes instead of 10. */
    @Test
    void aFasterWayIntoTheReaderHalvesTheTime() {
        Change adapter = new Change.OtherWay("READER", new Way("CARD", "ADAPTER", TestDay.megabytes(200)));

        assertThat(lastProven(TestDay.ofOneCard(), adapter)).isEqualTo(-5);
    }

    /** Onto 50 MB/s the card takes 20 minutes, six tenths of it 12; the encoder takes 40 MB/s: 25 minutes. */
    @Test
    void encodingHelpsASlowDriveUnlessTheEncoderIsSlower() {
        TestDay day = TestDay.ofOneCard();
        day.destinations = List.of(TestDay.destination("DRIVE", 50));
        Encoder fast = new Encoder.ByBytes(TestDay.megabytes(500));
        Encoder slow = new Encoder.ByBytes(TestDay.megabytes(40));

        assertThat(lastProven(day, new Change.EncodingOn("DRIVE", fast, 0.6))).isEqualTo(-8);
        assertThat(lastProven(day, new Change.EncodingOn("DRIVE", slow, 0.6))).isEqualTo(5);
        day.encoder = slow;
        day.destinations = List.of(new Destination("DRIVE", TestDay.megabytes(50), TestDay.megabytes(50), true, 0.6));
        assertThat(lastProven(day, new Change.EncodingOff("DRIVE"))).isEqualTo(-5);
    }

    /** Written at 50 MB/s in 20 minutes, at 75 in 13⅓. */
    @Test
    void aFasterDriveHelpsWhereItIsTheSlowest() {
        TestDay day = TestDay.ofOneCard();
        day.destinations = List.of(TestDay.destination("DRIVE", 50));
        Change faster = new Change.OtherSpeed("DRIVE", TestDay.megabytes(75), TestDay.megabytes(75));

        assertThat(lastProven(day, faster)).isCloseTo(-(20 - 800 / 60.0), within(1e-9));
    }

    /** One at a time, each takes the reader's 10 minutes; a second drive at 50 MB/s takes 20. */
    @Test
    void anotherDestinationCostsTimeUnlessItIsFast() {
        TestDay day = TestDay.ofOneCard();

        assertThat(lastProven(day, more("FAST", 1000))).isZero();
        assertThat(lastProven(day, more("SLOW", 50))).isEqualTo(10);
        day.destinations = List.of(TestDay.destination("DRIVE", 1000), TestDay.destination("DRIVE 2", 1000));
        assertThat(lastProven(day, new Change.OtherWriting("STATION", Order.ONE_AFTER_ANOTHER)))
                .isEqualTo(10);
    }

    /**
     * Reading back takes as long as copying, at 100 MB/s both. Held by its card the reader copies from 10 to 20, proves until
     * 30, copies until 40, proves until 50. Free after copying, it copies the second from 20, while the first is read back;
     * sharing the drive, both take until 40; the second is read back until 50.
     */
    @Test
    void freeingTheReaderBeforeTheReadBackBringsNothingIfTheDriveIsTheSlowest() {
        TestDay day = twoCards();
        day.readers = List.of(TestDay.reader("READER", 1000));
        day.destinations = List.of(TestDay.destination("DRIVE", 100));
        day.readBack = new ReadBack(ReadBack.When.HOLDING_READER, Order.TOGETHER);
        Change free = new Change.OtherReadBack("STATION", new ReadBack(ReadBack.When.READER_FREE, Order.TOGETHER));

        assertThat(lastProven(day, free)).isZero();
        assertThat(effect(day, free).mayBeNothing()).isTrue();
    }

    /** The drive reads at 1,000 MB/s, so a card is copied in 10 minutes and read back in one, which the second needn’t wait for. */
    @Test
    void freeingTheReaderBeforeTheReadBackHelpsWhereTheReaderIsTheSlowest() {
        TestDay day = twoCards();
        day.readBack = new ReadBack(ReadBack.When.HOLDING_READER, Order.TOGETHER);
        Change free = new Change.OtherReadBack("STATION", new ReadBack(ReadBack.When.READER_FREE, Order.TOGETHER));

        // Held: 20, 21, 31, 32. Free: 20, 21 beside the copying until 30, then 31.
        assertThat(lastProven(day, free)).isEqualTo(-1);
    }

    @Test
    void whatHelpsMostComesFirstThenWhatBringsNothingAndAtLastWhatHarms() {
        TestDay day = twoCards();
        day.cards = 2;
        Proposal harm = new Proposal(more("SLOW", 50), 0, 0);
        Proposal nothing = new Proposal(new Change.MoreCards("CARD", 1), 500, 0);
        Proposal adapter =
                new Proposal(new Change.OtherWay("READER", new Way("CARD", null, TestDay.megabytes(120))), 100, 10);
        Proposal reader = new Proposal(
                Change.OneMoreReader.likeTheFastest(day.plan().stations().get(0)), 0, 6_000);

        List<Effect> effects = Changes.of(day.plan(), List.of(harm, nothing, adapter, reader), 3, SEED, 2)
                .effects();

        assertThat(effects).extracting(Effect::proposal).containsExactly(reader, adapter, nothing, harm);
        assertThat(effects).extracting(Effect::costMinorUnits).containsExactly(18_000L, 130L, 500L, 0L);
        assertThat(effects.get(2).difference().mayBeNothing()).isTrue();
        assertThat(effects.get(3).difference().helps()).isFalse();
    }

    @Test
    void whatIsNotThereCannotBeChanged() {
        DayPlan plan = new TestDay().plan();
        for (Change change : List.of(
                new Change.MoreCards("NONE", 1),
                new Change.OtherWay("NONE", new Way("CARD", null, TestDay.megabytes(1))),
                new Change.EncodingOff("NONE"),
                new Change.OtherWriting("NONE", Order.TOGETHER))) {
            assertThatIllegalArgumentException()
                    .as("%s", change)
                    .isThrownBy(() -> change.applyTo(plan))
                    .withMessageContaining("NONE");
        }
    }

    @Test
    void anotherReaderBringsItsOwnAdapter() {
        TestDay day = new TestDay();
        Way way = new Way("CARD", "ADAPTER", TestDay.megabytes(300));
        day.readers = List.of(TestDay.reader("SLOW", 200), new Reader("FAST", List.of(way)));

        Change.OneMoreReader more =
                Change.OneMoreReader.likeTheFastest(day.plan().stations().get(0));

        assertThat(more.reader())
                .isEqualTo(new Reader("FAST +", List.of(new Way("CARD", "ADAPTER +", TestDay.megabytes(300)))));
    }

    /** On the same luck, however much chance there is in the day. The seed is the repetition. */
    @RepeatedTest(15)
    void aChangeThatDoesNothingDiffersByExactlyNothing(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        DayPlan drawn = RandomDay.of(seed);
        DayPlan plan = drawn.withCards(
                drawn.cards().stream().map(stock -> stock.withCards(1_000)).toList());
        Station station = plan.stations().get(0);
        Reader idle = new Reader("IDLE", List.of());
        Destination drive = station.destinations().get(0);
        List<Change> changes = new ArrayList<>(List.of(
                new Change.MoreCards(plan.cards().get(0).cardType(), 5),
                new Change.OneMoreReader(station.name(), idle),
                new Change.OtherSpeed(drive.name(), drive.write(), drive.read()),
                new Change.OtherWriting(station.name(), station.writing()),
                new Change.OtherReadBack(station.name(), station.readBack())));
        for (Change change : changes) {
            Difference difference = Changes.of(plan, List.of(new Proposal(change, 0, 0)), 1, seed, 10)
                    .effects()
                    .get(0)
                    .difference();
            Estimate nothing = new Estimate(0, 0, 0);
            assertThat(difference).as("seed %d, %s", seed, change).isEqualTo(new Difference(nothing, nothing, nothing));
        }
    }

    private static TestDay twoCards() {
        TestDay day = new TestDay();
        day.wrapMillis = 10 * TestDay.MINUTE;
        return day;
    }

    private static Change more(String name, long megabytes) {
        return new Change.OneMoreDestination("STATION", TestDay.destination(name, megabytes));
    }

    private static double lastProven(TestDay day, Change change) {
        return effect(day, change).lastProvenMinutes().value();
    }

    private static Difference effect(TestDay day, Change change) {
        return Changes.of(day.plan(), List.of(new Proposal(change, 0, 0)), 1, SEED, 2)
                .effects()
                .get(0)
                .difference();
    }
}
