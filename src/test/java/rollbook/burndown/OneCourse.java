package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/** A pool on one course, walked plainly through every day of the calendar: what the fast walk has to agree with. */
final class OneCourse {
    private final Show show;
    private final Pool pool;
    private final DayFactors factors;
    private final Share fillLevel;
    private final Map<LocalDate, Long> returning = new TreeMap<>();

    OneCourse(Show show, Pool pool, DayFactors factors, Share fillLevel) {
        this.show = show;
        this.pool = pool;
        this.factors = factors;
        this.fillLevel = fillLevel;
    }

    void assertEquals(PoolOutlook outlook, long seed) {
        long left = pool.items().stream()
                .filter(Pool.Item::usable)
                .mapToLong(item -> room(item, item.usedBytes()))
                .sum();
        addReleases();
        LocalDate date = show.today();
        for (PoolOutlook.Point point : outlook.points()) {
            for (; date.isBefore(point.date()); date = date.plusDays(1)) {
                left += changesOn(date);
            }
            left += changesOn(date);
            date = date.plusDays(1);
            assertThat(point.leftBytes())
                    .as("seed %d, pool %s, %s", seed, pool.name(), point.date())
                    .isEqualTo(Band.certain(left));
        }
        assertThat(date).isEqualTo(show.endOfShow().plusDays(1));
    }

    /** In the order of the day, which doesn't matter to what is left in the evening. */
    private long changesOn(LocalDate date) {
        return backOn(date) + returning.getOrDefault(date, 0L) - leavingOn(date) - written(date) + arrivedOn(date);
    }

    private long holds(Pool.Item item) {
        return fillLevel.floorOf(item.capacityBytes());
    }

    private long room(Pool.Item item, long usedBytes) {
        return Math.max(0, holds(item) - usedBytes);
    }

    private void addReleases() {
        if (!pool.comesBack()) {
            return;
        }
        long onItems = pool.items().stream()
                .filter(Pool.Item::usable)
                .mapToLong(item -> Math.min(holds(item), item.usedBytes()))
                .sum();
        for (Pool.Release release : pool.releases().stream()
                .sorted(Comparator.comparing(Pool.Release::date))
                .toList()) {
            long bytes = Math.min(onItems, release.bytes());
            onItems -= bytes;
            returning.merge(release.date(), bytes, Long::sum);
        }
    }

    private long arrivedOn(LocalDate date) {
        return pool.arrivals().stream()
                .filter(arrival -> notBeforeToday(arrival.calendar()
                                .plus(arrival.orderedOn(), arrival.leadTime().days(1)))
                        .equals(date))
                .mapToLong(arrival -> arrival.items() * fillLevel.floorOf(arrival.itemCapacityBytes()))
                .sum();
    }

    private long backOn(LocalDate date) {
        return pool.items().stream()
                .filter(item -> !item.usable() && date.equals(item.backOn()) && !leavesBefore(item))
                .mapToLong(item -> room(item, pool.comesBack() ? 0 : item.usedBytes()))
                .sum();
    }

    private long leavingOn(LocalDate date) {
        return pool.items().stream()
                .filter(item -> item.dueBackOn() != null
                        && notBeforeToday(item.dueBackOn()).equals(date))
                .filter(item -> item.usable() || isBack(item.backOn(), date) && !leavesBefore(item))
                .mapToLong(item -> {
                    long used = !item.usable() && pool.comesBack() ? 0 : item.usedBytes();
                    return room(item, used) + used;
                })
                .sum();
    }

    private boolean isBack(@Nullable LocalDate backOn, LocalDate date) {
        return backOn != null && !backOn.isBefore(show.today()) && !backOn.isAfter(date);
    }

    private boolean leavesBefore(Pool.Item item) {
        return item.dueBackOn() != null && !item.backOn().isBefore(item.dueBackOn());
    }

    private long written(LocalDate date) {
        long written = date.equals(show.today()) ? pool.waitingBytes() : 0;
        for (DayToCome day : show.days()) {
            if (day.countedOn().equals(date)) {
                written += kept(day);
            }
        }
        if (pool.returnAfterDays() != null) {
            returning.merge(date.plusDays(pool.returnAfterDays()), written, Long::sum);
        }
        return written;
    }

    private long kept(DayToCome day) {
        double factor = factors.factors(day.day().unit(), day.day().number())[0];
        long recorded = Math.max(0, (long) Math.ceil(day.plannedBytes() * factor) - day.recordedBytes());
        Share usual = pool.kept().usual();
        return BigDecimal.valueOf(recorded)
                .multiply(BigDecimal.valueOf(usual.numerator()))
                .divide(BigDecimal.valueOf(usual.denominator()), 0, RoundingMode.CEILING)
                .longValueExact();
    }

    private LocalDate notBeforeToday(LocalDate date) {
        return date.isBefore(show.today()) ? show.today() : date;
    }
}
