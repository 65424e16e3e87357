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
            Math.multiplyExact(itemBytes[i], all.get(i).items());
            usableFrom[i] = new ArrivalDates(all.get(i), changes.dates.get(0))
                    .usableFrom(streams.uniforms(replicates, "lead time", pool.id(), i), changes.dates);
        }
    }

    int items() {
        return pool.arrivals().stream()
                .mapToInt(arrival -> Math.toIntExact(arrival.items()))
                .sum();
    }

    void addTo(Room room, int date) {
        for (int i = 0; i < itemBytes.length; i++) {
            long items = pool.arrivals().get(i).items();
            for (int r = 0; r < usableFrom[i].length; r++) {
                if (usableFrom[i][r] == date) {
                    room.add(r, items, itemBytes[i]);
                }
            }
        }
    }

    /** The bytes left with what comes at the end of that date, or after it and before the next; in the second array. */
    long[] withArrivingAfter(int date, long[] left, long[] result) {
        System.arraycopy(left, 0, result, 0, left.length);
        for (int i = 0; i < itemBytes.length; i++) {
            long arriving = itemBytes[i] * pool.arrivals().get(i).items();
            for (int r = 0; r < result.length; r++) {
                if (usableFrom[i][r] == date + 1) {
                    result[r] += arriving;
                }
            }
        }
        return result;
    }
}
