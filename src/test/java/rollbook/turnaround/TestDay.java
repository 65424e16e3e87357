package rollbook.turnaround;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;

/**
 * A day to begin a test with, and to change field by field. Two cameras from midnight on record 100 MB/s without a pause,
 * each card of 60 GB so for ten minutes; one reader copies 100 MB/s; nothing else takes time.
 */
final class TestDay {
    static final long SECOND = 1000;
    static final long MINUTE = 60 * SECOND;
    static final long HOUR = 60 * MINUTE;
    static final long GB = 1_000_000_000;

    List<String> cameras = List.of("CAM 1", "CAM 2");
    DataRate recorded = megabytes(100);
    double framesPerSecond = 25;
    long wrapMillis = 30 * MINUTE;
    List<Break> breaks = List.of();
    Takes takes = rolling(1);
    PullRule pull = PullRule.WHEN_FULL;
    Delay change = Delay.NONE;
    int cards = 10;
    long cardBytes = 60 * GB;
    Runner runner = Runner.NONE;
    List<Reader> readers = List.of(reader("READER", 100));

    @Nullable
    DataRate hostBus;

    @Nullable
    Encoder encoder;

    List<Destination> destinations = List.of(destination("DRIVE", 1000));
    Order writing = Order.TOGETHER;
    ReadBack readBack = ReadBack.NEVER;
    Delay handling = Delay.NONE;
    Delay clearing = Delay.NONE;
    Spread work = Spread.NONE;
    double repeatChance;
    List<Mishap> mishaps = new ArrayList<>();

    static DataRate megabytes(long perSecond) {
        return DataRate.ofBytesPerSecond(perSecond * 1_000_000);
    }

    /** Takes of so many minutes without set-ups. */
    static Takes rolling(long minutes) {
        return new Takes(Delay.fixed(minutes * MINUTE), Delay.NONE);
    }

    /** Takes the cards directly. */
    static Reader reader(String name, long megabytesPerSecond) {
        return new Reader(name, List.of(new Way("CARD", null, megabytes(megabytesPerSecond))));
    }

    /** Writes and reads at the same speed. */
    static Destination destination(String name, long megabytesPerSecond) {
        return Destination.asRecorded(name, megabytes(megabytesPerSecond), megabytes(megabytesPerSecond));
    }

    /** One camera that fills one card and wraps. */
    static TestDay ofOneCard() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        day.wrapMillis = 10 * MINUTE;
        return day;
    }

    DayPlan plan() {
        List<CameraShift> shifts =
                cameras.stream().map(camera -> shift(camera, "CARD")).toList();
        Station station = new Station(
                "STATION",
                readers,
                hostBus,
                encoder,
                destinations,
                writing,
                readBack,
                handling,
                clearing,
                work,
                repeatChance);
        return new DayPlan(shifts, List.of(new CardStock("CARD", cardBytes, cards)), runner, List.of(station), mishaps);
    }

    CameraShift shift(String camera, String cardType) {
        return new CameraShift(
                camera, "STATION", cardType, recorded, framesPerSecond, 0, wrapMillis, breaks, takes, pull, change);
    }

    DayResult played() {
        return Simulation.run(plan(), Draws.MEANS);
    }

    /** When the last card is proven, counted from the wrap. */
    long overtimeSeconds() {
        return played().overtimeMillis() / SECOND;
    }

    /** The bars of a lane in words: minutes from and to, and what. */
    static List<String> bars(DayResult day, String lane) {
        return day.activities().stream()
                .filter(bar -> bar.lane().equals(lane))
                .map(bar -> minutes(bar.fromMillis()) + "–" + minutes(bar.toMillis()) + " " + bar.kind())
                .toList();
    }

    private static String minutes(long millis) {
        return millis % MINUTE == 0 ? String.valueOf(millis / MINUTE) : String.valueOf(millis / (double) MINUTE);
    }
}
