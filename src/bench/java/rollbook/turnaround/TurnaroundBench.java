package rollbook.turnaround;

import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import rollbook.bench.Figures;
import rollbook.quantity.DataRate;

/**
 * Plays a day of four cameras, twelve hours, 40 cards and one station of three readers and three destinations that share a
 * host bus: two drives, and a tape behind an encoder. Everything varies that can.
 */
final class TurnaroundBench {
    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;
    private static final long SEED = 20_260_601;
    private static final int REPLICATIONS = 10_000;
    private static final int ROUNDS = 2_001;
    private static final int WARM_UP = 10_000;
    private static final double NORMAL_975 = 1.959964;

    private final DayPlan plan = plan();

    private TurnaroundBench() {}

    /** Folder. */
    public static void main(String[] arguments) throws InterruptedException, ExecutionException {
        TurnaroundBench bench = new TurnaroundBench();
        bench.once();
        bench.replications();
    }

    private void once() {
        String day = "turnaround: 4 cameras × 12 h, 40 cards, 3 readers";
        DayResult result = Simulation.summary(plan, Draws.of(SEED, 0));
        int events = events();
        Figures.print(day + ", offloads", result.offloads(), "");
        Figures.print(day + ", events", events, "");
        double summary = milliseconds(round -> Simulation.summary(plan, Draws.of(SEED, round)).lastProvenMillis());
        Figures.atMost(day, summary, "ms", 1, "");
        double withBars = milliseconds(round -> Simulation.run(plan, Draws.of(SEED, round)).lastProvenMillis());
        Figures.atMost(day + ", with the bars of the timeline", withBars, "ms", 1, "");
        double empty = milliseconds(round -> emptyLoop(events, round));
        Figures.print("as many events that do nothing", empty, "ms");
        Figures.print(day + " / as many events that do nothing", summary / empty, "×");
        Figures.print("cost of an event", summary / events * 1e6, "ns");
    }

    private int events() {
        Playing playing = new Playing(plan, Draws.of(SEED, 0), false);
        playing.play();
        return playing.agenda.entered();
    }

    /** The same heap with as many events ahead as a day has on average. */
    private static long emptyLoop(int events, int round) {
        Agenda agenda = new Agenda();
        SplittableRandom random = new SplittableRandom(round);
        for (int i = 0; i < 10; i++) {
            agenda.enter(random.nextInt(1000), Event.CAMERA_DUE, i, 0);
        }
        for (int i = 0; i < events; i++) {
            agenda.next();
            agenda.enter(agenda.millis() + random.nextInt(1000), agenda.event(), agenda.entity(), i);
        }
        return agenda.millis();
    }

    private interface Round {
        long play(int round);
    }

    private static double milliseconds(Round work) {
        long sink = 0;
        for (int round = 0; round < WARM_UP; round++) {
            sink += work.play(round);
        }
        double[] milliseconds = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            sink += work.play(round);
            milliseconds[round] = Figures.seconds(start) * 1000;
        }
        if (sink == 0) {
            throw new IllegalStateException("Nothing was played");
        }
        return Figures.median(milliseconds);
    }

    private void replications() throws InterruptedException, ExecutionException {
        double[] seconds = new double[7];
        DayResult[] days = new DayResult[REPLICATIONS];
        ForkJoinPool twoThreads = new ForkJoinPool(2);
        for (int round = 0; round < seconds.length; round++) {
            long start = System.nanoTime();
            twoThreads
                    .submit(() -> IntStream.range(0, REPLICATIONS)
                            .parallel()
                            .forEach(i -> days[i] = Simulation.summary(plan, Draws.of(SEED, i))))
                    .get();
            interval(days, DayResult::waitingMillis);
            interval(days, DayResult::lastProvenMillis);
            seconds[round] = Figures.seconds(start);
        }
        twoThreads.shutdown();
        Figures.atMost("turnaround: 10,000 replications on two threads", Figures.median(seconds), "s", 3, "");
        print("waiting", interval(days, DayResult::waitingMillis));
        print("overtime", interval(days, DayResult::overtimeMillis));
    }

    /** Mean and half of the 95 % interval. */
    private static double[] interval(DayResult[] days, ToDoubleFunction<DayResult> figure) {
        double mean = List.of(days).stream().mapToDouble(figure).average().orElseThrow();
        double squares = List.of(days).stream()
                .mapToDouble(day -> Math.pow(figure.applyAsDouble(day) - mean, 2))
                .sum();
        return new double[] {mean, NORMAL_975 * Math.sqrt(squares / (days.length - 1) / days.length)};
    }

    private static void print(String name, double[] interval) {
        Figures.print("turnaround: mean " + name, interval[0] / MINUTE, "min");
        Figures.print("turnaround: mean " + name + ", half of the 95 % interval", interval[1] / MINUTE, "min");
    }

    private static DayPlan plan() {
        Spread spread = new Spread.LogNormal(0.3);
        List<CameraShift> cameras = IntStream.rangeClosed(1, 4)
                .mapToObj(i -> new CameraShift(
                        "CAM " + i,
                        "STATION",
                        "CARD",
                        megabytes(300),
                        24,
                        8 * HOUR,
                        20 * HOUR,
                        List.of(new Break(13 * HOUR, 14 * HOUR)),
                        Takes.of(20, 2, spread),
                        new PullRule(0.8, true),
                        new Delay(2 * MINUTE, spread)))
                .toList();
        List<Reader> readers = List.of(
                new Reader("READER 1", List.of(new Way("CARD", null, megabytes(700)))),
                new Reader("READER 2", List.of(new Way("CARD", null, megabytes(700)))),
                new Reader("READER 3", List.of(new Way("CARD", "ADAPTER", megabytes(400)))));
        List<Destination> destinations = List.of(
                Destination.asRecorded("DRIVE 1", megabytes(700), megabytes(750)),
                Destination.asRecorded("DRIVE 2", megabytes(700), megabytes(750)),
                new Destination("TAPE", megabytes(400), megabytes(400), true, 0.6));
        Station station = new Station(
                "STATION",
                readers,
                megabytes(2500),
                new Encoder.ByFrames(100),
                destinations,
                Order.TOGETHER,
                new ReadBack(ReadBack.When.READER_FREE, Order.TOGETHER),
                new Delay(2 * MINUTE, spread),
                new Delay(10 * MINUTE, spread),
                spread,
                0.01);
        Runner runner = new Runner(new Delay(5 * MINUTE, spread), 2, 20 * MINUTE, new Delay(10 * MINUTE, spread));
        return new DayPlan(
                cameras,
                List.of(new CardStock("CARD", 256_000_000_000L, 40)),
                runner,
                List.of(station),
                List.of());
    }

    private static DataRate megabytes(long perSecond) {
        return DataRate.ofBytesPerSecond(perSecond * 1_000_000);
    }
}
