package rollbook.burndown;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Share;

/** Makes shows and pools for tests. Days follow each other from Monday, 1 June 2026; bytes are given in GB. */
final class Played {
    static final long GB = 1_000_000_000L;
    static final LocalDate DAY_1 = LocalDate.of(2026, 6, 1);
    static final WorkingCalendar EVERY_DAY = new WorkingCalendar(Set.of(), Set.of());
    static final WorkingCalendar WEEKDAYS = new WorkingCalendar(Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY), Set.of());
    static final UUID POOL = new UUID(0, 1);

    /** Every day is as planned, on all of three courses. */
    static final DayFactors AS_PLANNED = (unit, day) -> new double[] {1, 1, 1};

    private Played() {}

    static LocalDate date(int dayNumber) {
        return DAY_1.plusDays(dayNumber - 1);
    }

    static DayToCome day(int number, long plannedGb) {
        return new DayToCome(new DayRef("main", number, date(number)), date(number), plannedGb * GB, 0);
    }

    static List<DayToCome> days(int first, int last, long plannedGb) {
        List<DayToCome> days = new ArrayList<>();
        for (int number = first; number <= last; number++) {
            days.add(day(number, plannedGb));
        }
        return days;
    }

    /** A show that ends with the last of its days. */
    static Show show(int todayIsDay, List<DayToCome> days) {
        return new Show(
                date(todayIsDay),
                days,
                days.stream()
                        .map(DayToCome::countedOn)
                        .max(LocalDate::compareTo)
                        .orElse(date(todayIsDay)));
    }

    static Pool.Item item(long capacityGb, long usedGb) {
        return new Pool.Item("DRIVE-01", capacityGb * GB, usedGb * GB, true, null, null);
    }

    static Pool.Arrival arrival(int onDay, long items, long itemGb) {
        return new Pool.Arrival(date(onDay), LeadTime.certain(0), EVERY_DAY, items, itemGb * GB);
    }

    static Pool kept(Pool.Item... items) {
        return pool(null, Kept.WHOLE, List.of(items));
    }

    static Pool pool(@Nullable Integer returnAfterDays, Kept kept, List<Pool.Item> items, Pool.Arrival... arrivals) {
        return new Pool(POOL, "SHUTTLE", false, 0, returnAfterDays, kept, items, Arrays.asList(arrivals), List.of(), 0);
    }

    /** Rolls of that size that have to lie on one item each. */
    static Pool wholeRolls(long rollGb, List<Pool.Item> items, Pool.Arrival... arrivals) {
        return new Pool(
                POOL, "TAPE", true, rollGb * GB, null, Kept.WHOLE, items, Arrays.asList(arrivals), List.of(), 0);
    }

    static PoolOutlook asPlanned(Show show, Pool pool) {
        return asPlanned(show, Share.WHOLE, pool);
    }

    static PoolOutlook asPlanned(Show show, Share fillLevel, Pool pool) {
        return only(Simulation.run(show, List.of(pool), AS_PLANNED, fillLevel, 1, 3));
    }

    static PoolOutlook only(SimulatedShow simulated) {
        return simulated.outlook().pools().get(0);
    }
}
