package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rollbook.quantity.Share;

/** A pool of whole rolls on one course, roll by roll onto items that are objects. */
final class OneCourseOfRolls {
    private static final class Medium {
        private long room;
        private long content;
        private boolean closed;
    }

    private final Show show;
    private final Pool pool;
    private final DayFactors factors;
    private final Share fillLevel;
    private final List<Medium> media = new ArrayList<>();
    private final Map<Pool.Item, Medium> byItem = new HashMap<>();
    private final Map<LocalDate, Long> returning = new HashMap<>();
    private long free;
    private long lackingRolls;
    private long lost;

    OneCourseOfRolls(Show show, Pool pool, DayFactors factors, Share fillLevel) {
        this.show = show;
        this.pool = pool;
        this.factors = factors;
        this.fillLevel = fillLevel;
    }

    void assertEquals(PoolOutlook outlook, long seed) {
        pool.items().stream().filter(Pool.Item::usable).forEach(item -> join(item, item.usedBytes()));
        LocalDate date = show.today();
        for (PoolOutlook.Point point : outlook.points()) {
            for (; date.isBefore(point.date()); date = date.plusDays(1)) {
                play(date);
            }
            play(date);
            assertThat(point.leftBytes())
                    .as("seed %d, %s, %s", seed, pool.id(), date)
                    .isEqualTo(Band.certain(left() + arriving(date)));
            date = date.plusDays(1);
        }
        assertThat(outlook.lostBytes()).as("seed %d", seed).isEqualTo(Band.certain(lost));
    }

    private void play(LocalDate date) {
        for (Pool.Arrival arrival : pool.arrivals()) {
            if (comesOn(arrival).equals(date.minusDays(1))) {
                for (long i = 0; i < arrival.items(); i++) {
                    add(new Medium(), fillLevel.floorOf(arrival.itemCapacityBytes()));
                }
            }
        }
        for (Pool.Item item : pool.items()) {
            LocalDate leaves = item.dueBackOn();
            if (!item.usable() && date.equals(item.backOn()) && (leaves == null || date.isBefore(leaves))) {
                join(item, pool.comesBack() ? 0 : item.usedBytes());
            }
        }
        free += returning.getOrDefault(date, 0L);
        again();
        for (Pool.Item item : pool.items()) {
            LocalDate leaves = item.dueBackOn();
            if (leaves != null
                    && byItem.containsKey(item)
                    && notBeforeToday(leaves).equals(date)) {
                leave(byItem.get(item));
            }
        }
        long lostBefore = lost;
        long written = date.equals(show.today()) ? pool.waitingBytes() : 0;
        write(written);
        for (DayToCome day : show.days()) {
            if (day.countedOn().equals(date)) {
                long bytes = bytes(day);
                write(bytes);
                written += bytes;
            }
        }
        if (pool.returnAfterDays() != null) {
            returning.put(date.plusDays(pool.returnAfterDays()), written + lost - lostBefore);
        }
    }

    private void join(Pool.Item item, long content) {
        Medium medium = new Medium();
        medium.content = content;
        byItem.put(item, medium);
        add(medium, Math.max(0, fillLevel.floorOf(item.capacityBytes()) - content));
    }

    private void add(Medium medium, long room) {
        medium.room = room;
        media.add(medium);
        again();
    }

    private void again() {
        long rolls = lackingRolls;
        lackingRolls = 0;
        for (long i = 0; i < rolls; i++) {
            writeRoll(pool.rollBytes());
        }
    }

    private void leave(Medium medium) {
        medium.room = 0;
        write(medium.content);
    }

    private void write(long bytes) {
        for (long rest = bytes; rest > 0; rest -= pool.rollBytes()) {
            writeRoll(Math.min(rest, pool.rollBytes()));
        }
    }

    private void writeRoll(long bytes) {
        if (free >= bytes) {
            free -= bytes;
            return;
        }
        for (Medium medium : media) {
            if (!medium.closed && medium.room >= bytes) {
                medium.room -= bytes;
                medium.content += bytes;
                return;
            }
            lost += medium.closed ? 0 : medium.room;
            medium.closed = true;
        }
        lackingRolls++;
    }

    private long left() {
        return free
                + media.stream()
                        .filter(medium -> !medium.closed)
                        .mapToLong(medium -> medium.room)
                        .sum()
                - lackingRolls * pool.rollBytes();
    }

    private long arriving(LocalDate date) {
        return pool.arrivals().stream()
                .filter(arrival -> comesOn(arrival).equals(date))
                .mapToLong(arrival -> arrival.items() * fillLevel.floorOf(arrival.itemCapacityBytes()))
                .sum();
    }

    private LocalDate comesOn(Pool.Arrival arrival) {
        return notBeforeToday(
                arrival.calendar().plus(arrival.orderedOn(), arrival.leadTime().days(1)));
    }

    private long bytes(DayToCome day) {
        double factor = factors.factors(day.day().unit(), day.day().number())[0];
        long recorded = Math.max(0, (long) Math.ceil(day.plannedBytes() * factor) - day.recordedBytes());
        return pool.kept().usual().ceilOf(recorded);
    }

    private LocalDate notBeforeToday(LocalDate date) {
        return date.isBefore(show.today()) ? show.today() : date;
    }
}
