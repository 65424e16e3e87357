package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rollbook.turnaround.TestDay.HOUR;
import static rollbook.turnaround.TestDay.reader;

import java.util.List;
import java.util.function.Consumer;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import rollbook.quantity.DataRate;

/** A plan that can’t be played is refused when it is made, and the message begins with the field. */
class DayPlanTests {
    @Test
    void everyNameIsGivenOnce() {
        refused("cameras", day -> day.cameras = List.of("CAM 1", "CAM 1"));
        refused("readers", day -> day.readers = List.of(reader("READER", 1), reader("READER", 2)));
        refused("cameras", day -> day.cameras = List.of());
        refused("name", day -> day.cameras = List.of(" "));
    }

    @Test
    void everyCameraHasCardsThatHoldSomethingAndAReaderThatTakesThem() {
        refused("capacityBytes", day -> day.cardBytes = 99_999);
        refused("readers", day -> day.readers = List.of(new Reader("READER", List.of())));
        TestDay day = new TestDay();
        refused("cards", () -> day.plan().withCards(List.of()));
        refused("stations", () -> day.plan().withStations(List.of()));
    }

    @Test
    void breaksAreInOrderWithinTheShift() {
        refused("breaks", day -> day.breaks = List.of(new Break(20, 30), new Break(10, 20)));
        refused("breaks", day -> day.breaks = List.of(new Break(0, 10 * HOUR)));
        refused("fromMillis", () -> new Break(10, 10));
        refused("callMillis", day -> day.wrapMillis = 0);
    }

    @Test
    void anEncodedDestinationNeedsAnEncoderAndOnlyItKeepsFewerBytes() {
        DataRate rate = TestDay.megabytes(1);
        refused("encoder", day -> day.destinations = List.of(new Destination("DRIVE", rate, rate, true, 0.6)));
        refused("keptShare", () -> new Destination("DRIVE", rate, rate, false, 0.6));
        refused("keptShare", () -> new Destination("DRIVE", rate, rate, true, 0));
        refused("destinations", day -> day.destinations = List.of());
    }

    @Test
    void ratesAndTimesAreAboveZeroWhereNothingWouldHappenOtherwise() {
        refused("recordedRate", day -> day.recorded = DataRate.ZERO);
        refused("framesPerSecond", day -> day.framesPerSecond = 0);
        refused("hostBus", day -> day.hostBus = DataRate.ZERO);
        refused("rate", () -> new Encoder.ByBytes(DataRate.ZERO));
        refused("framesPerSecond", () -> new Encoder.ByFrames(0));
        refused("rate", () -> reader("READER", 0));
        refused("write", () -> TestDay.destination("DRIVE", 0));
        refused("take", () -> TestDay.rolling(0));
        refused("recordedMinutesPerHour", () -> Takes.of(61, 1, Spread.NONE));
        refused("meanMillis", () -> Delay.fixed(-1));
    }

    @Test
    void chancesAndSharesAreWithinTheirBounds() {
        refused("repeatChance", day -> day.repeatChance = 1);
        refused("fillLevel", () -> new PullRule(1.1, false));
        refused("share", () -> new Spread.Uniform(1.1));
        refused("variation", () -> new Spread.LogNormal(0));
        refused("batch", () -> new Runner(Delay.NONE, 0, 0, Delay.NONE));
        refused("cards", day -> day.cards = -1);
    }

    @Test
    void aMishapConcernsAReaderThatIsThere() {
        refused("mishaps", day -> day.mishaps = List.of(new Mishap.ReaderDies("READER 9", 0)));
        refused(
                "mishaps",
                day -> day.mishaps = List.of(new Mishap.ReaderDies("READER", 1), new Mishap.ReaderDies("READER", 2)));
        refused("offloadNumber", () -> new Mishap.Repeat(0));
    }

    private static void refused(String field, Consumer<TestDay> change) {
        refused(field, () -> {
            TestDay day = new TestDay();
            change.accept(day);
            day.plan();
        });
    }

    private static void refused(String field, ThrowingCallable making) {
        assertThatIllegalArgumentException().isThrownBy(making).withMessageStartingWith(field + " ");
    }
}
