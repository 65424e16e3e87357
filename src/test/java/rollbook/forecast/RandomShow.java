package rollbook.forecast;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

/** Draws a show with all that a forecast knows of: the same seed gives the same show. */
final class RandomShow {
    static final long FIRST_SEED = 1;
    static final long LAST_SEED = 400;

    private final SplittableRandom random;
    private final LocalDate today;

    private RandomShow(long seed) {
        random = new SplittableRandom(seed);
        today = Shoot.DAY_1.plusDays(random.nextInt(20));
    }

    static ForecastInput of(long seed) {
        RandomShow show = new RandomShow(seed);
        return new ForecastInput(
                show.today,
                show.days(),
                List.of(show.leg(1), show.leg(2)),
                Share.percent(show.random.nextInt(60, 101)),
                show.calendar());
    }

    private List<ForecastDay> days() {
        List<ForecastDay> days = new ArrayList<>();
        for (String unit : List.of("main", "second")) {
            LocalDate date = Shoot.DAY_1;
            for (int number = 1; number <= random.nextInt(15, 30); number++) {
                days.add(day(unit, number, date));
                date = date.plusDays(1 + (random.nextInt(4) == 0 ? 2 : 0));
            }
        }
        return days;
    }

    private ForecastDay day(String unit, int number, LocalDate date) {
        long planned = bytes(2000);
        if (random.nextInt(10) == 0) {
            return new ForecastDay(unit, number, date, ForecastDay.State.CANCELLED, planned, 0);
        }
        if (date.isBefore(today) && random.nextInt(10) > 0) {
            return new ForecastDay(unit, number, date, ForecastDay.State.WRAPPED, planned, bytes(3000));
        }
        return date.isAfter(today)
                ? new ForecastDay(unit, number, date, ForecastDay.State.PLANNED, planned, 0)
                : new ForecastDay(unit, number, date, ForecastDay.State.SHOOTING, planned, bytes(2000));
    }

    private ForecastLeg leg(long id) {
        boolean comesBack = random.nextBoolean();
        List<ForecastLeg.Item> items = new ArrayList<>();
        for (int i = random.nextInt(8); i > 0; i--) {
            items.add(item("DRIVE-%02d".formatted(i)));
        }
        List<ForecastLeg.Arrival> arrivals = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            arrivals.add(new ForecastLeg.Arrival(someDay(), random.nextInt(1, 4), bytes(4000)));
        }
        List<ForecastLeg.Release> releases = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            releases.add(new ForecastLeg.Release(someDay(), bytes(3000)));
        }
        return new ForecastLeg(
                new UUID(0, id),
                "LEG-" + id,
                comesBack ? random.nextInt(1, 12) : null,
                random.nextBoolean() ? Share.WHOLE : new Share(random.nextLong(1, 10), 10),
                null,
                items,
                arrivals,
                releases,
                random.nextInt(3) == 0 ? bytes(2000) : 0,
                supply());
    }

    private ForecastLeg.Item item(String code) {
        long capacity = bytes(9000);
        boolean usable = random.nextInt(4) > 0;
        return new ForecastLeg.Item(
                code,
                capacity,
                random.nextInt(3) == 0 ? random.nextLong(capacity + 1) : 0,
                usable,
                !usable && random.nextBoolean() ? someDay() : null,
                random.nextInt(3) == 0 ? someDay() : null);
    }

    private @Nullable Supply supply() {
        return random.nextInt(6) == 0
                ? null
                : new Supply(
                        bytes(8000) + Shoot.GB,
                        random.nextInt(1, 4),
                        random.nextInt(6),
                        random.nextInt(3),
                        random.nextLong(100_000),
                        Shoot.EURO);
    }

    private WorkingCalendar calendar() {
        Set<LocalDate> holidays = new HashSet<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            holidays.add(someDay());
        }
        return new WorkingCalendar(
                random.nextBoolean() ? Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY) : Set.of(DayOfWeek.FRIDAY),
                holidays);
    }

    private LocalDate someDay() {
        return today.plusDays(random.nextInt(-4, 30));
    }

    private long bytes(int upToGb) {
        return random.nextLong(upToGb * Shoot.GB);
    }
}
