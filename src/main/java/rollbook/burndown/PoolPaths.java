package rollbook.burndown;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/**
 * What a pool lacks on every course of the show that was played, so what an order has to mend.
 *
 * <p>Media that come in addition simply add what they hold to the room of all dates after their arrival.
 */
public final class PoolPaths {
    private final Pool pool;
    private final Share fillLevel;
    private final List<LocalDate> dates;
    private final int replicates;
    private final long[] @Nullable [] roomBytes;

    /**
     * @param roomBytes by date and replicate: after the date's days are shot, before anything of it arrives; null for a
     *     date on which nothing lacks on any course
     */
    public PoolPaths(Pool pool, Share fillLevel, List<LocalDate> dates, int replicates, long[] @Nullable [] roomBytes) {
        this.pool = pool;
        this.fillLevel = fillLevel;
        this.dates = List.copyOf(dates);
        this.replicates = replicates;
        this.roomBytes = roomBytes;
    }

    public UUID poolId() {
        return pool.id();
    }

    public String poolName() {
        return pool.name();
    }

    /** From today to the end of the show, ascending: those on which something is shot or changes. */
    public List<LocalDate> dates() {
        return dates;
    }

    public int replicates() {
        return replicates;
    }

    /** What lacks on that date, when its days are shot and nothing of it has arrived; zero if the pool has enough. */
    public long shortfallBytes(int dateIndex, int replicate) {
        long[] room = roomBytes[dateIndex];
        return room == null ? 0 : Math.max(0, -room[replicate]);
    }

    /** How much of a shortfall a new item mends: what it may hold, in whole rolls if they stay whole. */
    public long usableBytesOfItem(long itemCapacityBytes) {
        long holds = fillLevel.floorOf(itemCapacityBytes);
        return pool.wholeRolls() ? holds / pool.rollBytes() * pool.rollBytes() : holds;
    }
}
