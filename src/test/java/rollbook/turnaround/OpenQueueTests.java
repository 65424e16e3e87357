package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.turnaround.Compared.assertAllAgree;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One camera that never lacks a card, with takes of exponential length and no set-ups: its cards come to the readers as a
 * Poisson stream. Sources of the cases: {@code queueing-values.csv}.
 */
class OpenQueueTests {
    private static final int ARRIVALS = 60_000;
    private static final int DAYS = 20;
    private static final int ENOUGH_CARDS = 500;

    /** Erlang C. The standard deviation is that of the chain over the length of the run. */
    @ParameterizedTest(name = "{0} erlang at {1} servers")
    @CsvSource({"0.6666667, 1", "0.8, 1", "1.5, 2", "1.6, 2", "2.4, 3", "6, 10", "8, 10"})
    void exponentialServiceTimesAgree(double erlang, int servers) {
        OpenQueue queue = new OpenQueue(erlang / 20, 1 / 20.0, servers);
        double minutes = ARRIVALS / queue.arrivals();
        QueueingDays days = days(queue, minutes, Spread.EXPONENTIAL);

        DayResult day = days.summary(5, servers);

        double waiting = queue.waiting();
        double wait = waiting / queue.arrivals();
        IntToDoubleFunction inQueue = n -> Math.max(0, n - servers);
        assertThat(day.waitingMillis()).isZero();
        assertAllAgree(List.of(
                new Compared(
                        "arrivals a minute",
                        queue.arrivals(),
                        day.offloads() / minutes,
                        deviation(queue, minutes, n -> 0, 1)),
                new Compared(
                        "there",
                        waiting + erlang,
                        days.mean(day.stations().get(0).stayMillis()),
                        deviation(queue, minutes, n -> n, 0)),
                new Compared(
                        "waiting",
                        waiting,
                        days.mean(day.stations().get(0).queuedMillis()),
                        deviation(queue, minutes, inQueue, 0)),
                new Compared(
                        "wait of a card",
                        wait,
                        day.stations().get(0).queuedMillis() / QueueingDays.MILLIS_PER_MINUTE / day.offloads(),
                        deviation(queue, minutes, inQueue, -wait) / queue.arrivals())));
    }

    private static double deviation(OpenQueue queue, double minutes, IntToDoubleFunction perMinute, double perCard) {
        return Math.sqrt(queue.chain(ENOUGH_CARDS).varianceRate(perMinute, n -> perCard) / minutes);
    }

    @Test
    void asManyCardsWaitAsErlangsFormulaSays() {
        OpenQueue queue = new OpenQueue(1.5 / 20, 1 / 20.0, 2);
        QueueingDays days = days(queue, 1_000 / queue.arrivals(), Spread.EXPONENTIAL);
        double[] waited = new double[DAYS];
        for (int i = 0; i < DAYS; i++) {
            DayResult day = days.run(6, i);
            long queued = day.activities().stream()
                    .filter(bar -> bar.kind() == Activity.Kind.QUEUED)
                    .count();
            waited[i] = (double) queued / day.offloads();
        }

        assertAllAgree(List.of(Compared.ofDays("part of the cards", queue.chanceToWait(), waited)));
    }

    @Test
    void fixedServiceTimesAgree() {
        assertOneServerAgrees(new OpenQueue(0.04, 0.06, 1), Spread.NONE, 0);
        assertOneServerAgrees(new OpenQueue(0.04, 0.05, 1), Spread.NONE, 0);
    }

    @Test
    void serviceTimesOfAnySpreadAgree() {
        assertOneServerAgrees(new OpenQueue(0.035, 0.05, 1), new Spread.LogNormal(0.6), 0.6);
        assertOneServerAgrees(new OpenQueue(0.035, 0.05, 1), new Spread.Uniform(1), 1 / Math.sqrt(3));
    }

    /** @param variation standard deviation of the service times as a part of their mean */
    private static void assertOneServerAgrees(OpenQueue queue, Spread service, double variation) {
        QueueingDays days = days(queue, ARRIVALS / queue.arrivals() / DAYS, service);
        double[] waiting = new double[DAYS];
        double[] wait = new double[DAYS];
        for (int i = 0; i < DAYS; i++) {
            DayResult day = days.summary(7, i);
            assertThat(day.waitingMillis()).isZero();
            waiting[i] = days.mean(day.stations().get(0).queuedMillis());
            wait[i] = day.stations().get(0).queuedMillis() / QueueingDays.MILLIS_PER_MINUTE / day.offloads();
        }
        double expected = queue.waitingWithDeviation(variation / queue.services());

        assertAllAgree(List.of(
                Compared.ofDays("waiting", expected, waiting),
                Compared.ofDays("wait of a card", expected / queue.arrivals(), wait)));
    }

    private static QueueingDays days(OpenQueue queue, double minutes, Spread service) {
        CardQueue cards = new CardQueue(ENOUGH_CARDS, 1, queue.servers(), 1 / queue.arrivals(), 1 / queue.services());
        return QueueingDays.of(cards, minutes, Spread.EXPONENTIAL, service);
    }
}
