package rollbook.forecast;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/**
 * A pool today, and what is known to change it from today to the end of the show: hired items that leave, items and
 * bytes that come back, orders that arrive.
 *
 * <p>Room is kept for the pool as a whole: what its items may hold less what is written on them. An item that leaves
 * takes away all that it may hold, so what is on it has to find room on the others first.
 */
final class PoolChanges {
    final long roomNowBytes;
    final long capacityNowBytes;
    final NavigableMap<LocalDate, Long> leaving = new TreeMap<>();
    final NavigableMap<LocalDate, Long> returning = new TreeMap<>();
    final NavigableMap<LocalDate, Long> arriving = new TreeMap<>();
    final long overdueReturnBytes;
    final long overdueArrivalItems;

    private final LocalDate today;
    private final LocalDate end;
    private final Share fillLevel;

    PoolChanges(ForecastInput input, ForecastLeg leg) {
        today = input.today();
        end = input.endOfShow();
        fillLevel = input.fillLevel();
        roomNowBytes = leg.items().stream()
                .filter(ForecastLeg.Item::usable)
                .mapToLong(this::roomOn)
                .reduce(0, Math::addExact);
        capacityNowBytes = leg.items().stream()
                .filter(ForecastLeg.Item::usable)
                .mapToLong(this::holds)
                .reduce(0, Math::addExact);
        leg.items().forEach(item -> addItem(item, leg.comesBack()));
        overdueReturnBytes = addReleases(leg);
        overdueArrivalItems = addArrivals(leg);
    }

    void add(Map<LocalDate, Long> changes, LocalDate date, long bytes) {
        if (bytes > 0 && !date.isAfter(end)) {
            changes.merge(date, bytes, Math::addExact);
        }
    }

    private void addItem(ForecastLeg.Item item, boolean comesBackEmpty) {
        LocalDate from = presentFrom(item);
        if (from == null) {
            return;
        }
        LocalDate leaves = item.dueBackOn();
        if (!item.usable()) {
            if (leaves != null && !from.isBefore(leaves)) {
                return;
            }
            add(returning, from, comesBackEmpty ? holds(item) : roomOn(item));
        }
        if (leaves != null) {
            add(leaving, notBeforeToday(leaves), holds(item));
        }
    }

    private @Nullable LocalDate presentFrom(ForecastLeg.Item item) {
        if (item.usable()) {
            return today;
        }
        // A date that has passed without the item being usable is no longer a date to count on.
        LocalDate backOn = item.backOn();
        return backOn == null || backOn.isBefore(today) ? null : backOn;
    }

    /** Returns the bytes overdue. No more is released than the items within their fill level hold. */
    private long addReleases(ForecastLeg leg) {
        if (!leg.comesBack()) {
            return 0;
        }
        long unreleased = capacityNowBytes - roomNowBytes;
        long overdue = 0;
        for (ForecastLeg.Release release : leg.releases().stream()
                .sorted(Comparator.comparing(ForecastLeg.Release::date))
                .toList()) {
            long bytes = Math.min(unreleased, release.bytes());
            unreleased -= bytes;
            if (release.date().isBefore(today)) {
                overdue = Math.addExact(overdue, bytes);
            } else {
                add(returning, release.date(), bytes);
            }
        }
        return overdue;
    }

    private long addArrivals(ForecastLeg leg) {
        long overdue = 0;
        for (ForecastLeg.Arrival arrival : leg.arrivals()) {
            long bytes = Math.multiplyExact(arrival.items(), fillLevel.floorOf(arrival.itemCapacityBytes()));
            add(arriving, notBeforeToday(arrival.date()), bytes);
            overdue += arrival.date().isBefore(today) ? arrival.items() : 0;
        }
        return overdue;
    }

    private LocalDate notBeforeToday(LocalDate date) {
        return date.isBefore(today) ? today : date;
    }

    private long holds(ForecastLeg.Item item) {
        return fillLevel.floorOf(item.capacityBytes());
    }

    private long roomOn(ForecastLeg.Item item) {
        return Math.max(0, holds(item) - item.usedBytes());
    }
}
