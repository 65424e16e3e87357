package rollbook.burndown;

import java.util.List;

/**
 * Room in which each roll lies on one item. Items are filled one after the other; when a roll doesn't fit on the rest of
 * an item, the rest is lost and the next item is begun (next fit). So more or larger items never hold less, which isn't
 * so if rests are looked through for a roll that fits.
 *
 * <p>A day's bytes come as rolls of the usual size and a smaller last one. What lacks counts in whole rolls, as many as
 * must lie on items that are still to be had.
 */
final class RollsRoom implements Room {
    private final long rollBytes;
    private final List<PoolChanges.Item> itemsNow;

    /** Of items in the order in which they are filled, and of room that came free as if it were one. */
    private final long[] rooms;

    private final long[] filled;
    private final int[] places;

    private int count;
    private int current;
    private long left;
    private long lackingRolls;
    private long lost;

    /** @param mostPlaces items now and to come, and releases */
    RollsRoom(long rollBytes, List<PoolChanges.Item> items, int mostPlaces) {
        this.rollBytes = rollBytes;
        itemsNow = items.stream().filter(PoolChanges.Item::isHereNow).toList();
        rooms = new long[mostPlaces];
        filled = new long[mostPlaces];
        places = new int[items.size()];
    }

    @Override
    public void begin() {
        count = 0;
        current = 0;
        left = 0;
        lackingRolls = 0;
        lost = 0;
        for (int i = 0; i < itemsNow.size(); i++) {
            join(itemsNow.get(i));
        }
    }

    @Override
    public void add(long bytes) {
        add(bytes, 0);
    }

    private void add(long bytes, long filledBytes) {
        rooms[count] = bytes;
        filled[count] = filledBytes;
        count++;
        left = Math.addExact(left, bytes);
        long waiting = lackingRolls;
        lackingRolls = 0;
        place(waiting, rollBytes);
    }

    @Override
    public void join(PoolChanges.Item item) {
        places[item.number()] = count;
        add(item.roomBytes(), item.holdsBytes() - item.roomBytes());
    }

    @Override
    public void leave(PoolChanges.Item item) {
        int place = places[item.number()];
        left -= rooms[place];
        rooms[place] = 0;
        take(filled[place]);
    }

    @Override
    public long take(long bytes) {
        long lostBefore = lost;
        place(bytes / rollBytes, rollBytes);
        long rest = bytes % rollBytes;
        if (rest > 0) {
            place(1, rest);
        }
        return bytes + lost - lostBefore;
    }

    private void place(long rolls, long size) {
        long waiting = rolls;
        while (waiting > 0 && current < count) {
            long fitting = Math.min(waiting, rooms[current] / size);
            long bytes = fitting * size;
            rooms[current] -= bytes;
            filled[current] += bytes;
            left -= bytes;
            waiting -= fitting;
            if (waiting > 0) {
                close();
            }
        }
        lackingRolls += waiting;
    }

    private void close() {
        lost += rooms[current];
        left -= rooms[current];
        rooms[current] = 0;
        current++;
    }

    @Override
    public long leftBytes() {
        return lackingRolls > 0 ? -Math.multiplyExact(lackingRolls, rollBytes) : left;
    }

    @Override
    public long lostBytes() {
        return lost;
    }
}
