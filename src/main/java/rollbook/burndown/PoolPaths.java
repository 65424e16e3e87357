package rollbook.burndown;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import rollbook.quantity.Share;

/**
 * One pool's room on every course of the show that was played: what an order has to mend.
 *
 * <p>Media that come in addition simply add what they hold to the room of all dates after their arrival.
 */
public final class PoolPaths {
    private final Pool pool;
    private final Share fillLevel;
    private final List<LocalDate> dates;
    private final long[][] roomBytes;

    /** @param roomBytes by date and replicate: after the date's days are shot, before anything arrives */
    public PoolPaths(Pool pool, Share fillLevel, List<LocalDate> dates, long[][] roomBytes) {
        this.pool = pool;
        this.fillLevel = fillLevel;
        this.dates = List.copyOf(dates);
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
        return roomBytes[0].length;
    }

    /** Room on that date at its lowest, below zero by what lacks: its days are shot, nothing of it has arrived. */
    public long roomBytes(int dateIndex, int replicate) {
        return roomBytes[dateIndex][replicate];
    }

    /** What lacks on that date; zero if the pool has enough. */
    public long shortfallBytes(int dateIndex, int replicate) {
        return Math.max(0, -roomBytes[dateIndex][replicate]);
    }

    /** How much of a shortfall a new item mends: what it may hold, in whole rolls if they stay whole. */
    public long usableBytesOfItem(long itemCapacityBytes) {
        long holds = fillLevel.floorOf(itemCapacityBytes);
        return pool.wholeRolls() ? holds / pool.rollBytes() * pool.rollBytes() : holds;
    }
}
