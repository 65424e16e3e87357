package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PrimitiveIterator;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/**
 * A published simulation by hand, number by number: Taha, Operations Research, 19.5-1, quoted in a public test. A barber’s
 * customers come at intervals of −15 ln R minutes, the first at once, and sit for 10 + 5 R minutes. Here a customer is a
 * card that doesn’t come back, and the interval before him the take that fills it.
 */
class HandSimulationTests {
    private static final double AT_ONCE = 0.000_001;
    /** The take that finds no card: any number will do. */
    private static final double NEVER = 0.5;

    private static final double[] INTERVALS = {.0589, .4799, .6139, .9341, NEVER};
    private static final double[] SITTINGS = {.6733, .9486, .5933, .1782, .3473};
    private static final double END = 92.82;
    private static final double PRINTED = 0.01;

    @Test
    void publishedSimulationByHandIsReproduced() {
        QueueingDays barber =
                QueueingDays.of(new CardQueue(5, 1, 1, 15, 12.5), END, Spread.EXPONENTIAL, new Spread.Uniform(0.2));
        Runner goneForGood = new Runner(Delay.NONE, 1, 0, Delay.fixed(86_400_000));
        QueueingDays day = new QueueingDays(END, 5, 1, barber.take(), goneForGood, barber.station());

        DayResult result = Simulation.run(day.plan(), HandSimulationTests::numbers);

        StationDay station = result.stations().get(0);
        assertPrinted(result, Activity.Kind.RECORDING, Activity::toMillis, 0, 42.48, 53.49, 60.81, 61.83);
        assertPrinted(result, Activity.Kind.HANDLING, Activity::toMillis, 13.37, 57.22, 70.19, 81.08, 92.82);
        assertPrinted(result, Activity.Kind.QUEUED, bar -> bar.toMillis() - bar.fromMillis(), 3.73, 9.38, 19.25);
        assertThat(day.cardsWaiting(result)).isCloseTo(0.349, within(PRINTED));
        assertThat(day.cardsThere(result) - day.cardsWaiting(result)).isCloseTo(0.686, within(PRINTED));
        assertThat(station.queuedMillis() / QueueingDays.MILLIS_PER_MINUTE / station.offloads())
                .isCloseTo(6.47, within(PRINTED));
    }

    /** Of the simulation’s exponential times a large number makes a long one, of the source’s a small one. */
    private static Draws.Stream numbers(String purpose, String entity) {
        PrimitiveIterator.OfDouble numbers = switch (purpose) {
            case "take" ->
                DoubleStream.concat(
                                DoubleStream.of(AT_ONCE),
                                Arrays.stream(INTERVALS).map(number -> 1 - number))
                        .iterator();
            case "handling" -> Arrays.stream(SITTINGS).iterator();
            default -> DoubleStream.generate(() -> Double.NaN).iterator();
        };
        return numbers::nextDouble;
    }

    private static void assertPrinted(
            DayResult result, Activity.Kind kind, ToDoubleFunction<Activity> millis, double... minutes) {
        List<Double> bars = result.activities().stream()
                .filter(bar -> bar.kind() == kind && bar.of() != Activity.Lane.READER)
                .sorted(Comparator.comparingLong(Activity::fromMillis))
                .map(bar -> millis.applyAsDouble(bar) / QueueingDays.MILLIS_PER_MINUTE)
                .toList();
        assertThat(bars).as("%s", kind).hasSameSizeAs(minutes);
        for (int i = 0; i < minutes.length; i++) {
            assertThat(bars.get(i)).as("%s %d", kind, i + 1).isCloseTo(minutes[i], within(PRINTED));
        }
    }
}
