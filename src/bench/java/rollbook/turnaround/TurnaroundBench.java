package rollbook.turnaround;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
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
    private static final int WARM_UP = 6_000;
    private static final double MOST_MILLISECONDS = 1;
    private static final double MOST_SECONDS = 3;

    private final DayPlan plan = plan();

    private TurnaroundBench() {}

    /** Folder. */
    public static void main(String[] arguments) throws InterruptedException, ExecutionException {
        TurnaroundBench bench = new TurnaroundBench();
        bench.once();
        bench.replications();
    }

    /** Medians: by the clock, and processor time of the thread, which other work on the machine lengthens less. */
    private record Cost(double milliseconds, double threadMilliseconds) {
        void print(String name) {
            Figures.atMost(name, milliseconds, "ms", MOST_MILLISECONDS, "");
            Figures.atMost(name + ", processor time", threadMilliseconds, "ms", MOST_MILLISECONDS, "");
        }
    }

    private void once() {
        String day = "turnaround: 4 cameras × 12 h, 40 cards, 3 readers";
        int events = events();
        Figures.print(day + ", offloads", Simulation.summary(plan, Draws.of(SEED, 0)).offloads(), "");
        Figures.print(day + ", events", events, "");
        Cost summary = cost(round -> Simulation.summary(plan, Draws.of(SEED, round)).lastProvenMillis());
        summary.print(day);
        cost(round -> Simulation.run(plan, Draws.of(SEED, round)).lastProvenMillis())
                .print(day + ", with the bars of the timeline");
        Cost empty = cost(round -> emptyLoop(events, round));
        Figures.print("as many events that do nothing, processor time", empty.threadMilliseconds(), "ms");
        Figures.print(day + " / as many that do nothing", summary.threadMilliseconds() / empty.threadMilliseconds(), "×");
        Figures.print("processor time of an event", summary.threadMilliseconds() / events * 1e6, "ns");
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

    private static Cost cost(Round work) {
        long sink = 0;
        for (int round = 0; round < WARM_UP; round++) {
            sink += work.play(round);
        }
        double[] clock = new double[ROUNDS];
        double[] thread = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long threadStart = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            long start = System.nanoTime();
            sink += work.play(round);
            clock[round] = Figures.seconds(start) * 1000;
            thread[round] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - threadStart) / 1e6;
        }
        if (sink == 0) {
            throw new IllegalStateException("Nothing was played");
        }
        return new Cost(Figures.median(clock), Figures.median(thread));
    }

    private void replications() throws InterruptedException, ExecutionException {
        double[] seconds = new double[5];
        double[] processor = new double[seconds.length];
        ForkJoinPool twoThreads = new ForkJoinPool(2);
        Replications played = null;
        for (int round = 0; round < seconds.length; round++) {
            long processorStart = processNanos();
            long start = System.nanoTime();
            played = twoThreads
                    .submit(() -> Replications.of(plan, SEED, REPLICATIONS))
                    .get();
            seconds[round] = Figures.seconds(start);
            processor[round] = (processNanos() - processorStart) / 1e9;
        }
        twoThreads.shutdown();
        String what = "turnaround: 10,000 replications on two threads";
        Figures.atMost(what, Figures.median(seconds), "s", MOST_SECONDS, "");
        Figures.print(what + ", processor time with garbage", Figures.median(processor), "s");
        interval(what + ", mean overtime", played.overtimeMinutes().mean(), 1, "min");
        interval(what + ", mean waiting", played.waitingMinutes().mean(), 1, "min");
        interval(what + ", a camera waits", played.someCameraWaits(), 100, "%");
    }

    private static void interval(String what, Estimate estimate, double factor, String unit) {
        Figures.print(what, factor * estimate.value(), unit);
        Figures.print(what + ", 95 % from", factor * estimate.low(), unit);
        Figures.print(what + ", 95 % to", factor * estimate.high(), unit);
    }

    private static long processNanos() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
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
