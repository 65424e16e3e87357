package rollbook.burndown;

/**
 * A pool's room on one course of the show. It goes on below zero when it is gone, as if the bytes were written all the
 * same: they will have to be, and how far below it gets is what an order must bring.
 */
interface Room {
    /** Begins another course with the room of today. */
    void begin();

    /** An item, or room that is free again. */
    void add(long bytes);

    /** An item of the pool that can be used from now on. */
    void join(PoolChanges.Item item);

    /** An item that leaves, so that what is on it has to find room on the others. */
    void leave(PoolChanges.Item item);

    /** Writes bytes. Returns the room that is free again once they are released. */
    long take(long bytes);

    long leftBytes();

    /** Rest of items that no roll fitted on, on this course so far. */
    long lostBytes();
}
