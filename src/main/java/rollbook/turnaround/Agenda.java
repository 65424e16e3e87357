package rollbook.turnaround;

import java.util.Arrays;

/**
 * The events to come: by time, then by kind, then by whom they concern, then in the order in which they were entered. A
 * binary heap in arrays, for a day has a thousand events and ten thousand days are played.
 */
final class Agenda {
    private static final Event[] EVENTS = Event.values();
    private static final int EVENT_SHIFT = 58;
    private static final int ENTITY_SHIFT = 32;
    private static final int LARGEST_ENTITY = (1 << (EVENT_SHIFT - ENTITY_SHIFT)) - 1;

    private long[] times = new long[64];
    private long[] ranks = new long[64];
    private int[] stamps = new int[64];
    private int size;
    private int entered;
    private long time;
    private long rank;
    private int stamp;

    /** @param stamp lets whom it concerns see that the event is out of date */
    void enter(long atMillis, Event event, int entity, int stamp) {
        if (size == times.length) {
            times = Arrays.copyOf(times, 2 * size);
            ranks = Arrays.copyOf(ranks, 2 * size);
            stamps = Arrays.copyOf(stamps, 2 * size);
        }
        int hole = size++;
        long key = rank(event, entity);
        while (hole > 0) {
            int above = (hole - 1) / 2;
            if (!isBefore(atMillis, key, times[above], ranks[above])) {
                break;
            }
            move(above, hole);
            hole = above;
        }
        put(hole, atMillis, key, stamp);
    }

    private long rank(Event event, int entity) {
        if (entity > LARGEST_ENTITY) {
            throw new IllegalArgumentException("more than " + LARGEST_ENTITY + " of one kind");
        }
        return (long) event.ordinal() << EVENT_SHIFT
                | (long) entity << ENTITY_SHIFT
                | Integer.toUnsignedLong(entered++);
    }

    /** How many events were entered so far. */
    int entered() {
        return entered;
    }

    boolean isEmpty() {
        return size == 0;
    }

    /** Whether something else happens at this instant, which must be the current one. */
    boolean hasAt(long millis) {
        return size > 0 && times[0] == millis;
    }

    /** Makes the earliest event the current one. */
    void next() {
        time = times[0];
        rank = ranks[0];
        stamp = stamps[0];
        size--;
        long lastTime = times[size];
        long lastRank = ranks[size];
        int lastStamp = stamps[size];
        int hole = 0;
        while (2 * hole + 1 < size) {
            int below = 2 * hole + 1;
            if (below + 1 < size && isBefore(times[below + 1], ranks[below + 1], times[below], ranks[below])) {
                below++;
            }
            if (!isBefore(times[below], ranks[below], lastTime, lastRank)) {
                break;
            }
            move(below, hole);
            hole = below;
        }
        put(hole, lastTime, lastRank, lastStamp);
    }

    /** Of the current event, as all below. */
    long millis() {
        return time;
    }

    Event event() {
        return EVENTS[(int) (rank >>> EVENT_SHIFT)];
    }

    int entity() {
        return (int) (rank >>> ENTITY_SHIFT) & LARGEST_ENTITY;
    }

    int stamp() {
        return stamp;
    }

    private static boolean isBefore(long time, long rank, long otherTime, long otherRank) {
        return time < otherTime || time == otherTime && rank < otherRank;
    }

    private void move(int from, int to) {
        put(to, times[from], ranks[from], stamps[from]);
    }

    private void put(int at, long newTime, long newRank, int newStamp) {
        times[at] = newTime;
        ranks[at] = newRank;
        stamps[at] = newStamp;
    }
}
