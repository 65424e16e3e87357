package rollbook.burndown;

/**
 * A pool's room on all courses of the show, which go on from date to date together. It goes on below zero when it is
 * gone, as if the bytes were written all the same: they will have to be, and how far below it gets is what an order must
 * bring.
 */
interface Room {
    /** One a replicate; not to be changed by others. */
    long[] leftBytes();

    /** Rest of items that no roll fitted on so far, one a replicate. */
    long[] lostBytes();

    /** Items that arrive on one course. */
    void add(int replicate, long items, long itemBytes);

    /** Room that is free again. */
    void release(long[] bytes);

    /** An item of the pool that can be used from now on. */
    void join(PoolChanges.Item item);

    /** An item that leaves, so that what is on it has to find room on the others. */
    void leave(PoolChanges.Item item);

    /** Writes bytes for good. */
    void take(long[] bytes);

    /** Writes bytes, and adds to the second array the room that is free again once they are released. */
    void take(long[] bytes, long[] freeAgain);
}
