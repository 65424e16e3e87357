package rollbook.burndown;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Room in which each roll lies on one item. Items are filled one after the other; when a roll doesn't fit on the rest of
 * an item, the rest is lost and the next item is begun (next fit). So more or larger items never hold less, which isn't
 * so if rests are looked through for a roll that fits. Room that is free again is used first, as one.
 *
 * <p>A day's bytes come as rolls of the usual size and a smaller last one. What lacks counts in whole rolls, as many as
 * must lie on items that are still to be had.
 */
final class RollsRoom implements Room {
    private final long rollBytes;

    /** By place, in the order in which items are filled, and replicate. A closed item keeps the rest that is lost. */
    private final long[][] rooms;

    /** How many places are there, and which is being filled. */
    private final int[] count;

    private final int[] current;
    private final long[] free;

    private final long[] left;
    private final long[] lackingRolls;
    private final long[] lost;

    /** Where an item is that leaves, by its number and replicate. */
    private final Map<Integer, int[]> places = new HashMap<>();

    /** @param itemsToCome that may arrive */
    RollsRoom(long rollBytes, List<PoolChanges.Item> items, int itemsToCome, int replicates) {
        this.rollBytes = rollBytes;
        rooms = new long[items.size() + itemsToCome][replicates];
        count = new int[replicates];
        current = new int[replicates];
        free = new long[replicates];
        left = new long[replicates];
        lackingRolls = new long[replicates];
        lost = new long[replicates];
        items.stream().filter(PoolChanges.Item::isHereNow).forEach(this::join);
    }

    @Override
    public long[] leftBytes() {
        return left;
    }

    @Override
    public long[] lostBytes() {
        return lost;
    }

    @Override
    public void add(int replicate, long items, long itemBytes) {
        for (long i = 0; i < items; i++) {
            addItem(replicate, itemBytes);
        }
    }

    private void addItem(int r, long bytes) {
        rooms[count[r]++][r] = bytes;
        more(r, bytes);
    }

    @Override
    public void release(long[] bytes) {
        for (int r = 0; r < left.length; r++) {
            free[r] = Math.addExact(free[r], bytes[r]);
            more(r, bytes[r]);
        }
    }

    /** Room that has come takes what lacked so far. */
    private void more(int r, long bytes) {
        long lacking = lackingRolls[r];
        lackingRolls[r] = 0;
        left[r] = Math.addExact(left[r], Math.addExact(bytes, lacking * rollBytes));
        place(r, lacking, rollBytes);
    }

    @Override
    public void join(PoolChanges.Item item) {
        if (item.leavesOn() != PoolChanges.NEVER) {
            places.put(item.number(), count.clone());
        }
        for (int r = 0; r < left.length; r++) {
            addItem(r, item.roomBytes());
        }
    }

    @Override
    public void leave(PoolChanges.Item item) {
        int[] place = Objects.requireNonNull(places.get(item.number()));
        for (int r = 0; r < left.length; r++) {
            long rest = rooms[place[r]][r];
            if (place[r] >= current[r]) {
                left[r] -= rest;
            }
            rooms[place[r]][r] = 0;
            take(r, item.takesAwayBytes() - rest);
        }
    }

    @Override
    public void take(long[] bytes) {
        for (int r = 0; r < left.length; r++) {
            take(r, bytes[r]);
        }
    }

    @Override
    public void take(long[] bytes, long[] freeAgain) {
        for (int r = 0; r < left.length; r++) {
            long lostBefore = lost[r];
            take(r, bytes[r]);
            freeAgain[r] += bytes[r] + lost[r] - lostBefore;
        }
    }

    private void take(int r, long bytes) {
        long rolls = bytes / rollBytes;
        place(r, rolls, rollBytes);
        long rest = bytes - rolls * rollBytes;
        if (rest > 0) {
            place(r, 1, rest);
        }
    }

    private void place(int r, long rolls, long size) {
        long waiting = rolls;
        long fitting = fitting(free[r], waiting, size);
        free[r] -= fitting * size;
        waiting -= fitting;
        while (waiting > 0 && current[r] < count[r]) {
            long[] room = rooms[current[r]];
            fitting = fitting(room[r], waiting, size);
            room[r] -= fitting * size;
            waiting -= fitting;
            if (waiting > 0) {
                lost[r] += room[r];
                left[r] -= room[r];
                current[r]++;
            }
        }
        left[r] -= (rolls - waiting) * size;
        lack(r, waiting);
    }

    /** A division takes longer than all the rest. */
    private static long fitting(long room, long rolls, long size) {
        if (room < size) {
            return 0;
        }
        return rolls * size <= room ? rolls : room / size;
    }

    private void lack(int r, long rolls) {
        lackingRolls[r] += rolls;
        left[r] = Math.subtractExact(left[r], rolls * rollBytes);
    }
}
