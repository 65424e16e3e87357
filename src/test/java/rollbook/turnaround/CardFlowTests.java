package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every day, whatever its times are. */
class CardFlowTests {
    private static final Set<Activity.Kind> AT_STATION = EnumSet.of(
            Activity.Kind.QUEUED,
            Activity.Kind.HANDLING,
            Activity.Kind.COPYING,
            Activity.Kind.READING_BACK,
            Activity.Kind.UNPROVEN);

    /** Of days on which no card is left in the queue because the last reader for it died. */
    static LongStream seeds() {
        return LongStream.rangeClosed(RandomDay.FIRST_SEED, RandomDay.LAST_SEED)
                .filter(seed -> Simulation.summary(RandomDay.of(seed), Draws.of(seed, 0))
                                .unprovenCards()
                        == 0);
    }

    /**
     * Little’s law, exactly: on a day that ends as it begins, with all cards blank, those that are nowhere else, added up
     * over the time, are the sum of how long each stays at a station.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cardsThereAddUpToTheTimesTheyStay(long seed) {
        DayPlan plan = RandomDay.of(seed);
        DayResult day = Simulation.run(plan, Draws.of(seed, 0));
        int cards = plan.cards().stream().mapToInt(CardStock::cards).sum();
        long elsewhere = sum(day, bar -> !AT_STATION.contains(bar.kind())).millis();
        Sum queue = sum(day, bar -> bar.kind() == Activity.Kind.QUEUED);

        assertThat(day.stations().stream().mapToLong(StationDay::stayMillis).sum())
                .isEqualTo(cards * (day.endMillis() - day.startMillis()) - elsewhere);
        assertThat(day.stations().stream().mapToLong(StationDay::queuedMillis).sum())
                .isEqualTo(queue.millis());
        if (day.stations().size() == 1) {
            assertThat(day.greatestQueue()).isEqualTo(queue.most());
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
