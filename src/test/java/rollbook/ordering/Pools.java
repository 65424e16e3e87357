package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Kept;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.burndown.PoolPaths;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

/** Makes pools and offers for tests. Day 0 is a Monday; suppliers work every day, and the evening of a day is in time. */
final class Pools {
    static final long GB = 1_000_000_000L;
    static final long TB = 1000 * GB;
    static final LocalDate DAY_0 = LocalDate.of(2026, 6, 1);
    static final UUID POOL = new UUID(0, 1);
    static final WorkingCalendar EVERY_DAY = new WorkingCalendar(Set.of(), Set.of());
    static final Currency EUR = Currency.getInstance("EUR");

    private Pools() {}

    static LocalDate day(int number) {
        return DAY_0.plusDays(number);
    }

    static Instant eveningOf(LocalDate day) {
        return day.atTime(20, 0).toInstant(ZoneOffset.UTC);
    }

    static Supplier supplier(String name, LeadTime leadTime, long deliveryMinorUnits) {
        return new Supplier(
                name,
                leadTime,
                new SupplierDays(EVERY_DAY, LocalTime.of(22, 0), ZoneOffset.UTC, 0),
                deliveryMinorUnits);
    }

    static Offer offer(UUID pool, long itemTb, int packSize, long priceMinorUnits, @Nullable Hire hire, Supplier from) {
        return new Offer(
                new UUID(1, itemTb), itemTb + " TB", pool, itemTb * TB, packSize, priceMinorUnits, EUR, hire, from);
    }

    static Pool pool(UUID id) {
        return new Pool(id, "SHUTTLE", false, 0, null, Kept.WHOLE, List.of(), List.of(), List.of(), 0);
    }

    /** From day 0 on, a date a day; room in GB by date and replicate. */
    static PoolPaths paths(UUID pool, long[][] roomGb) {
        long[][] room = new long[roomGb.length][];
        for (int date = 0; date < room.length; date++) {
            room[date] = new long[roomGb[date].length];
            for (int replicate = 0; replicate < room[date].length; replicate++) {
                room[date][replicate] = roomGb[date][replicate] * GB;
            }
        }
        return new PoolPaths(
                pool(pool),
                Share.WHOLE,
                IntStream.range(0, room.length).mapToObj(Pools::day).toList(),
                room[0].length,
                room);
    }

    /** Courses of a show whose days all bring more or less together; here and there something comes back or arrives. */
    static long[][] drawnRoomGb(SplittableRandom random, int replicates) {
        int dates = random.nextInt(8, 40);
        long plannedGb = random.nextLong(1000, 8000);
        long roomGb = plannedGb * random.nextLong(0, 20);
        double spread = random.nextDouble() * 0.5;
        double returning = random.nextDouble() < 0.3 ? 0.5 : 0;
        int arrival = random.nextInt(dates * 3);
        long[][] room = new long[dates][replicates];
        for (int replicate = 0; replicate < replicates; replicate++) {
            double level = Math.exp(spread * (random.nextDouble() + random.nextDouble() - 1));
            long left = roomGb;
            for (int date = 0; date < dates; date++) {
                left -= date == 0 ? 0 : (long) (plannedGb * level * (0.5 + random.nextDouble()));
                room[date][replicate] = left;
                left += date > 4 ? (long) (returning * plannedGb * level) : 0;
                left += date == arrival ? 5 * plannedGb : 0;
            }
        }
        return room;
    }

    static LeadTime drawnLeadTime(SplittableRandom random) {
        int median = random.nextInt(0, 6);
        return random.nextBoolean()
                ? LeadTime.certain(median)
                : LeadTime.usually(median, median + random.nextInt(1, 4));
    }
}
