package rollbook.burndown;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The media that serve a leg of the copy plan. A leg of two copies is two pools. Bytes are as written on this leg.
 *
 * @param wholeRolls whether a roll has to lie on one item, so that what it doesn't fill is lost
 * @param rollBytes of a usual roll; counts only if rolls stay whole
 * @param returnAfterDays null if what is written stays; else calendar days, at least one, after which the bytes of a day
 *     are released and their room is free again from the morning on
 * @param items in the order in which they are filled if rolls stay whole
 * @param releases bytes now on usable items that are due to be released, by date; only for a pool that comes back
 * @param waitingBytes recorded already and not yet written to this pool
 */
public record Pool(
        UUID id,
        String name,
        boolean wholeRolls,
        long rollBytes,
        @Nullable Integer returnAfterDays,
        Kept kept,
        List<Item> items,
        List<Arrival> arrivals,
        List<Release> releases,
        long waitingBytes) {

    /**
     * A media item of the pool.
     *
     * @param usable false while it is quarantined or away
     * @param backOn for an item that isn't usable: the date from which it is again, null if nobody knows
     * @param dueBackOn for a hired item: the date it leaves, from that morning on; null if it stays
     */
    public record Item(
            String code,
            long capacityBytes,
            long usedBytes,
            boolean usable,
            @Nullable LocalDate backOn,
            @Nullable LocalDate dueBackOn) {
        public Item {
            if (capacityBytes < 0 || usedBytes < 0) {
                throw new IllegalArgumentException("%s: capacity %d and used %d bytes, neither may be below zero"
                        .formatted(code, capacityBytes, usedBytes));
            }
        }
    }

    /**
     * Media on order. They come during their date, so the room is free for the next one.
     *
     * @param calendar the days on which the supplier works
     */
    public record Arrival(
            LocalDate orderedOn, LeadTime leadTime, WorkingCalendar calendar, long items, long itemCapacityBytes) {
        public Arrival {
            if (items < 1 || itemCapacityBytes < 0) {
                throw new IllegalArgumentException(
                        "%d items of %d bytes can't be on order".formatted(items, itemCapacityBytes));
            }
        }
    }

    /** Bytes that are released, from the morning of that date on. */
    public record Release(LocalDate date, long bytes) {}

    public Pool {
        if (returnAfterDays != null && returnAfterDays < 1) {
            throw new IllegalArgumentException(
                    "%s: media can't come back after %d days".formatted(name, returnAfterDays));
        }
        if (waitingBytes < 0) {
            throw new IllegalArgumentException("%s: %d bytes can't be waiting".formatted(name, waitingBytes));
        }
        if (wholeRolls && rollBytes < 1) {
            throw new IllegalArgumentException("%s: whole rolls of %d bytes".formatted(name, rollBytes));
        }
        items = List.copyOf(items);
        arrivals = List.copyOf(arrivals);
        releases = List.copyOf(releases);
    }

    public boolean comesBack() {
        return returnAfterDays != null;
    }
}
