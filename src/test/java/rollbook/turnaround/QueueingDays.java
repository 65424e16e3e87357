package rollbook.turnaround;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import rollbook.quantity.DataRate;

/**
 * Shooting days that are nothing but queues: each take fills a card and lasts as long as a card does, nobody walks, sets
 * up or changes cards, and what isn’t asked for takes no time. Times in minutes.
 */
record QueueingDays(double minutes, int cards, int cameras, Delay take, Runner runner, Station station) {
    static final double MILLIS_PER_MINUTE = 60_000;

    private static final long RECORDED_BYTES_PER_SECOND = 1_000_000;
    static final DataRate AT_ONCE = DataRate.ofBytesPerSecond(1_000_000_000_000_000_000L);
    private static final long CAPACITY_BYTES = 1_000_000_000_000_000_000L;
    private static final PullRule AFTER_EACH_TAKE = new PullRule(1e-18, false);

    /** Readers held by a person’s work alone. */
    static QueueingDays of(CardQueue queue, double minutes, Spread fill, Spread service) {
        return new QueueingDays(
                minutes,
                queue.cards(),
                queue.cameras(),
                delay(queue.fill(), fill),
                Runner.NONE,
                station(
                        queue.readers(),
                        AT_ONCE,
                        delay(queue.service(), service),
                        List.of(Destination.asRecorded("drive", AT_ONCE, AT_ONCE)),
                        ReadBack.NEVER,
                        Delay.NONE,
                        Spread.NONE));
    }

    static Delay delay(double minutes, Spread spread) {
        return new Delay(Math.round(minutes * MILLIS_PER_MINUTE), spread);
    }

    /** Destinations are written one after another. */
    static Station station(
            int readers,
            DataRate reading,
            Delay handling,
            List<Destination> destinations,
            ReadBack readBack,
            Delay clearing,
            Spread work) {
        return new Station(
                "cart",
                IntStream.range(0, readers)
                        .mapToObj(i -> new Reader("reader " + (i + 1), List.of(new Way("card", null, reading))))
                        .toList(),
                null,
                null,
                destinations,
                Order.ONE_AFTER_ANOTHER,
                readBack,
                handling,
                clearing,
                work,
                0);
    }

    static Destination written(String name, double takeMinutes, double minutes) {
        return Destination.asRecorded(name, rate(takeMinutes, minutes), AT_ONCE);
    }

    static Destination readBack(String name, double takeMinutes, double minutes) {
        return Destination.asRecorded(name, AT_ONCE, rate(takeMinutes, minutes));
    }

    /** At which what is recorded in a take of so many minutes passes in so many minutes. */
    static DataRate rate(double takeMinutes, double minutes) {
        return DataRate.ofBytesPerSecond(Math.round(RECORDED_BYTES_PER_SECOND * takeMinutes / minutes));
    }

    DayPlan plan() {
        List<CameraShift> shifts = IntStream.range(0, cameras)
                .mapToObj(i -> new CameraShift(
                        "camera " + (i + 1),
                        station.name(),
                        "card",
                        DataRate.ofBytesPerSecond(RECORDED_BYTES_PER_SECOND),
                        24,
                        0,
                        Math.round(minutes * MILLIS_PER_MINUTE),
                        List.of(),
                        new Takes(take, Delay.NONE),
                        AFTER_EACH_TAKE,
                        Delay.NONE))
                .toList();
        return new DayPlan(
                shifts, List.of(new CardStock("card", CAPACITY_BYTES, cards)), runner, List.of(station), List.of());
    }

    DayResult summary(long seed, int replicate) {
        return Simulation.summary(plan(), Draws.of(seed, replicate));
    }

    DayResult run(long seed, int replicate) {
        return Simulation.run(plan(), Draws.of(seed, replicate));
    }

    /** Mean over the shift of what has been added up in milliseconds. */
    double mean(long millis) {
        return millis / MILLIS_PER_MINUTE / minutes;
    }

    double cardsAMinute(DayResult day) {
        return day.offloads() / minutes;
    }

    double idleCameras(DayResult day) {
        return mean(day.waitingMillis());
    }

    double cardsThere(DayResult day) {
        return mean(day.stations().get(0).stayMillis());
    }

    double cardsWaiting(DayResult day) {
        return mean(day.stations().get(0).queuedMillis());
    }

    /** Mean number of such bars at a time. */
    double bars(DayResult day, Predicate<Activity> which) {
        return mean(day.activities().stream()
                .filter(which)
                .mapToLong(bar -> bar.toMillis() - bar.fromMillis())
                .sum());
    }

    /** Of the cards, the part that didn’t find a free reader. */
    static double cardsThatWaited(DayResult day) {
        return (double) day.activities().stream()
                        .filter(bar -> bar.kind() == Activity.Kind.QUEUED)
                        .count()
                / day.offloads();
    }
}
