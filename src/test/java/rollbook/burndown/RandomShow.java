package rollbook.burndown;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import rollbook.learning.Encodings;
import rollbook.learning.Habits;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.learning.ShotDay;
import rollbook.quantity.Share;

/** Draws a show with all that a simulation knows of: the same seed gives the same show. */
record RandomShow(Show show, List<Pool> pools, Learned learned, Share fillLevel) {
    static final long FIRST_SEED = 1;
    static final long LAST_SEED = 60;

    static RandomShow of(long seed) {
        return new Draw(new SplittableRandom(seed)).show();
    }

    RandomShow with(List<Pool> otherPools) {
        return new RandomShow(show, otherPools, learned, fillLevel);
    }

    SimulatedShow played(long seed, int replicates) {
        return Simulation.run(show, pools, learned, fillLevel, seed, replicates);
    }

    private record Draw(SplittableRandom random) {
        RandomShow show() {
            List<DayToCome> days = days();
            Show show = new Show(Played.DAY_1, days, Played.date(30));
            return new RandomShow(
                    show, List.of(pool(1), pool(2), pool(3)), learned(), Share.percent(random.nextInt(60, 101)));
        }

        private List<DayToCome> days() {
            List<DayToCome> days = new ArrayList<>();
            for (String unit : List.of("main", "second")) {
                for (int number = 1; number <= 25; number++) {
                    LocalDate date = Played.date(number + (number > 12 ? 4 : 0));
                    if (random.nextInt(5) > 0) {
                        days.add(new DayToCome(
                                new DayRef(unit, number, date),
                                date,
                                random.nextInt(10) == 0 ? 0 : bytes(2000),
                                number < 3 ? bytes(1500) : 0));
                    }
                }
            }
            return days;
        }

        private Learned learned() {
            List<ShotDay> days = new ArrayList<>();
            for (int i = random.nextInt(9); i > 0; i--) {
                days.add(new ShotDay("main", -i, Played.date(-i), Played.GB + bytes(2000), bytes(2500), null));
            }
            return Learning.from(days, Habits.USUAL);
        }

        private Pool pool(long id) {
            boolean wholeRolls = random.nextInt(3) == 0;
            boolean comesBack = random.nextBoolean();
            List<Pool.Item> items = new ArrayList<>();
            for (int i = random.nextInt(8); i > 0; i--) {
                items.add(item("DRIVE-%02d".formatted(i)));
            }
            List<Pool.Arrival> arrivals = new ArrayList<>();
            for (int i = random.nextInt(3); i > 0; i--) {
                arrivals.add(arrival());
            }
            List<Pool.Release> releases = new ArrayList<>();
            for (int i = random.nextInt(4); i > 0; i--) {
                releases.add(new Pool.Release(someDay(), bytes(3000)));
            }
            return new Pool(
                    new UUID(0, id),
                    "LEG-" + id,
                    wholeRolls,
                    Played.GB + bytes(900),
                    comesBack ? random.nextInt(1, 12) : null,
                    kept(),
                    items,
                    arrivals,
                    releases,
                    random.nextInt(3) == 0 ? bytes(2000) : 0);
        }

        private Kept kept() {
            return switch (random.nextInt(3)) {
                case 0 -> Kept.WHOLE;
                case 1 -> new Kept(new Share(random.nextLong(1, 10), 10), null);
                default -> new Kept(Share.percent(60), Encodings.prior(0.6));
            };
        }

        private Pool.Item item(String code) {
            long capacity = bytes(9000);
            boolean usable = random.nextInt(4) > 0;
            return new Pool.Item(
                    code,
                    capacity,
                    random.nextInt(3) == 0 ? random.nextLong(capacity + 1) : 0,
                    usable,
                    !usable && random.nextBoolean() ? someDay() : null,
                    random.nextInt(3) == 0 ? someDay() : null);
        }

        private Pool.Arrival arrival() {
            LeadTime leadTime = random.nextBoolean()
                    ? LeadTime.certain(random.nextInt(8))
                    : LeadTime.usually(random.nextInt(6), random.nextInt(6, 12));
            return new Pool.Arrival(someDay(), leadTime, calendar(), random.nextInt(1, 4), bytes(4000));
        }

        private WorkingCalendar calendar() {
            return new WorkingCalendar(
                    random.nextBoolean() ? Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY) : Set.of(),
                    Set.of(Played.date(random.nextInt(1, 20))));
        }

        private LocalDate someDay() {
            return Played.DAY_1.plusDays(random.nextInt(-4, 35));
        }

        private long bytes(int upToGb) {
            return random.nextLong(upToGb * Played.GB);
        }
    }
}
