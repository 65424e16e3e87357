package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import rollbook.quantity.DataRate;

/** What holds for every day, whatever its times are. */
class CardFlowTests {
    private static final Set<Activity.Kind> AT_STATION = EnumSet.of(
            Activity.Kind.QUEUED,
            Activity.Kind.HANDLING,
            Activity.Kind.COPYING,
            Activity.Kind.READING_BACK,
            Activity.Kind.UNPROVEN);

    private static final long MINUTE = 60_000;

    /**
     * Little’s law, exactly: on a day that begins and ends with all cards blank, those that are nowhere else, added up
     * over the time, are the sum of how long each stays at the station.
     */
    @Test
    void cardsThereAddUpToTheTimesTheyStay() {
        for (int seed = 0; seed < 100; seed++) {
            DayPlan plan = anyDay(new Random(seed));
            DayResult day = Simulation.run(plan, Draws.of(seed, 0));
            StationDay station = day.stations().get(0);
            Sum elsewhere = sum(day, bar -> !AT_STATION.contains(bar.kind()));
            Sum queue = sum(day, bar -> bar.kind() == Activity.Kind.QUEUED);
            long cardMillis = plan.cards().get(0).cards() * (day.endMillis() - day.startMillis());

            assertThat(station.stayMillis())
                    .as("seed %d", seed)
                    .isPositive()
                    .isEqualTo(cardMillis - elsewhere.millis());
            assertThat(station.queuedMillis()).as("seed %d", seed).isEqualTo(queue.millis());
            assertThat(station.greatestQueue()).as("seed %d", seed).isEqualTo(queue.most());
        }
    }

    /**
     * @param millis how many cards there are at each instant, over the time
     * @param most at one instant
     */
    private record Sum(long millis, int most) {}

    private static Sum sum(DayResult day, Predicate<Activity> which) {
        long[] steps = day.activities().stream()
                .filter(bar -> bar.of() == Activity.Lane.CARD)
                .filter(which)
                .flatMapToLong(bar -> LongStream.of(2 * bar.fromMillis() + 1, 2 * bar.toMillis()))
                .sorted()
                .toArray();
        long millis = 0;
        int count = 0;
        int most = 0;
        long before = 0;
        for (long step : steps) {
            millis += count * (step / 2 - before);
            before = step / 2;
            count += step % 2 == 0 ? -1 : 1;
            most = Math.max(most, count);
        }
        return new Sum(millis, most);
    }

    private static DayPlan anyDay(Random random) {
        List<Reader> readers = IntStream.rangeClosed(1, 1 + random.nextInt(3))
                .mapToObj(i -> new Reader("reader " + i, List.of(new Way("card", null, megabytes(random, 200, 900)))))
                .toList();
        List<Destination> drives = IntStream.rangeClosed(1, 1 + random.nextInt(3))
                .mapToObj(i ->
                        Destination.asRecorded("drive " + i, megabytes(random, 100, 800), megabytes(random, 100, 900)))
                .toList();
        Station station = new Station(
                "cart",
                readers,
                random.nextBoolean() ? megabytes(random, 500, 3000) : null,
                null,
                drives,
                any(random, Order.values()),
                new ReadBack(any(random, ReadBack.When.values()), any(random, Order.values())),
                anyDelay(random, 5),
                anyDelay(random, 30),
                new Spread.LogNormal(0.2),
                random.nextBoolean() ? 0.1 : 0);
        List<CameraShift> cameras = IntStream.rangeClosed(1, 1 + random.nextInt(4))
                .mapToObj(i -> new CameraShift(
                        "camera " + i,
                        "cart",
                        "card",
                        megabytes(random, 100, 400),
                        24,
                        (8 + random.nextInt(2)) * 60 * MINUTE,
                        (18 + random.nextInt(3)) * 60 * MINUTE,
                        List.of(new Break(13 * 60 * MINUTE, 14 * 60 * MINUTE)),
                        Takes.of(10 + random.nextInt(50), 1 + random.nextInt(9), new Spread.Uniform(0.8)),
                        new PullRule(0.3 + random.nextDouble() * 0.7, random.nextBoolean()),
                        anyDelay(random, 2)))
                .toList();
        Runner runner = new Runner(
                anyDelay(random, 10), 1 + random.nextInt(3), random.nextInt(60) * MINUTE, anyDelay(random, 10));
        return new DayPlan(
                cameras,
                List.of(new CardStock("card", 256_000_000_000L, 1 + random.nextInt(10))),
                runner,
                List.of(station),
                List.of());
    }

    private static DataRate megabytes(Random random, int least, int most) {
        return DataRate.ofBytesPerSecond(1_000_000L * (least + random.nextInt(most - least)));
    }

    private static Delay anyDelay(Random random, int mostMinutes) {
        Spread spread = any(random, Spread.NONE, Spread.EXPONENTIAL, new Spread.LogNormal(0.5));
        return new Delay(random.nextInt(mostMinutes + 1) * MINUTE, spread);
    }

    @SafeVarargs
    private static <T> T any(Random random, T... of) {
        return of[random.nextInt(of.length)];
    }

    /**
     * No more cards go round than all cameras fill, all readers serve, or all cards make rounds; with fixed times so many
     * do, but for the first and the last round.
     */
    @Test
    void fixedTimesReachTheBoundOnThroughput() {
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            CardQueue queue = new CardQueue(
                    1 + random.nextInt(9),
                    1 + random.nextInt(4),
                    1 + random.nextInt(4),
                    5 + random.nextInt(60),
                    5 + random.nextInt(60));
            double bound = bound(queue);
            QueueingDays days = QueueingDays.of(queue, 300 / bound, Spread.NONE, Spread.NONE);

            double offloads = days.summary(0, 0).offloads();

            assertThat(offloads).as("seed %d, %s", seed, queue).isCloseTo(300, within(queue.cards() + 1.0));
        }
    }

    private static double bound(CardQueue queue) {
        return Math.min(
                Math.min(queue.cameras() / queue.fill(), queue.readers() / queue.service()),
                queue.cards() / (queue.fill() + queue.service()));
    }
}
