package rollbook.turnaround;

import static rollbook.turnaround.Compared.assertAllAgree;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rollbook.turnaround.Network.Stop;

/**
 * Several stops for a card beside mean value analysis, no more cards than cameras. Cameras, and all ways and waits in
 * which nobody is in another’s way, are delays. A destination whose offloads share its time is a stop. Of both only the
 * mean time counts, even if a longer take makes more work at every stop of its card, for they keep the product form with
 * customers of different kinds (Baskett, Chandy, Muntz, Palacios 1975; from memory). Readers with one queue keep it when they
 * are held for exponential times. Several visits count as one that takes as long as all. Sources of the published cases:
 * {@code queueing-values.csv}.
 */
class NetworkTests {
    private static final int ROUNDS = 5_000;
    private static final int DAYS = 8;

    /** Of the bytes’ work, so that it isn’t in proportion to the take. */
    private static final Spread ANY = new Spread.LogNormal(0.5);

    /** A reader for each card, so that only destinations make others wait. */
    @Test
    void destinationsWrittenOneAfterAnotherAgree() {
        assertAllAgree(written(20, 40, 20, 30, 10));
        assertAllAgree(written(3, 150, 6.05, 21, 13.5));
        assertAllAgree(written(1, 10, 5, 10));
        assertAllAgree(written(2, 10, 5, 10));
    }

    static List<Compared> written(int cards, double take, double... minutes) {
        List<Destination> drives = drives(minutes, (name, time) -> QueueingDays.written(name, take, time));
        List<Stop> stops = new ArrayList<>();
        List<Predicate<Activity>> bars = new ArrayList<>();
        addDrives(stops, bars, minutes, Activity.Kind.WRITING);
        Station station =
                QueueingDays.station(cards, QueueingDays.AT_ONCE, Delay.NONE, drives, ReadBack.NEVER, Delay.NONE, ANY);

        return compared(
                new Network(take, stops),
                cards,
                bars,
                length -> new QueueingDays(
                        length, cards, cards, QueueingDays.delay(take, Spread.EXPONENTIAL), Runner.NONE, station));
    }

    /** Readers are free again after the handling, as copying takes no time here. */
    @Test
    void destinationsReadBackOneAfterAnotherAgree() {
        assertAllAgree(readBack(6, 1, 20, Runner.NONE, 0.1, 0, 80, 80, 60));
        assertAllAgree(readBack(3, 2, 30, Runner.NONE, 60, 0, 18, 24));
    }

    @Test
    void waysAndWaitsOfAnySpreadAreDelays() {
        Runner runner = new Runner(
                QueueingDays.delay(10, new Spread.Uniform(1)), 1, 0, QueueingDays.delay(5, new Spread.LogNormal(1)));

        assertAllAgree(readBack(5, 2, 20, runner, 40, 15, 25, 15));
    }

    static List<Compared> readBack(
            int cards, int readers, double handling, Runner runner, double take, double clearing, double... minutes) {
        List<Destination> drives = drives(minutes, (name, time) -> QueueingDays.readBack(name, take, time));
        List<Stop> stops = new ArrayList<>(List.of(new Stop(1, handling, readers)));
        List<Predicate<Activity>> bars = new ArrayList<>(List.of(bar -> bar.of() == Activity.Lane.CARD
                && (bar.kind() == Activity.Kind.QUEUED || bar.kind() == Activity.Kind.HANDLING)));
        addDrives(stops, bars, minutes, Activity.Kind.READING_BACK);
        Station station = QueueingDays.station(
                readers,
                QueueingDays.AT_ONCE,
                QueueingDays.delay(handling, Spread.EXPONENTIAL),
                drives,
                new ReadBack(ReadBack.When.READER_FREE, Order.ONE_AFTER_ANOTHER),
                QueueingDays.delay(clearing, new Spread.Uniform(0.5)),
                Spread.NONE);
        double delay = take
                + clearing
                + (runner.walk().meanMillis() + runner.back().meanMillis()) / QueueingDays.MILLIS_PER_MINUTE;

        return compared(
                new Network(delay, stops),
                cards,
                bars,
                length -> new QueueingDays(
                        length, cards, cards, QueueingDays.delay(take, Spread.EXPONENTIAL), runner, station));
    }

    /**
     * Up to three cards are copied at once, each as fast as a reader passes it while the drive keeps up: a queue whose
     * speed depends on the number there. The bytes’ work is exponential and takes are all alike, which counts for nothing as
     * there are no spares.
     */
    @Test
    void readersThatShareADriveAgree() {
        double take = 45;
        double reader = 20;
        double drive = 12;
        int cards = 6;
        int readers = 3;
        BirthDeath chain =
                new BirthDeath(cards, n -> (cards - n) / take, n -> Math.min(Math.min(n, readers) / reader, 1 / drive));
        Station station = QueueingDays.station(
                readers,
                QueueingDays.rate(take, reader),
                Delay.NONE,
                List.of(QueueingDays.written("drive", take, drive)),
                ReadBack.NEVER,
                Delay.NONE,
                Spread.EXPONENTIAL);
        QueueingDays days = new QueueingDays(
                ROUNDS / chain.birthRate(), cards, cards, QueueingDays.delay(take, Spread.NONE), Runner.NONE, station);

        assertAllAgree(new Figures()
                .add("cards a minute", chain.birthRate(), days::cardsAMinute)
                .add("cards there", chain.mean(n -> n), days::cardsThere)
                .add("cards waiting", chain.mean(n -> Math.max(0, n - readers)), days::cardsWaiting)
                .over(DAYS, i -> days.summary(9, i)));
    }

    private static List<Destination> drives(double[] minutes, DriveOf drive) {
        return IntStream.range(0, minutes.length)
                .mapToObj(k -> drive.of("drive " + k, minutes[k]))
                .toList();
    }

    private interface DriveOf {
        Destination of(String name, double minutes);
    }

    private static void addDrives(
            List<Stop> stops, List<Predicate<Activity>> bars, double[] minutes, Activity.Kind kind) {
        for (int k = 0; k < minutes.length; k++) {
            String name = "drive " + k;
            stops.add(new Stop(1, minutes[k], 1));
            bars.add(bar -> bar.of() == Activity.Lane.DESTINATION
                    && bar.kind() == kind
                    && bar.lane().equals(name));
        }
    }

    /** @param bars of each stop, those of the cards that are there */
    private static List<Compared> compared(
            Network network, int cards, List<Predicate<Activity>> bars, DoubleFunction<QueueingDays> shift) {
        Network.Means means = network.exact(cards);
        QueueingDays days = shift.apply(ROUNDS / means.throughput());
        Figures figures = new Figures().add("cards a minute", means.throughput(), days::cardsAMinute);
        for (int k = 0; k < bars.size(); k++) {
            Predicate<Activity> there = bars.get(k);
            figures.add("cards at stop " + k, means.customers()[k], day -> days.bars(day, there));
        }
        return figures.over(DAYS, i -> days.run(8, i));
    }
}
