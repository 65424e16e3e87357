package rollbook.burndown;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import rollbook.bench.Figures;
import rollbook.learning.Belief;
import rollbook.learning.Habits;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.learning.RatioPaths;
import rollbook.learning.ShotDay;
import rollbook.quantity.Share;

/**
 * Plays the rest of a show of two units. Its legs are, in turn, drives that are kept with an order on its way, encoded
 * copies, shuttle drives that come back, and tapes on which rolls stay whole; none of them is written to by its side.
 */
final class ForecastBench {
    private static final long GB = 1_000_000_000L;
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
    private static final long SEED = 20_260_601;
    private static final int PATHS = 10_000;
    private static final int DAYS = 60;
    private static final int LEGS = 4;
    private static final int WARM_UP = 40;
    private static final int ROUNDS = 31;
    private static final double MOST_MILLISECONDS = 100;
    private static final double LINEAR = 1.1;

    private final Learned learned = learned();

    private ForecastBench() {}

    /** Folder, what: once or growth. */
    public static void main(String[] arguments) {
        ForecastBench bench = new ForecastBench();
        if (arguments[1].equals("once")) {
            bench.once();
        } else {
            bench.growth();
        }
    }

    /**
     * Medians, and the fastest round by the clock.
     *
     * @param threadMilliseconds processor time of the thread that computes
     * @param processMilliseconds the same of the whole process, so with what collects garbage and compiles
     */
    private record Cost(
            double milliseconds, double fastestMilliseconds, double threadMilliseconds, double processMilliseconds) {}

    private void once() {
        String heap = "%d MB of heap".formatted(Runtime.getRuntime().maxMemory() >> 20);
        Cost cost = cost(PATHS, DAYS, LEGS);
        String what = name(PATHS, DAYS, LEGS);
        Figures.atMost(what, cost.milliseconds(), "ms", MOST_MILLISECONDS, heap);
        Figures.atMost(what + ", fastest round", cost.fastestMilliseconds(), "ms", MOST_MILLISECONDS, heap);
        Figures.atMost(what + ", processor time", cost.threadMilliseconds(), "ms", MOST_MILLISECONDS, heap);
        Figures.atMost(
                what + ", processor time with garbage", cost.processMilliseconds(), "ms", MOST_MILLISECONDS, heap);
        Cost days = measure(() -> {
            RatioPaths ratios = RatioPaths.of(learned, SEED, PATHS);
            show(DAYS).days().forEach(day -> ratios.factors(day.day().unit(), day.day().number()));
        });
        Figures.print("of which drawing the days, processor time", days.threadMilliseconds(), "ms");
    }

    private void growth() {
        Cost base = cost(PATHS, DAYS, LEGS);
        Figures.print(name(PATHS, DAYS, LEGS) + ", processor time", base.threadMilliseconds(), "ms");
        for (int times : new int[] {2, 4}) {
            growth(base, times, PATHS * times, DAYS, LEGS);
            growth(base, times, PATHS, DAYS * times, LEGS);
            growth(base, times, PATHS, DAYS, LEGS * times);
        }
    }

    private void growth(Cost base, int times, int paths, int days, int legs) {
        double milliseconds = cost(paths, days, legs).threadMilliseconds();
        String what = name(paths, days, legs);
        Figures.print(what + ", processor time", milliseconds, "ms");
        Figures.atMost(what + " / base", milliseconds / base.threadMilliseconds(), "×", LINEAR * times, "");
    }

    private static String name(int paths, int days, int legs) {
        return String.format(Locale.ROOT, "forecast: %,d paths × %d days × %d legs", paths, days, legs);
    }

    private Cost cost(int paths, int days, int legs) {
        Show show = show(days);
        List<Pool> pools = pools(legs, days);
        return measure(() -> {
            SimulatedShow played = Simulation.run(show, pools, learned, Share.percent(95), SEED, paths);
            if (played.outlook().pools().get(0).chanceOfRunningOut() == 0) {
                throw new IllegalStateException("Nothing ran out");
            }
        });
    }

    private static Cost measure(Runnable work) {
        double[] clock = new double[ROUNDS];
        double[] thread = new double[ROUNDS];
        double[] process = new double[ROUNDS];
        for (int round = -WARM_UP; round < ROUNDS; round++) {
            int index = Math.max(0, round);
            long threadStart = threadNanos();
            long processStart = processNanos();
            long start = System.nanoTime();
            work.run();
            clock[index] = Figures.seconds(start) * 1_000;
            thread[index] = (threadNanos() - threadStart) / 1e6;
            process[index] = (processNanos() - processStart) / 1e6;
        }
        return new Cost(
                Figures.median(clock),
                Arrays.stream(clock).min().getAsDouble(),
                Figures.median(thread),
                Figures.median(process));
    }

    private static long threadNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static long processNanos() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }

    private static Learned learned() {
        double[] ratios = {0.9, 1.2, 1.25, 0.8, 1.4};
        List<ShotDay> days = new ArrayList<>();
        for (int i = 0; i < ratios.length; i++) {
            days.add(new ShotDay(
                    "main",
                    i - ratios.length,
                    TODAY.plusDays(i - ratios.length),
                    5000 * GB,
                    Math.round(5000 * ratios[i]) * GB,
                    null));
        }
        return Learning.from(days, Habits.USUAL);
    }

    private static Show show(int days) {
        List<DayToCome> all = new ArrayList<>();
        for (int i = 0; i < days; i++) {
            LocalDate date = TODAY.plusDays(i);
            all.add(new DayToCome(new DayRef(i % 3 == 2 ? "second" : "main", i, date), date, 5000 * GB, 0));
        }
        return new Show(TODAY, all, TODAY.plusDays(days - 1L));
    }

    /** Enough media for about two thirds of the days. */
    private static List<Pool> pools(int legs, int days) {
        List<Pool> pools = new ArrayList<>();
        for (int leg = 0; leg < legs; leg++) {
            Kept kept = leg % LEGS == 1 ? new Kept(Share.percent(60), new Belief(20, Math.log(0.6), 10, 0.1)) : Kept.WHOLE;
            List<Pool.Arrival> arrivals = leg % LEGS == 0 ? List.of(order()) : List.of();
            Integer returnAfterDays = leg % LEGS == 2 ? 5 : null;
            boolean tape = leg % LEGS == 3;
            pools.add(new Pool(
                    new UUID(0, leg),
                    "LEG-" + leg,
                    tape,
                    tape ? 1000 * GB : 0,
                    returnAfterDays,
                    kept,
                    items(days * 5000L * 2 / 3 / 18_000),
                    arrivals,
                    List.of(),
                    0));
        }
        return pools;
    }

    private static List<Pool.Item> items(long count) {
        List<Pool.Item> items = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            items.add(new Pool.Item("MEDIUM-" + i, 18_000 * GB, 0, true, null, null));
        }
        return items;
    }

    private static Pool.Arrival order() {
        WorkingCalendar weekdays =
                new WorkingCalendar(Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY), Set.of());
        return new Pool.Arrival(TODAY.minusDays(1), LeadTime.usually(5, 8), weekdays, 2, 18_000 * GB);
    }
}
