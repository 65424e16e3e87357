package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/**
 * A leg of the copy plan with the pool of media that serves it. A leg of two copies is two legs, each with its pool.
 *
 * @param returnAfterDays null if what is written stays; else calendar days, at least one, after which the bytes of a day
 *     are released and their room is free again from the morning on
 * @param kept bytes written for bytes recorded: {@link Share#WHOLE} as recorded, below it if encoded
 * @param reduction where that comes from; null as recorded, and in forecasts from before it was measured
 * @param releases bytes now on usable items that are due to be released, by date; only for a leg that comes back
 * @param waitingBytes bytes recorded already that this leg's media haven't received yet, in bytes as written
 * @param supply null if nobody has said yet where this pool's media comes from
 */
record ForecastLeg(
        UUID id,
        String name,
        @Nullable Integer returnAfterDays,
        Share kept,
        @Nullable Reduction reduction,
        List<Item> items,
        List<Arrival> arrivals,
        List<Release> releases,
        long waitingBytes,
        @Nullable Supply supply) {

    /**
     * A media item of the pool.
     *
     * @param usable false while it is quarantined or away
     * @param backOn for an item that isn't usable: the date from which it is again, null if nobody knows
     * @param dueBackOn for a hired item: the date it leaves, from that morning on; null if it stays
     */
    record Item(
            String code,
            long capacityBytes,
            long usedBytes,
            boolean usable,
            @Nullable LocalDate backOn,
            @Nullable LocalDate dueBackOn) {
        Item {
            if (capacityBytes < 0 || usedBytes < 0) {
                throw new IllegalArgumentException("%s: capacity %d and used %d bytes, neither may be below zero"
                        .formatted(code, capacityBytes, usedBytes));
            }
        }
    }

    /** Media on order. It comes during its date, so the room is free for the next one. */
    record Arrival(LocalDate date, long items, long itemCapacityBytes) {}

    /** Bytes that are released, from the morning of that date on. */
    record Release(LocalDate date, long bytes) {}

    ForecastLeg {
        if (returnAfterDays != null && returnAfterDays < 1) {
            throw new IllegalArgumentException(
                    "%s: media can't come back after %d days".formatted(name, returnAfterDays));
        }
        if (waitingBytes < 0) {
            throw new IllegalArgumentException("%s: %d bytes can't be waiting".formatted(name, waitingBytes));
        }
        items = List.copyOf(items);
        arrivals = List.copyOf(arrivals);
        releases = List.copyOf(releases);
    }

    boolean comesBack() {
        return returnAfterDays != null;
    }
}
