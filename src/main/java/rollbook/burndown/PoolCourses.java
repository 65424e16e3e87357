package rollbook.burndown;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * One pool on all courses of the show, date by date. The order within a date errs on the safe side: what arrived is
 * there in the morning, released bytes are free and hired items leave in the morning, then the days are shot.
 */
final class PoolCourses {
    final Pool pool;
    final PoolChanges changes;

    /** By date and replicate: after the date's days are shot, before anything of it arrives. */
    final long[][] roomBytes;

    /** By date: what is written on it, and what is left at its end with what arrives before the next. */
    final Band[] demandBands;

    final Band[] leftBands;

    /** By replicate. */
    final long[] neededBytes;

    final long[] lowestBytes;
    final long[] lostBytes;
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
    private final long @Nullable [][] released;

    private final boolean[] out;
    private final long[] demand;
    private final long[] scratch;

    PoolCourses(Pool pool, PoolChanges changes, WrittenBytes written, Arrivals arrivals, int replicates) {
        this.pool = pool;
        this.changes = changes;
        this.written = written;
        this.arrivals = arrivals;
        int dates = changes.dates.size();
        roomBytes = new long[dates][];
        demandBands = new Band[dates];
        leftBands = new Band[dates];
        neededBytes = new long[replicates];
        lowestBytes = new long[replicates];
        coverDays = new int[replicates];
        runOutOn = new int[dates];
        released = new long[dates][];
        out = new boolean[replicates];
        demand = new long[replicates];
        scratch = new long[replicates];
        bands = new Bands(replicates);
        room = pool.wholeRolls()
                ? new RollsRoom(pool.rollBytes(), changes.items, arrivals.items(), replicates)
                : new BytesRoom(changes.roomNowBytes, replicates);
        for (int i = 0; i < dates; i++) {
            play(i);
        }
        lostBytes = room.lostBytes();
    }

    private void play(int date) {
        begin(date);
        runOutByHiredItems += newlyOut(date);
        Arrays.fill(demand, 0);
        if (date == 0 && pool.waitingBytes() > 0) {
            Arrays.fill(scratch, pool.waitingBytes());
            take(scratch, date);
            runOutByWaiting += newlyOut(date);
        }
        for (int day = changes.firstDay[date]; day < changes.firstDay[date + 1]; day++) {
            take(written.of(day), date);
            runOutByDemand += newlyOut(date);
            for (int r = 0; r < out.length; r++) {
                coverDays[r] += out[r] ? 0 : 1;
            }
        }
        end(date);
    }

    private void begin(int date) {
        arrivals.addTo(room, date);
        for (PoolChanges.Item item : changes.joining[date]) {
            room.join(item);
        }
        if (changes.releasedBytes[date] > 0) {
            Arrays.fill(scratch, changes.releasedBytes[date]);
            room.release(scratch);
        }
        if (released[date] != null) {
            room.release(released[date]);
            released[date] = null;
        }
        for (PoolChanges.Item item : changes.leaving[date]) {
            room.leave(item);
        }
    }

    private void take(long[] bytes, int date) {
        int releasedOn = changes.releasedOn[date];
        if (releasedOn == PoolChanges.NEVER) {
            room.take(bytes);
        } else {
            if (released[releasedOn] == null) {
                released[releasedOn] = new long[bytes.length];
            }
            room.take(bytes, released[releasedOn]);
        }
        for (int r = 0; r < bytes.length; r++) {
            demand[r] += bytes[r];
        }
    }

    /** How many courses run out here that hadn't before. */
    private int newlyOut(int date) {
        long[] left = room.leftBytes();
        int newlyOut = 0;
        for (int r = 0; r < left.length; r++) {
            if (left[r] < 0 && !out[r]) {
                out[r] = true;
                newlyOut++;
            }
        }
        runOutOn[date] += newlyOut;
        return newlyOut;
    }

    private void end(int date) {
        long[] left = room.leftBytes().clone();
        roomBytes[date] = left;
        for (int r = 0; r < left.length; r++) {
            neededBytes[r] += demand[r];
            lowestBytes[r] = Math.min(lowestBytes[r], left[r]);
        }
        demandBands[date] = bands.of(demand);
        leftBands[date] = bands.of(arrivals.withArrivingAfter(date, left, scratch));
    }
}
