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

    /** The standard deviation is that of the chain over the length of the run. */
    @ParameterizedTest(name = "{0} erlang at {1} servers")
    @CsvSource({"0.6666667, 1", "0.8, 1", "1.5, 2", "1.6, 2", "2.4, 3", "6, 10", "8, 10"})
    void exponentialServiceTimesAgreeWithErlang(double erlang, int servers) {
        assertAllAgree(compared(erlang, servers));
    }

    static List<Compared> compared(double erlang, int servers) {
        OpenQueue queue = new OpenQueue(erlang / 20, 1 / 20.0, servers);
        QueueingDays days = days(queue, ARRIVALS / queue.arrivals(), Spread.EXPONENTIAL);
        DayResult day = days.summary(5, servers);
        double minutes = days.minutes();
        double waiting = queue.waiting();
        double wait = waiting / queue.arrivals();
        IntToDoubleFunction inQueue = n -> Math.max(0, n - servers);
        assertThat(day.waitingMillis()).isZero();
        return List.of(
                new Compared(
                        "cards a minute",
                        queue.arrivals(),
                        days.cardsAMinute(day),
                        deviation(queue, minutes, n -> 0, 1)),
                new Compared("there", waiting + erlang, days.cardsThere(day), deviation(queue, minutes, n -> n, 0)),
                new Compared("waiting", waiting, days.cardsWaiting(day), deviation(queue, minutes, inQueue, 0)),
                new Compared(
                        "wait of a card",
                        wait,
                        days.cardsWaiting(day) / days.cardsAMinute(day),
                        deviation(queue, minutes, inQueue, -wait) / queue.arrivals()));
    }

    private static double deviation(OpenQueue queue, double minutes, IntToDoubleFunction perMinute, double perCard) {
        return Math.sqrt(queue.chain(ENOUGH_CARDS).varianceRate(perMinute, n -> perCard) / minutes);
    }

    @Test
    void asManyCardsWaitAsErlangsFormulaSays() {
        OpenQueue queue = new OpenQueue(1.5 / 20, 1 / 20.0, 2);
        QueueingDays days = days(queue, 1_000 / queue.arrivals(), Spread.EXPONENTIAL);

        assertAllAgree(new Figures()
                .add("part of the cards", queue.chanceToWait(), QueueingDays::cardsThatWaited)
                .over(DAYS, i -> days.run(6, i)));
    }

    @Test
    void fixedServiceTimesAgree() {
        assertAllAgree(oneServer(new OpenQueue(0.04, 0.06, 1), Spread.NONE, 0));
        assertAllAgree(oneServer(new OpenQueue(0.04, 0.05, 1), Spread.NONE, 0));
    }

    @Test
    void serviceTimesOfAnySpreadAgree() {
        assertAllAgree(oneServer(new OpenQueue(0.035, 0.05, 1), new Spread.LogNormal(0.6), 0.6));
        assertAllAgree(oneServer(new OpenQueue(0.035, 0.05, 1), new Spread.Uniform(1), 1 / Math.sqrt(3)));
    }

    /** @param variation standard deviation of the service times as a part of their mean */
    static List<Compared> oneServer(OpenQueue queue, Spread service, double variation) {
        QueueingDays days = days(queue, ARRIVALS / queue.arrivals() / DAYS, service);
        double expected = queue.waitingWithDeviation(variation / queue.services());
        return new Figures()
                .add("waiting", expected, days::cardsWaiting)
                .add(
                        "wait of a card",
                        expected / queue.arrivals(),
                        day -> days.cardsWaiting(day) / days.cardsAMinute(day))
                .over(DAYS, i -> days.summary(7, i));
    }

    private static QueueingDays days(OpenQueue queue, double minutes, Spread service) {
        CardQueue cards = new CardQueue(ENOUGH_CARDS, 1, queue.servers(), 1 / queue.arrivals(), 1 / queue.services());
        return QueueingDays.of(cards, minutes, Spread.EXPONENTIAL, service);
    }
}
