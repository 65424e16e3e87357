package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;
import rollbook.burndown.DayToCome;
import rollbook.burndown.Kept;
import rollbook.burndown.Pool;
import rollbook.burndown.PoolPaths;
import rollbook.burndown.Show;
import rollbook.burndown.Simulation;
import rollbook.learning.Belief;
import rollbook.learning.GeneratedShow;
import rollbook.learning.Habits;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.quantity.Share;

/**
 * Plays a generated show day by day with one pool of media that is kept. Every evening on which something was shot somebody
 * decides what to order; what is ordered comes after a lead time that is drawn.
 */
final class Replay {
    private static final long TB = 1_000_000_000_000L;
    static final ServiceLevel LEVEL = ServiceLevel.USUAL;
    private static final int REPLICATES = 250;

    /** Shooting days, as planned, that the media at hand at the start are enough for. */
    private static final int PLANNED_DAYS_AT_HAND = 10;

    /** A flag that goes up again within so many days after a forecast took it down had better stayed. */
    private static final int SOON_DAYS = 7;

    /** Standard deviation, in logs, of days about a level that is known as well as from so many days. */
    private static final double DAY_BY_DAY = 0.3;

    private static final double CERTAIN = 1e4;

    static final UUID POOL = new UUID(0, 1);

    /** Decides on an evening how many packs to order. */
    interface Buyer {
        long packs(Replay replay, LocalDate evening);
    }

    /** What became of a show. */
    record Outcome(
            GeneratedShow show,
            boolean ranDry,
            int orders,
            long costMinorUnits,
            long hindsightMinorUnits,
            long atHandMinorUnits,
            int flagsOpened,
            int flagsClosedByForecast,
            int flagsUpAgainSoon,
            int dueWithoutFlag) {}

    private record Ordered(LocalDate on, LocalDate arrivesOn, long packs) {}

    final GeneratedShow show;
    final Offer offer;
    final long atHandBytes;
    private final SplittableRandom luck;
    private final List<Ordered> ordered = new ArrayList<>();
    private boolean ranDry;

    private @Nullable Flag flag;
    private @Nullable LocalDate takenDownOn;
    private int flagsOpened;
    private int flagsClosedByForecast;
    private int flagsUpAgainSoon;
    private int dueWithoutFlag;

    private Replay(GeneratedShow show, Offer offer) {
        this.show = show;
        this.offer = offer;
        this.luck = new SplittableRandom(show.seed());
        long planned = show.plannedAfter(show.firstDate().minusDays(1)).stream()
                .filter(day -> day.number() <= PLANNED_DAYS_AT_HAND)
                .mapToLong(GeneratedShow.Day::plannedBytes)
                .sum();
        this.atHandBytes = -Math.floorDiv(-planned, offer.itemCapacityBytes()) * offer.itemCapacityBytes();
    }

    static Outcome play(GeneratedShow show, Offer offer, Buyer buyer) {
        return new Replay(show, offer).play(buyer);
    }

    private Outcome play(Buyer buyer) {
        LocalDate before = show.firstDate().minusDays(1);
        for (LocalDate evening = before; evening.isBefore(show.lastDate()); evening = evening.plusDays(1)) {
            LocalDate date = evening;
            ranDry |= writtenBytes(date) > capacityOn(date);
            if (isDecidedOn(date)) {
                long packs = buyer.packs(this, date);
                if (packs > 0) {
                    LocalDate on = offer.supplier().days().countsAsOf(moment(date));
                    int lead = offer.supplier().leadTime().days(luck.nextDouble());
                    ordered.add(new Ordered(on, offer.supplier().days().arrival(on, lead), packs));
                }
            }
        }
        ranDry |= writtenBytes(show.lastDate()) > capacityOn(show.lastDate());
        return new Outcome(
                show,
                ranDry,
                ordered.size(),
                ordered.stream().mapToLong(order -> cost(order.packs())).sum(),
                cost(Math.max(
                        0, -Math.floorDiv(atHandBytes - writtenBytes(show.lastDate()), offer.itemCapacityBytes()))),
                atHandBytes / offer.itemCapacityBytes() * offer.itemPriceMinorUnits(),
                flagsOpened,
                flagsClosedByForecast,
                flagsUpAgainSoon,
                dueWithoutFlag);
    }

    /** On the evening before the show and of each of its days. */
    private boolean isDecidedOn(LocalDate evening) {
        return evening.isBefore(show.firstDate())
                || show.days().stream().anyMatch(day -> day.date().equals(evening));
    }

    private long cost(long packs) {
        return packs == 0
                ? 0
                : packs * offer.packPriceMinorUnits() + offer.supplier().deliveryMinorUnits();
    }

    private static Instant moment(LocalDate evening) {
        return evening.atTime(21, 0).toInstant(ZoneOffset.UTC);
    }

    long writtenBytes(LocalDate evening) {
        return show.days().stream()
                .filter(day -> !day.date().isAfter(evening))
                .mapToLong(GeneratedShow.Day::actualBytes)
                .sum();
    }

    /** What arrived before the date can be written to on it. */
    private long capacityOn(LocalDate date) {
        return atHandBytes
                + ordered.stream()
                        .filter(order -> order.arrivesOn().isBefore(date))
                        .mapToLong(order -> order.packs() * offer.itemCapacityBytes())
                        .sum();
    }

    long orderedBytes() {
        return ordered.stream()
                .mapToLong(order -> order.packs() * offer.itemCapacityBytes())
                .sum();
    }

    /** @param scale of the plan that the forecast is made from */
    private OrderAdvice advice(LocalDate evening, Learned learned, double scale) {
        return Ordering.advise(paths(evening, learned, scale), offer, LEVEL, moment(evening));
    }

    private PoolPaths paths(LocalDate evening, Learned learned, double scale) {
        LocalDate today = evening.plusDays(1);
        List<DayToCome> days = show.plannedAfter(evening).stream()
                .map(day -> new DayToCome(
                        new DayRef(day.unit(), day.number(), day.date()),
                        day.date(),
                        Math.round(day.plannedBytes() * scale),
                        0))
                .toList();
        LocalDate end = days.stream().map(DayToCome::countedOn).reduce(today, (a, b) -> a.isAfter(b) ? a : b);
        long written = writtenBytes(evening);
        long capacity = capacityOn(today);
        List<Pool.Arrival> arrivals = ordered.stream()
                .filter(order -> !order.arrivesOn().isBefore(today))
                .map(order -> offer.supplier().onOrder(order.on(), order.packs(), offer.itemCapacityBytes()))
                .toList();
        Pool pool = new Pool(
                POOL,
                "kept",
                false,
                0,
                null,
                Kept.WHOLE,
                List.of(new Pool.Item("all", capacity, Math.min(capacity, written), true, null, null)),
                arrivals,
                List.of(),
                Math.max(0, written - capacity));
        return Simulation.run(new Show(today, days, end), List.of(pool), learned, Share.WHOLE, show.seed(), REPLICATES)
                .paths()
                .get(0);
    }

    private Learned learned(LocalDate evening) {
        return Learning.from(show.wrappedBy(evening), Habits.USUAL);
    }

    /** Orders what the advice says on its last day, if the flag is up. */
    static long obeyFlags(Replay replay, LocalDate evening) {
        return replay.obey(replay.advice(evening, replay.learned(evening), 1), evening);
    }

    /**
     * The same by somebody who knows what a day of the rest of the show brings on average, and only not how far each day
     * is off.
     */
    static long obeyFlagsKnowingTheAverage(Replay replay, LocalDate evening) {
        double planned = replay.show.plannedAfter(evening).stream()
                .mapToLong(GeneratedShow.Day::plannedBytes)
                .sum();
        double toCome = replay.writtenBytes(replay.show.lastDate()) - replay.writtenBytes(evening);
        double variance = DAY_BY_DAY * DAY_BY_DAY;
        Belief certain = new Belief(CERTAIN, -variance / 2, CERTAIN, CERTAIN * variance);
        Learned learned = Learning.from(List.of(), new Habits(certain, Double.POSITIVE_INFINITY, false));
        return replay.obey(replay.advice(evening, learned, planned == 0 ? 1 : toCome / planned), evening);
    }

    /**
     * Orders at once, before the show, the fewest packs by any rule that on every evening keeps the chance of running out
     * before an order of the following order day comes within what is put up with. Nobody knows that number before the end:
     * it takes all forecasts to come, that nothing is ordered in vain before, and that what is ordered is there at once.
     */
    static long fewestThatKeepTheRisk(Replay replay, LocalDate evening) {
        long fewest = 0;
        if (evening.isBefore(replay.show.firstDate())) {
            for (LocalDate later = evening; later.isBefore(replay.show.lastDate()); later = later.plusDays(1)) {
                fewest = replay.isDecidedOn(later) ? Math.max(fewest, replay.packsThatKeepTheRisk(later)) : fewest;
            }
        }
        return fewest;
    }

    private long packsThatKeepTheRisk(LocalDate evening) {
        SupplierDays days = offer.supplier().days();
        LocalDate first = days.countsAsOf(moment(evening));
        return new RunOutChances(paths(evening, learned(evening), 1), evening)
                .needUntilArrival(days.nextOrderDay(first), offer.supplier(), offer.itemCapacityBytes())
                .fewestWithin(LEVEL.allowedRisk());
    }

    private long obey(OrderAdvice advice, LocalDate evening) {
        boolean wasUp = isFlagUp();
        flag = FlagRule.after(flag, FlagRule.Sighting.of(advice, evening));
        countFlags(wasUp, evening);
        if (advice.order() == null
                || advice.order().orderBy().isAfter(advice.waiting().get(0).orderOn())) {
            return 0;
        }
        if (!isFlagUp()) {
            dueWithoutFlag++;
            return 0;
        }
        flag = flag.ordered();
        return advice.order().packs();
    }

    private boolean isFlagUp() {
        return flag != null && !flag.state().isClosed();
    }

    private void countFlags(boolean wasUp, LocalDate evening) {
        if (!wasUp && isFlagUp()) {
            flagsOpened++;
            flagsUpAgainSoon += takenDownOn != null && !evening.isAfter(takenDownOn.plusDays(SOON_DAYS)) ? 1 : 0;
        }
        if (wasUp && !isFlagUp()) {
            flagsClosedByForecast++;
            takenDownOn = evening;
        }
    }
}
