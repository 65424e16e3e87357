package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import rollbook.quantity.ExactDivision;

/** What must hold for any show; shows are drawn from seeds. */
class SimulationPropertiesTests {
    private static final int REPLICATES = 25;
    private static final int COURSES = 5;
    private static final long SEED = 7;

    @Test
    void theDrawnShowsReachEveryCauseAndEveryEvent() {
        List<PoolOutlook> pools = LongStream.rangeClosed(RandomShow.FIRST_SEED, RandomShow.LAST_SEED)
                .mapToObj(seed -> RandomShow.of(seed).played(SEED, REPLICATES))
                .flatMap(played -> played.outlook().pools().stream())
                .toList();

        assertThat(pools).anyMatch(pool -> pool.causes().waiting() > 0);
        assertThat(pools).anyMatch(pool -> pool.causes().hiredItemLeaves() > 0);
        assertThat(pools)
                .anyMatch(pool -> pool.causes().demand() > 0.1 && pool.causes().demand() < 0.9);
        assertThat(pools).anyMatch(pool -> pool.lostBytes().p10() > 0);
        assertThat(pools).anyMatch(pool -> pool.overdueReturnBytes() > 0);
        assertThat(pools).anyMatch(pool -> pool.overdueArrivalItems() > 0);
        assertThat(pools)
                .anyMatch(pool -> pool.points().stream().anyMatch(point -> point.leavingBytes() > 0)
                        && pool.points().stream()
                                .anyMatch(point -> point.returningBytes().p50() > 0));
    }

    @Test
    void theSameSeedGivesTheSameAnswerAndAnotherGivesAnother() {
        List<Outlook> again = new ArrayList<>();
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            Outlook outlook = RandomShow.of(seed).played(SEED, REPLICATES).outlook();
            assertThat(RandomShow.of(seed).played(SEED, REPLICATES).outlook())
                    .as("seed %d", seed)
                    .isEqualTo(outlook);
            assertThat(RandomShow.of(seed)
                            .played(SEED + 1, REPLICATES)
                            .outlook()
                            .pools())
                    .as("seed %d", seed)
                    .isNotEqualTo(outlook.pools());
            again.add(outlook);
        }
        assertThat(again).doesNotHaveDuplicates();
    }

    @Test
    void onePoolMoreChangesNoOther() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            RandomShow fewer = show.with(List.of(show.pools().get(2)));

            assertThat(fewer.played(SEED, REPLICATES).outlook().pools().get(0))
                    .as("seed %d", seed)
                    .isEqualTo(show.played(SEED, REPLICATES).outlook().pools().get(2));
        }
    }

    @Test
    void moreStockNeverRaisesTheChanceOfHavingRunOutOnAnyDate() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            SplittableRandom random = new SplittableRandom(seed);
            RandomShow richer = show.with(show.pools().stream()
                    .map(pool -> withItems(pool, richer(pool, random)))
                    .toList());
            List<PoolOutlook> before = show.played(SEED, REPLICATES).outlook().pools();
            List<PoolOutlook> after = richer.played(SEED, REPLICATES).outlook().pools();
            for (int i = 0; i < before.size(); i++) {
                assertThat(chances(after.get(i)))
                        .as("seed %d, pool %d", seed, i)
                        .zipSatisfy(
                                chances(before.get(i)),
                                (rich, poor) -> assertThat(rich).isLessThanOrEqualTo(poor));
            }
        }
    }

    @Test
    void bytesAndCapacitiesTwiceAsLargeLeaveDaysAndChancesAsTheyAre() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            RandomShow twice = new RandomShow(
                    new Show(
                            show.show().today(),
                            show.show().days().stream()
                                    .map(day -> new DayToCome(
                                            day.day(),
                                            day.countedOn(),
                                            2 * day.plannedBytes(),
                                            2 * day.recordedBytes()))
                                    .toList(),
                            show.show().endOfShow()),
                    show.pools().stream().map(SimulationPropertiesTests::twice).toList(),
                    show.learned(),
                    show.fillLevel());
            List<PoolOutlook> before = show.played(SEED, REPLICATES).outlook().pools();
            List<PoolOutlook> after = twice.played(SEED, REPLICATES).outlook().pools();
            for (int i = 0; i < before.size(); i++) {
                assertThat(chances(after.get(i))).as("seed %d", seed).isEqualTo(chances(before.get(i)));
                assertThat(after.get(i).coverDays())
                        .as("seed %d", seed)
                        .isEqualTo(before.get(i).coverDays());
                assertThat(after.get(i).causes())
                        .as("seed %d", seed)
                        .isEqualTo(before.get(i).causes());
            }
        }
    }

    @Test
    void daysWithNothingPlannedNeedNothing() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            Show idle = new Show(
                    show.show().today(),
                    show.show().days().stream()
                            .map(day -> new DayToCome(day.day(), day.countedOn(), 0, 0))
                            .toList(),
                    show.show().endOfShow());
            for (PoolOutlook pool : new RandomShow(idle, show.pools(), show.learned(), show.fillLevel())
                    .played(SEED, REPLICATES)
                    .outlook()
                    .pools()) {
                assertThat(pool.neededBytes()).as("seed %d", seed).isEqualTo(Band.certain(pool.waitingBytes()));
                assertThat(pool.causes().demand()).as("seed %d", seed).isZero();
            }
        }
    }

    /** By another way than from date to date with all courses together: each course alone, day by day. */
    @Test
    void bytesAreConservedOnEveryCourse() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            List<Pool> pools =
                    show.pools().stream().map(SimulationPropertiesTests::split).toList();
            for (int course = 0; course < COURSES; course++) {
                DayFactors factors = alone(seed, course);
                List<PoolOutlook> outlooks = outlooks(show, pools, factors, 1);
                for (int i = 0; i < pools.size(); i++) {
                    new OneCourse(show.show(), pools.get(i), factors, show.fillLevel())
                            .assertEquals(outlooks.get(i), seed);
                }
            }
        }
    }

    @Test
    void wholeRollsLieWhereTheyDoWhenTheyArePutThereOneByOne() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            List<Pool> pools =
                    show.pools().stream().map(SimulationPropertiesTests::whole).toList();
            for (int course = 0; course < COURSES; course++) {
                DayFactors factors = alone(seed, course);
                List<PoolOutlook> outlooks = outlooks(show, pools, factors, 1);
                for (int i = 0; i < pools.size(); i++) {
                    new OneCourseOfRolls(show.show(), pools.get(i), factors, show.fillLevel())
                            .assertEquals(outlooks.get(i), seed);
                }
            }
        }
    }

    @Test
    void coursesThatArePlayedTogetherGoAsTheyDoAlone() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            long showSeed = seed;
            RandomShow show = RandomShow.of(seed);
            List<Pool> pools = List.of(
                    split(show.pools().get(0)),
                    whole(show.pools().get(1)),
                    whole(show.pools().get(2)));
            List<PoolOutlook> together = outlooks(show, pools, together(seed), COURSES);
            List<List<PoolOutlook>> alone = IntStream.range(0, COURSES)
                    .mapToObj(course -> outlooks(show, pools, alone(showSeed, course), 1))
                    .toList();
            for (int i = 0; i < pools.size(); i++) {
                for (int point = 0; point < together.get(i).points().size(); point++) {
                    int pool = i;
                    int date = point;
                    long[] left = alone.stream()
                            .mapToLong(outlooks -> outlooks.get(pool)
                                    .points()
                                    .get(date)
                                    .leftBytes()
                                    .p50())
                            .toArray();
                    assertThat(together.get(i).points().get(point).leftBytes())
                            .as("seed %d", seed)
                            .isEqualTo(new Bands(COURSES).of(left));
                }
            }
        }
    }

    private static List<PoolOutlook> outlooks(RandomShow show, List<Pool> pools, DayFactors factors, int replicates) {
        return Simulation.run(show.show(), pools, factors, show.fillLevel(), SEED, replicates)
                .outlook()
                .pools();
    }

    private static DayFactors together(long seed) {
        return (unit, day) -> new SplittableRandom(1000 * seed + 10L * day + unit.length())
                .doubles(COURSES, 0, 3)
                .toArray();
    }

    private static DayFactors alone(long seed, int course) {
        return (unit, day) -> new double[] {together(seed).factors(unit, day)[course]};
    }

    @Test
    void whatWholeRollsTakeAndLoseAndLeaveIsWhatWasThere() {
        int lasting = 0;
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            for (Pool drawn : show.pools()) {
                Pool pool = keptRolls(drawn);
                SimulatedShow played = show.with(List.of(pool)).played(SEED, 1);
                PoolOutlook outlook = Played.only(played);
                if (outlook.lastsForSure()) {
                    lasting++;
                    assertThat(last(outlook).leftBytes().p50()
                                    + outlook.neededBytes().p50()
                                    + outlook.lostBytes().p50())
                            .as("seed %d", seed)
                            .isEqualTo(outlook.roomNowBytes());
                }
            }
        }
        assertThat(lasting).isGreaterThan(20);
    }

    @Test
    void asManyItemsAsTheShortfallSaysAreEnoughForRollsThatStayWhole() {
        int mended = 0;
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            for (Pool drawn : show.pools()) {
                Pool pool = keptRolls(drawn);
                SimulatedShow played = show.with(List.of(pool)).played(SEED, 1);
                long shortfall = Played.only(played).shortfallBytes().p50();
                long itemBytes = 5 * drawn.rollBytes();
                long usable = played.paths().get(0).usableBytesOfItem(itemBytes);
                if (shortfall > 0 && usable > 0) {
                    mended++;
                    List<Pool.Item> items = new ArrayList<>(pool.items());
                    for (long i = ExactDivision.ceil(shortfall, usable); i > 0; i--) {
                        items.add(new Pool.Item("NEW", itemBytes, 0, true, null, null));
                    }
                    assertThat(Played.only(show.with(List.of(withItems(pool, items)))
                                            .played(SEED, 1))
                                    .lastsForSure())
                            .as("seed %d", seed)
                            .isTrue();
                }
            }
        }
        assertThat(mended).isGreaterThan(20);
    }

    @Test
    void wholeRollsNeverLastLongerThanSplitOnes() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            RandomShow show = RandomShow.of(seed);
            List<PoolOutlook> whole = playedAs(show, SimulationPropertiesTests::keptRolls)
                    .outlook()
                    .pools();
            List<PoolOutlook> split =
                    playedAs(show, pool -> split(keptRolls(pool))).outlook().pools();
            for (int i = 0; i < whole.size(); i++) {
                assertThat(chances(whole.get(i)))
                        .as("seed %d", seed)
                        .zipSatisfy(
                                chances(split.get(i)),
                                (rolls, bytes) -> assertThat(rolls).isGreaterThanOrEqualTo(bytes));
            }
        }
    }

    private static SimulatedShow playedAs(RandomShow show, UnaryOperator<Pool> change) {
        return show.with(show.pools().stream().map(change).toList()).played(SEED, REPLICATES);
    }

    private static List<Double> chances(PoolOutlook pool) {
        return pool.points().stream()
                .map(PoolOutlook.Point::chanceOfHavingRunOut)
                .toList();
    }

    private static PoolOutlook.Point last(PoolOutlook pool) {
        return pool.points().get(pool.points().size() - 1);
    }

    /** Larger items, and one more. */
    private static List<Pool.Item> richer(Pool pool, SplittableRandom random) {
        List<Pool.Item> items = new ArrayList<>();
        for (Pool.Item item : pool.items()) {
            items.add(new Pool.Item(
                    item.code(),
                    item.capacityBytes() + random.nextLong(2000) * Played.GB,
                    item.usedBytes(),
                    item.usable(),
                    item.backOn(),
                    item.dueBackOn()));
        }
        items.add(Played.item(random.nextLong(1, 3000), 0));
        return items;
    }

    private static Pool withItems(Pool pool, List<Pool.Item> items) {
        return new Pool(
                pool.id(),
                pool.name(),
                pool.wholeRolls(),
                pool.rollBytes(),
                pool.returnAfterDays(),
                pool.kept(),
                items,
                pool.arrivals(),
                pool.releases(),
                pool.waitingBytes());
    }

    /** Rolls may be split, what is on order comes for sure, and the share kept is known. */
    private static Pool split(Pool pool) {
        return new Pool(
                pool.id(),
                pool.name(),
                false,
                0,
                pool.returnAfterDays(),
                new Kept(pool.kept().usual(), null),
                pool.items(),
                pool.arrivals().stream()
                        .map(arrival -> new Pool.Arrival(
                                arrival.orderedOn(),
                                LeadTime.certain(arrival.leadTime().days(0.5)),
                                arrival.calendar(),
                                arrival.items(),
                                arrival.itemCapacityBytes()))
                        .toList(),
                pool.releases(),
                pool.waitingBytes());
    }

    /** The same with rolls that stay whole. */
    private static Pool whole(Pool pool) {
        Pool split = split(pool);
        return new Pool(
                split.id(),
                split.name(),
                true,
                pool.rollBytes(),
                split.returnAfterDays(),
                split.kept(),
                split.items(),
                split.arrivals(),
                List.of(),
                split.waitingBytes());
    }

    /** Rolls stay whole, and nothing comes or leaves. */
    private static Pool keptRolls(Pool pool) {
        return new Pool(
                pool.id(),
                pool.name(),
                true,
                pool.rollBytes(),
                null,
                new Kept(pool.kept().usual(), null),
                pool.items().stream()
                        .map(item -> new Pool.Item(
                                item.code(), 2 * item.capacityBytes(), item.usedBytes(), true, null, null))
                        .toList(),
                List.of(),
                List.of(),
                pool.waitingBytes());
    }

    private static Pool twice(Pool pool) {
        return new Pool(
                pool.id(),
                pool.name(),
                pool.wholeRolls(),
                2 * pool.rollBytes(),
                pool.returnAfterDays(),
                pool.kept(),
                pool.items().stream()
                        .map(item -> new Pool.Item(
                                item.code(),
                                2 * item.capacityBytes(),
                                2 * item.usedBytes(),
                                item.usable(),
                                item.backOn(),
                                item.dueBackOn()))
                        .toList(),
                pool.arrivals().stream()
                        .map(arrival -> new Pool.Arrival(
                                arrival.orderedOn(),
                                arrival.leadTime(),
                                arrival.calendar(),
                                arrival.items(),
                                2 * arrival.itemCapacityBytes()))
                        .toList(),
                pool.releases().stream()
                        .map(release -> new Pool.Release(release.date(), 2 * release.bytes()))
                        .toList(),
                2 * pool.waitingBytes());
    }
}
