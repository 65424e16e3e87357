package rollbook.burndown;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * One pool on all courses of the show, date by date. The order within a date errs on the safe side: what arrived is
 * there in the morning, released bytes are free and hired items leave in the morning, then the days are shot.
 */
final class PoolCourses {
    private static final int NOT_OUT = Integer.MAX_VALUE;

    final Pool pool;
    final PoolChanges changes;

    /** By date and replicate: after the date's days are shot, before anything arrives; null where no course lacks any. */
    final long[] @Nullable [] lackingRoomBytes;

    /** By date: what is written on it, and what is left at its end with what arrives before the next. */
    final Band[] demandBands;

    final Band[] leftBands;

    /** By replicate. */
    final long[] neededBytes;

    final long[] lowestBytes;
    final long[] lostBytes;

    /** By replicate: how many days fit before it runs out, {@link #NOT_OUT} if all that come do. */
    final int[] coverDays;

    /** By date: how many courses run out on it. */
    final int[] runOutOn;

    int runOutByWaiting;
    int runOutByDemand;
    int runOutByHiredItems;

    private final WrittenBytes written;
    private final Arrivals arrivals;
    private final Room room;
    private final Bands bands;

    /** By date, until then: bytes to be released, one a replicate; null for none. */
    private final long[] @Nullable [] releasedLater;

    private int date;
    private final long[] demand;
    private final long[] scratch;

    PoolCourses(Pool pool, PoolChanges changes, WrittenBytes written, Arrivals arrivals, int replicates) {
        this.pool = pool;
        this.changes = changes;
        this.written = written;
        this.arrivals = arrivals;
        int dates = changes.dates.size();
        lackingRoomBytes = new long[dates][];
        demandBands = new Band[dates];
        leftBands = new Band[dates];
        neededBytes = new long[replicates];
        lowestBytes = new long[replicates];
        coverDays = new int[replicates];
        runOutOn = new int[dates];
        releasedLater = new long[dates][];
        Arrays.fill(coverDays, NOT_OUT);
        demand = new long[replicates];
        scratch = new long[replicates];
        bands = new Bands(replicates);
        room = pool.wholeRolls()
                ? new RollsRoom(pool.rollBytes(), changes.items, arrivals.items(), replicates)
                : new BytesRoom(changes.roomNowBytes, replicates);
        lostBytes = room.lostBytes();
        begin();
    }

    /** The days are shot in their order, each on all courses. */
    void shoot(int day, long[] recordedBytes) {
        while (day >= changes.firstDay[date + 1]) {
            goOn();
        }
        take(written.of(recordedBytes));
        runOutByDemand += newlyOut(day);
    }

    /** To the end of the show. */
    void finish() {
        while (date + 1 < demandBands.length) {
            goOn();
        }
        end();
    }

    private void goOn() {
        end();
        date++;
        begin();
    }

    private void begin() {
        arrivals.addTo(room, date);
        for (PoolChanges.Item item : changes.joining[date]) {
            room.join(item);
        }
        release();
        for (PoolChanges.Item item : changes.leaving[date]) {
            room.leave(item);
        }
        runOutByHiredItems += newlyOut(changes.firstDay[date]);
        Arrays.fill(demand, 0);
        if (date == 0 && pool.waitingBytes() > 0) {
            Arrays.fill(scratch, pool.waitingBytes());
            take(scratch);
            runOutByWaiting += newlyOut(0);
        }
    }

    private void release() {
        if (changes.releasedBytes[date] > 0) {
            Arrays.fill(scratch, changes.releasedBytes[date]);
            room.release(scratch);
        }
        long[] released = releasedLater[date];
        if (released != null) {
            room.release(released);
            releasedLater[date] = null;
        }
    }

    private void take(long[] bytes) {
        int releasedOn = changes.releasedOn[date];
        if (releasedOn == PoolChanges.NEVER) {
            room.take(bytes);
        } else {
            long[] released = releasedLater[releasedOn];
            if (released == null) {
                released = new long[bytes.length];
                releasedLater[releasedOn] = released;
            }
            room.take(bytes, released);
        }
        for (int r = 0; r < bytes.length; r++) {
            demand[r] += bytes[r];
        }
    }

    /** How many courses run out here that hadn't before, so many days having fitted. */
    private int newlyOut(int fittingDays) {
        long[] left = room.leftBytes();
        int newlyOut = 0;
        for (int r = 0; r < left.length; r++) {
            if (left[r] < 0 && coverDays[r] == NOT_OUT) {
                coverDays[r] = fittingDays;
                newlyOut++;
            }
        }
        runOutOn[date] += newlyOut;
        return newlyOut;
    }

    private void end() {
        long[] left = room.leftBytes();
        long lowest = 0;
        for (int r = 0; r < left.length; r++) {
            neededBytes[r] += demand[r];
            lowestBytes[r] = Math.min(lowestBytes[r], left[r]);
            lowest = Math.min(lowest, left[r]);
        }
        lackingRoomBytes[date] = lowest < 0 ? left.clone() : null;
        demandBands[date] = bands.of(demand);
        leftBands[date] = bands.of(arrivals.withArrivingAfter(date, left, scratch));
    }
}
