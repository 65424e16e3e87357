package rollbook.burndown;

import java.util.List;
import rollbook.learning.Streams;
import rollbook.quantity.Share;

/** What a pool has on order, and when each of it comes on each course of the show. */
final class Arrivals {
    private final Pool pool;
    private final long[] itemBytes;

    /** By arrival and replicate: index of the first date that finds it there. */
    private final int[][] usableFrom;

    Arrivals(Pool pool, PoolChanges changes, Share fillLevel, Streams streams, int replicates) {
        this.pool = pool;
        List<Pool.Arrival> all = pool.arrivals();
        itemBytes = new long[all.size()];
        usableFrom = new int[all.size()][];
        for (int i = 0; i < all.size(); i++) {
            itemBytes[i] = fillLevel.floorOf(all.get(i).itemCapacityBytes());
            usableFrom[i] = new ArrivalDates(all.get(i), changes.dates.get(0))
                    .usableFrom(streams.uniforms(replicates, "lead time", pool.id(), i), changes.dates);
        }
    }

    int items() {
        return pool.arrivals().stream()
                .mapToInt(arrival -> Math.toIntExact(arrival.items()))
                .sum();
    }

    void addTo(Room room, int date, int replicate) {
        for (int i = 0; i < itemBytes.length; i++) {
            if (usableFrom[i][replicate] == date) {
                for (long item = 0; item < pool.arrivals().get(i).items(); item++) {
                    room.add(itemBytes[i]);
                }
            }
        }
    }

    /** What comes at the end of that date, or after it and before the next. */
    long bytesAfter(int date, int replicate) {
        long bytes = 0;
        for (int i = 0; i < itemBytes.length; i++) {
            if (usableFrom[i][replicate] == date + 1) {
                bytes += itemBytes[i] * pool.arrivals().get(i).items();
            }
        }
        return bytes;
    }
}
