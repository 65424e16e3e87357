package rollbook.burndown;

import java.util.Arrays;

/** Room that bytes fill wherever there is some: rolls may be split over items. */
final class BytesRoom implements Room {
    private final long[] left;
    private final long[] lost;

    BytesRoom(long nowBytes, int replicates) {
        left = new long[replicates];
        lost = new long[replicates];
        Arrays.fill(left, nowBytes);
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
        left[replicate] = Math.addExact(left[replicate], Math.multiplyExact(items, itemBytes));
    }

    @Override
    public void release(long[] bytes) {
        for (int r = 0; r < left.length; r++) {
            left[r] = Math.addExact(left[r], bytes[r]);
        }
    }

    @Override
    public void join(PoolChanges.Item item) {
        addToAll(item.roomBytes());
    }

    /** It takes away all that it may hold; what of that is written by then finds room on the others or lacks. */
    @Override
    public void leave(PoolChanges.Item item) {
        addToAll(-item.takesAwayBytes());
    }

    private void addToAll(long bytes) {
        for (int r = 0; r < left.length; r++) {
            left[r] = Math.addExact(left[r], bytes);
        }
    }

    @Override
    public void take(long[] bytes) {
        for (int r = 0; r < left.length; r++) {
            left[r] = Math.subtractExact(left[r], bytes[r]);
        }
    }

    @Override
    public void take(long[] bytes, long[] freeAgain) {
        take(bytes);
        for (int r = 0; r < left.length; r++) {
            freeAgain[r] += bytes[r];
        }
    }
}
