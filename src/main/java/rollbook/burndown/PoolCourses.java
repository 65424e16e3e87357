package rollbook.burndown;

/**
 * One pool on all courses of the show. The order within a date errs on the safe side: what arrived is there in the
 * morning, released bytes are free and hired items leave in the morning, then the days are shot.
 */
final class PoolCourses {
    final Pool pool;
    final PoolChanges changes;
    final WrittenBytes written;
    final Arrivals arrivals;

    /** By date and replicate: after the date's days are shot, before anything of it arrives. */
    final long[][] roomBytes;

    final long[] neededBytes;
    final long[] shortfallBytes;
    final long[] lostBytes;

    /** How many courses run out on each date, and by what. */
    final int[] runOutOn;

    int runOutByWaiting;
    int runOutByDemand;
    int runOutByHiredItems;

    /** How many courses have so many days fit before they run out. */
    final int[] coverDays;

    private final Room room;
    private final long[] released;

    PoolCourses(Pool pool, PoolChanges changes, WrittenBytes written, Arrivals arrivals, int replicates) {
        this.pool = pool;
        this.changes = changes;
        this.written = written;
        this.arrivals = arrivals;
        int dates = changes.dates.size();
        roomBytes = new long[dates][replicates];
        neededBytes = new long[replicates];
        shortfallBytes = new long[replicates];
        lostBytes = new long[replicates];
        runOutOn = new int[dates];
        coverDays = new int[changes.firstDay[dates] + 1];
        released = new long[dates];
        room = pool.wholeRolls()
                ? new RollsRoom(pool.rollBytes(), changes.items, changes.items.size() + arrivals.items() + dates)
                : new BytesRoom(changes.roomNowBytes);
        for (int r = 0; r < replicates; r++) {
            play(r);
        }
    }

    private void play(int replicate) {
        room.begin();
        System.arraycopy(changes.releasedBytes, 0, released, 0, released.length);
        boolean out = false;
        int cover = 0;
        long needed = 0;
        long lowest = 0;
        for (int i = 0; i < released.length; i++) {
            beginDate(i, replicate);
            if (!out && room.leftBytes() < 0) {
                out = true;
                runOutOn[i]++;
                runOutByHiredItems++;
            }
            long freeAgain = 0;
            if (i == 0 && pool.waitingBytes() > 0) {
                needed = pool.waitingBytes();
                freeAgain = room.take(needed);
                if (!out && room.leftBytes() < 0) {
                    out = true;
                    runOutOn[i]++;
                    runOutByWaiting++;
                }
            }
            for (int day = changes.firstDay[i]; day < changes.firstDay[i + 1]; day++) {
                long bytes = written.of(day, replicate);
                needed += bytes;
                freeAgain += room.take(bytes);
                if (!out && room.leftBytes() < 0) {
                    out = true;
                    runOutOn[i]++;
                    runOutByDemand++;
                }
                if (!out) {
                    cover++;
                }
            }
            long left = room.leftBytes();
            roomBytes[i][replicate] = left;
            lowest = Math.min(lowest, left);
            if (changes.releasedOn[i] != PoolChanges.NEVER) {
                released[changes.releasedOn[i]] += freeAgain;
            }
        }
        neededBytes[replicate] = needed;
        shortfallBytes[replicate] = -lowest;
        lostBytes[replicate] = room.lostBytes();
        coverDays[cover]++;
    }

    private void beginDate(int date, int replicate) {
        arrivals.addTo(room, date, replicate);
        for (PoolChanges.Item item : changes.joining[date]) {
            room.join(item);
        }
        if (released[date] > 0) {
            room.add(released[date]);
        }
        for (PoolChanges.Item item : changes.leaving[date]) {
            room.leave(item);
        }
    }
}
