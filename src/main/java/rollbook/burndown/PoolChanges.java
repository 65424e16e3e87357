package rollbook.burndown;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/**
 * A pool today, and what is known to change it on the same date on every course of the show: items that leave or come
 * back, bytes that are released, days that are shot.
 */
final class PoolChanges {
    static final int NEVER = -1;

    /** On the dates on which something is shot or changes, in their order. */
    final List<LocalDate> dates;

    /** The days of date i are those from firstDay[i] up to, and without, firstDay[i + 1]. */
    final int[] firstDay;

    final List<Item> items = new ArrayList<>();

    /** By date: items that can be used again, and those that leave. */
    final Item[][] joining;

    final Item[][] leaving;

    /** By date: bytes that are on the pool's items now. */
    final long[] releasedBytes;

    /** By date: on which one its bytes are released, or {@link #NEVER}. */
    final int[] releasedOn;

    final long roomNowBytes;
    final long capacityNowBytes;
    final long overdueReturnBytes;

    private final Show show;
    private final Pool pool;
    private final Share fillLevel;

    /**
     * An item that counts.
     *
     * @param number its place among the pool's items
     * @param roomBytes when it begins to count, within the fill level
     * @param filledBytes on it at that time, perhaps beyond the fill level
     * @param joinsOn index of the date, {@link #NEVER} if it is here now
     * @param leavesOn index of the date, {@link #NEVER} if it stays to the end
     */
    record Item(int number, long roomBytes, long filledBytes, int joinsOn, int leavesOn) {
        /** Its room, and as much again as what is on it. */
        long takesAwayBytes() {
            return roomBytes + filledBytes;
        }

        boolean isHereNow() {
            return joinsOn == NEVER;
        }
    }

    PoolChanges(Show show, Pool pool, Share fillLevel) {
        this.show = show;
        this.pool = pool;
        this.fillLevel = fillLevel;
        dates = dates();
        firstDay = firstDays();
        for (int i = 0; i < pool.items().size(); i++) {
            addItem(i, pool.items().get(i));
        }
        joining = byDate(Item::joinsOn);
        leaving = byDate(Item::leavesOn);
        capacityNowBytes = pool.items().stream()
                .filter(Pool.Item::usable)
                .mapToLong(this::holds)
                .reduce(0, Math::addExact);
        roomNowBytes = items.stream()
                .filter(Item::isHereNow)
                .mapToLong(Item::roomBytes)
                .reduce(0, Math::addExact);
        releasedBytes = new long[dates.size()];
        overdueReturnBytes = addReleases();
        releasedOn = dates.stream()
                .mapToInt(
                        date -> pool.returnAfterDays() == null ? NEVER : indexOf(date.plusDays(pool.returnAfterDays())))
                .toArray();
    }

    private List<LocalDate> dates() {
        TreeSet<LocalDate> all = new TreeSet<>(List.of(show.today(), show.endOfShow()));
        for (Pool.Item item : pool.items()) {
            LocalDate from = presentFrom(item);
            LocalDate leaves = item.dueBackOn();
            if (from != null) {
                all.add(from);
                all.add(leaves == null ? from : notBeforeToday(leaves));
            }
        }
        pool.arrivals().forEach(arrival -> all.add(new ArrivalDates(arrival, show.today()).usual()));
        pool.releases().forEach(release -> all.add(notBeforeToday(release.date())));
        TreeSet<LocalDate> written = new TreeSet<>(List.of(show.today()));
        show.days().forEach(day -> written.add(day.countedOn()));
        all.addAll(written);
        if (pool.returnAfterDays() != null) {
            written.forEach(date -> all.add(date.plusDays(pool.returnAfterDays())));
        }
        return List.copyOf(all.headSet(show.endOfShow(), true));
    }

    private int[] firstDays() {
        int[] first = new int[dates.size() + 1];
        int day = 0;
        for (int i = 0; i < dates.size(); i++) {
            first[i] = day;
            while (day < show.days().size() && show.days().get(day).countedOn().equals(dates.get(i))) {
                day++;
            }
        }
        first[dates.size()] = day;
        return first;
    }

    private void addItem(int number, Pool.Item item) {
        LocalDate from = presentFrom(item);
        if (from == null) {
            return;
        }
        LocalDate leaves = item.dueBackOn();
        if (!item.usable() && leaves != null && !from.isBefore(leaves)) {
            return;
        }
        long filled = !item.usable() && pool.comesBack() ? 0 : item.usedBytes();
        int joinsOn = item.usable() ? NEVER : indexOf(from);
        if (!item.usable() && joinsOn == NEVER) {
            return;
        }
        items.add(new Item(
                number,
                Math.max(0, holds(item) - filled),
                filled,
                joinsOn,
                leaves == null ? NEVER : indexOf(notBeforeToday(leaves))));
    }

    private @Nullable LocalDate presentFrom(Pool.Item item) {
        if (item.usable()) {
            return show.today();
        }
        // A date that has passed without the item being usable is no longer a date to count on.
        LocalDate backOn = item.backOn();
        return backOn == null || backOn.isBefore(show.today()) ? null : backOn;
    }

    private Item[][] byDate(ToIntFunction<Item> index) {
        Item[][] byDate = new Item[dates.size()][];
        for (int i = 0; i < byDate.length; i++) {
            int date = i;
            byDate[i] = items.stream()
                    .filter(item -> index.applyAsInt(item) == date)
                    .toArray(Item[]::new);
        }
        return byDate;
    }

    /** Returns the bytes overdue. No more is released than is on the items within their fill level. */
    private long addReleases() {
        if (!pool.comesBack()) {
            return 0;
        }
        long unreleased = capacityNowBytes - roomNowBytes;
        long overdue = 0;
        for (Pool.Release release : pool.releases().stream()
                .sorted(Comparator.comparing(Pool.Release::date))
                .toList()) {
            long bytes = Math.min(unreleased, release.bytes());
            unreleased -= bytes;
            int index = indexOf(release.date());
            if (release.date().isBefore(show.today())) {
                overdue = Math.addExact(overdue, bytes);
            } else if (index != NEVER) {
                releasedBytes[index] = Math.addExact(releasedBytes[index], bytes);
            }
        }
        return overdue;
    }

    private long holds(Pool.Item item) {
        return fillLevel.floorOf(item.capacityBytes());
    }

    private LocalDate notBeforeToday(LocalDate date) {
        return date.isBefore(show.today()) ? show.today() : date;
    }

    private int indexOf(LocalDate date) {
        return Math.max(NEVER, Collections.binarySearch(dates, date));
    }
}
