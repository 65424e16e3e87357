package rollbook.burndown;

/** Room that bytes fill wherever there is some: rolls may be split over items. */
final class BytesRoom implements Room {
    private final long nowBytes;
    private long left;

    BytesRoom(long nowBytes) {
        this.nowBytes = nowBytes;
    }

    @Override
    public void begin() {
        left = nowBytes;
    }

    @Override
    public void add(long bytes) {
        left = Math.addExact(left, bytes);
    }

    @Override
    public void join(PoolChanges.Item item) {
        add(item.roomBytes());
    }

    /** It takes away all that it may hold; what of that is written finds room on the others or lacks. */
    @Override
    public void leave(PoolChanges.Item item) {
        left = Math.subtractExact(left, item.holdsBytes());
    }

    @Override
    public long take(long bytes) {
        left = Math.subtractExact(left, bytes);
        return bytes;
    }

    @Override
    public long leftBytes() {
        return left;
    }

    @Override
    public long lostBytes() {
        return 0;
    }
}
