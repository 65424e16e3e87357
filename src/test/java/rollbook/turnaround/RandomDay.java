package rollbook.turnaround;

import static rollbook.turnaround.TestDay.HOUR;
import static rollbook.turnaround.TestDay.MINUTE;
import static rollbook.turnaround.TestDay.megabytes;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Draws days with all that a day may hold: the same seed gives the same day. */
final class RandomDay {
    static final long FIRST_SEED = 1;
    static final long LAST_SEED = 150;

    private static final List<String> KINDS = List.of("LARGE", "SMALL");

    private final SplittableRandom random;

    private RandomDay(long seed) {
        random = new SplittableRandom(seed);
    }

    static DayPlan of(long seed) {
        return new RandomDay(seed).day();
    }

    private DayPlan day() {
        List<Station> stations = new ArrayList<>();
        int count = random.nextInt(1, 3);
        for (int i = 1; i <= count; i++) {
            stations.add(station("STATION " + i));
        }
        List<CameraShift> cameras = new ArrayList<>();
        int shifts = random.nextInt(1, 5);
        for (int i = 1; i <= shifts; i++) {
            cameras.add(camera("CAM " + i, "STATION " + random.nextInt(1, count + 1)));
        }
        List<CardStock> cards = List.of(
                new CardStock(KINDS.get(0), 256 * TestDay.GB, random.nextInt(1, 8)),
                new CardStock(KINDS.get(1), 128 * TestDay.GB, random.nextInt(1, 8)));
        Runner runner = new Runner(delay(10), random.nextInt(1, 4), random.nextLong(30 * MINUTE), delay(10));
        return new DayPlan(cameras, cards, runner, stations, mishaps());
    }

    private CameraShift camera(String name, String station) {
        long call = random.nextLong(10 * HOUR);
        long wrap = call + random.nextLong(HOUR, 12 * HOUR);
        List<Break> breaks = new ArrayList<>();
        long from = call;
        while (random.nextBoolean()) {
            long begins = from + random.nextLong(3 * HOUR);
            from = begins + random.nextLong(1, HOUR);
            if (from <= wrap) {
                breaks.add(new Break(begins, from));
            }
        }
        return new CameraShift(
                name,
                station,
                KINDS.get(random.nextInt(2)),
                megabytes(random.nextLong(20, 400)),
                random.nextInt(24, 61),
                call,
                wrap,
                breaks.stream().filter(pause -> pause.toMillis() <= wrap).toList(),
                Takes.of(random.nextDouble(5, 60), random.nextDouble(0.5, 20), spread()),
                new PullRule(random.nextDouble(), random.nextBoolean()),
                delay(3));
    }

    private Station station(String name) {
        List<Reader> readers = new ArrayList<>();
        int count = random.nextInt(1, 4);
        for (int i = 1; i <= count; i++) {
            readers.add(reader(name + " READER " + i, i == 1 || random.nextInt(3) > 0, name + " ADAPTER"));
        }
        Encoder encoder = random.nextBoolean()
                ? new Encoder.ByBytes(megabytes(random.nextLong(100, 1000)))
                : new Encoder.ByFrames(random.nextDouble(20, 400));
        boolean encodes = random.nextBoolean();
        return new Station(
                name,
                readers,
                random.nextBoolean() ? megabytes(random.nextLong(300, 2000)) : null,
                encodes ? encoder : null,
                destinations(name, encodes),
                order(),
                new ReadBack(ReadBack.When.values()[random.nextInt(4)], order()),
                delay(5),
                delay(20),
                spread(),
                random.nextBoolean() ? 0 : random.nextDouble(0.3));
    }

    private Reader reader(String name, boolean takesAll, String adapter) {
        List<Way> ways = new ArrayList<>();
        for (String kind : KINDS) {
            if (takesAll || random.nextBoolean()) {
                ways.add(new Way(kind, null, megabytes(random.nextLong(100, 900))));
            }
            if (random.nextInt(3) == 0) {
                ways.add(new Way(kind, adapter, megabytes(random.nextLong(100, 900))));
            }
        }
        return new Reader(name, ways);
    }

    private List<Destination> destinations(String station, boolean encodes) {
        List<Destination> destinations = new ArrayList<>();
        int count = random.nextInt(1, 4);
        for (int i = 1; i <= count; i++) {
            boolean encoded = encodes && random.nextBoolean();
            destinations.add(new Destination(
                    station + " DRIVE " + i,
                    megabytes(random.nextLong(100, 600)),
                    megabytes(random.nextLong(100, 800)),
                    encoded,
                    encoded ? random.nextDouble(0.3, 1.1) : 1));
        }
        return destinations;
    }

    private List<Mishap> mishaps() {
        List<Mishap> mishaps = new ArrayList<>();
        if (random.nextBoolean()) {
            mishaps.add(new Mishap.Repeat(random.nextInt(1, 12)));
        }
        if (random.nextBoolean()) {
            mishaps.add(new Mishap.ReaderDies("STATION 1 READER 1", random.nextLong(24 * HOUR)));
        }
        return mishaps;
    }

    private Order order() {
        return Order.values()[random.nextInt(2)];
    }

    private Delay delay(long mostMinutes) {
        return new Delay(random.nextInt(3) == 0 ? 0 : random.nextLong(mostMinutes * MINUTE), spread());
    }

    private Spread spread() {
        return switch (random.nextInt(4)) {
            case 0 -> Spread.NONE;
            case 1 -> Spread.EXPONENTIAL;
            case 2 -> new Spread.LogNormal(random.nextDouble(0.1, 1));
            default -> new Spread.Uniform(random.nextDouble(0.1, 1));
        };
    }
}
