package rollbook.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;

/**
 * Walks one leg's pool from today to the end of the show, date by date. The order within a date errs on the safe side:
 * hired items leave in the morning, released bytes are free in the morning, then the days are shot, and what arrives is
 * there for the next date.
 *
 * <p>The balance goes on below zero when the room is gone, as if the bytes were written all the same: they will have to
 * be, and how far below it gets is what an order must bring.
 */
final class PoolRun {
    private final ForecastInput input;
    private final ForecastLeg leg;
    private final PoolChanges changes;
    private final PlanRatio ratio;
    private final List<ForecastDay> daysToCome;
    private final List<BurnDown.Point> points = new ArrayList<>();

    private long balance;
    private long demand;
    private long returned;
    private long arrived;
    private long takenAway;
    private long shortfall;
    private int cover;
    private @Nullable RunOut runOut;

    PoolRun(ForecastInput input, ForecastLeg leg, PlanRatio ratio) {
        this.input = input;
        this.leg = leg;
        this.ratio = ratio;
        this.changes = new PoolChanges(input, leg);
        this.daysToCome = input.daysToCome();
        this.balance = changes.roomNowBytes;
        addPastPoints();
        walk();
    }

    private void addPastPoints() {
        input.days().stream()
                .map(ForecastDay::date)
                .filter(date -> date.isBefore(input.today()))
                .distinct()
                .map(date -> point(date, 0, 0, 0, 0).withLeft(null))
                .filter(point -> !point.days().isEmpty())
                .forEach(points::add);
    }

    private void walk() {
        TreeSet<LocalDate> dates = new TreeSet<>(List.of(input.today()));
        daysToCome.forEach(day -> dates.add(day.countedOn(input.today())));
        input.days().stream()
                .filter(day -> day.state() != ForecastDay.State.CANCELLED)
                .map(ForecastDay::date)
                .filter(date -> date.isAfter(input.today()))
                .forEach(dates::add);
        dates.addAll(changes.leaving.keySet());
        dates.addAll(changes.returning.keySet());
        dates.addAll(changes.arriving.keySet());
        for (LocalDate date = dates.pollFirst(); date != null; date = dates.pollFirst()) {
            pass(date);
            // What this date wrote may come back on a date nothing else happens on.
            dates.addAll(changes.returning.tailMap(date, false).keySet());
        }
    }

    private void pass(LocalDate date) {
        long leavingToday = changes.leaving.getOrDefault(date, 0L);
        long returnedToday = changes.returning.getOrDefault(date, 0L);
        long arrivedToday = changes.arriving.getOrDefault(date, 0L);
        balance = Math.subtractExact(Math.addExact(balance, returnedToday), leavingToday);
        noteLack(date, null, RunOut.Cause.HIRED_ITEM_LEAVES);
        long expected = shoot(date);
        balance = Math.addExact(balance, arrivedToday);
        takenAway = Math.addExact(takenAway, leavingToday);
        returned = Math.addExact(returned, returnedToday);
        arrived = Math.addExact(arrived, arrivedToday);
        points.add(point(date, expected, leavingToday, returnedToday, arrivedToday));
    }

    /** Takes the date's demand from the balance and returns it. */
    private long shoot(LocalDate date) {
        long expected = 0;
        if (date.equals(input.today())) {
            expected = leg.waitingBytes();
            take(expected, date);
            noteLack(date, null, RunOut.Cause.WAITING);
        }
        for (ForecastDay day : daysToCome) {
            if (day.countedOn(input.today()).equals(date)) {
                long bytes = leg.kept().ceilOf(day.bytesToCome(ratio));
                take(bytes, date);
                noteLack(date, day.ref(), RunOut.Cause.DEMAND);
                cover += runOut == null ? 1 : 0;
                expected = Math.addExact(expected, bytes);
            }
        }
        return expected;
    }

    private void take(long bytes, LocalDate date) {
        balance = Math.subtractExact(balance, bytes);
        demand = Math.addExact(demand, bytes);
        if (leg.returnAfterDays() != null) {
            changes.add(changes.returning, date.plusDays(leg.returnAfterDays()), bytes);
        }
    }

    private void noteLack(LocalDate date, @Nullable DayRef day, RunOut.Cause cause) {
        if (balance < 0 && runOut == null) {
            runOut = new RunOut(date, day, cause);
        }
        shortfall = Math.max(shortfall, -balance);
    }

    private BurnDown.Point point(LocalDate date, long expected, long leaving, long returning, long arriving) {
        List<ForecastDay> shot = input.days().stream()
                .filter(day -> day.date().equals(date) && day.state() != ForecastDay.State.CANCELLED)
                .toList();
        return new BurnDown.Point(
                date,
                shot.stream().map(ForecastDay::ref).toList(),
                shot.stream()
                        .mapToLong(day -> leg.kept().ceilOf(day.plannedBytes()))
                        .reduce(0, Math::addExact),
                shot.stream()
                        .mapToLong(day -> leg.kept().ceilOf(day.actualBytes()))
                        .reduce(0, Math::addExact),
                expected,
                leaving,
                returning,
                arriving,
                balance);
    }

    LegForecast forecast() {
        OrderProposal order = proposal();
        return new LegForecast(
                leg.id(),
                leg.name(),
                leg.kept(),
                leg.returnAfterDays(),
                changes.roomNowBytes,
                leg.waitingBytes(),
                demand,
                returned,
                arrived,
                takenAway,
                balance,
                shortfall,
                runOut,
                cover,
                daysToCome.size(),
                changes.overdueReturnBytes,
                changes.overdueArrivalItems,
                flag(order),
                order,
                new BurnDown(input.today(), changes.roomNowBytes, changes.capacityNowBytes, points));
    }

    private @Nullable OrderProposal proposal() {
        Supply supply = leg.supply();
        return runOut == null || supply == null
                ? null
                : OrderProposal.of(
                        shortfall, runOut.date(), supply, input.today(), input.fillLevel(), input.calendar());
    }

    private OrderFlag flag(@Nullable OrderProposal order) {
        if (runOut == null) {
            return OrderFlag.NONE;
        }
        return order == null ? OrderFlag.NO_SUPPLY : order.flagOn(input.today());
    }
}
