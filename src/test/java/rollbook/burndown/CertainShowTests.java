package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rollbook.burndown.Played.GB;
import static rollbook.burndown.Played.arrival;
import static rollbook.burndown.Played.asPlanned;
import static rollbook.burndown.Played.date;
import static rollbook.burndown.Played.day;
import static rollbook.burndown.Played.days;
import static rollbook.burndown.Played.item;
import static rollbook.burndown.Played.kept;
import static rollbook.burndown.Played.only;
import static rollbook.burndown.Played.pool;
import static rollbook.burndown.Played.show;
import static rollbook.burndown.Played.wholeRolls;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.learning.Belief;
import rollbook.learning.Habits;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.quantity.Share;

/** Shows of which everything is certain, so that each figure can be worked by hand. */
class CertainShowTests {

    // Arithmetic: 5 TB a day; 32 TB and 30 TB both run out on day 7, for six days need 30 TB and 30 TB fit.
    @ParameterizedTest
    @CsvSource({"32000, 7", "30000, 7", "29999, 6", "35000, 8"})
    void runsOutOnTheFirstDayThatNeedsMoreThanIsLeft(long capacityGb, int runOutDay) {
        PoolOutlook pool = asPlanned(show(1, days(1, 10, 5000)), kept(item(capacityGb, 0)));

        assertThat(pool.runsOutBy(0.001)).isEqualTo(date(runOutDay));
        assertThat(pool.runsOutBy(1)).isEqualTo(date(runOutDay));
        assertThat(pool.causes()).isEqualTo(new PoolOutlook.Causes(0, 1, 0));
        assertThat(pool.coverDays()).isEqualTo(Band.certain(runOutDay - 1));
        // 10 days x 5,000 GB are needed in all.
        assertThat(pool.neededBytes()).isEqualTo(Band.certain(50_000 * GB));
        assertThat(pool.shortfallBytes()).isEqualTo(Band.certain((50_000 - capacityGb) * GB));
        assertThat(leftGb(pool, 9)).isEqualTo(capacityGb - 50_000);
    }

    @Test
    void lastsToTheEndWhenTheShowNeedsExactlyWhatIsLeft() {
        PoolOutlook pool = asPlanned(show(1, days(1, 10, 5000)), kept(item(50_000, 0)));

        assertThat(pool.chanceOfRunningOut()).isZero();
        assertThat(pool.lastsForSure()).isTrue();
        assertThat(pool.runsOutBy(0.001)).isNull();
        assertThat(pool.coverDays()).isEqualTo(Band.certain(10));
        assertThat(leftGb(pool, 9)).isZero();
    }

    @Test
    void aBeliefWithoutSpreadGivesOneCourse() {
        Habits sure = new Habits(new Belief(1, 0, 1, 0), 20, false);
        Learned learned = Learning.from(List.of(), sure);
        PoolOutlook pool = only(Simulation.run(
                show(1, days(1, 10, 5000)), List.of(kept(item(32_000, 0))), learned, Share.WHOLE, 1, 50));

        assertThat(pool).isEqualTo(asPlanned(show(1, days(1, 10, 5000)), kept(item(32_000, 0))));
    }

    // Factor 1.5. Planned 1,000 GB: expected 1,500 GB, 400 GB are there, 1,100 GB to come.
    // Planned 600 GB: expected 900 GB, 950 GB are there, nothing more to come.
    @ParameterizedTest
    @CsvSource({"1000, 400, 1100", "600, 950, 0"})
    void expectsOfTheDayInProgressWhatIsMissingAndNeverLessThanNothing(long planned, long recorded, long toCome) {
        DayToCome day = new DayToCome(new DayRef("main", 2, date(2)), date(2), planned * GB, recorded * GB);
        PoolOutlook pool = only(Simulation.run(
                show(2, List.of(day)),
                List.of(kept(item(9000, 0))),
                (unit, number) -> new double[] {1.5},
                Share.WHOLE,
                1,
                1));

        assertThat(pool.neededBytes()).isEqualTo(Band.certain(toCome * GB));
    }

    // 3/5 of 1,000 GB is 600 GB a day: 1,800 GB last three days, as recorded one.
    @Test
    void anEncodedPoolNeedsOnlyTheShareItKeeps() {
        Show show = show(1, days(1, 5, 1000));
        List<Pool.Item> items = List.of(item(1800, 0));
        PoolOutlook encoded = asPlanned(show, pool(null, new Kept(new Share(3, 5), null), items));
        PoolOutlook recorded = asPlanned(show, pool(null, Kept.WHOLE, items));

        assertThat(encoded.coverDays()).isEqualTo(Band.certain(3));
        assertThat(encoded.neededBytes()).isEqualTo(Band.certain(3000 * GB));
        assertThat(recorded.coverDays()).isEqualTo(Band.certain(1));
    }

    // A third of 10 bytes is 3 1/3, so 4: a byte too many is safer than a byte too few.
    @Test
    void aShareOfBytesIsRoundedUp() {
        DayToCome day = new DayToCome(new DayRef("main", 1, date(1)), date(1), 10, 0);
        PoolOutlook pool = asPlanned(show(1, List.of(day)), pool(null, new Kept(new Share(1, 3), null), List.of()));

        assertThat(pool.neededBytes()).isEqualTo(Band.certain(4));
    }

    // 3 days x 1,000 GB are out at most, for what day 1 wrote is free on day 4: 3,000 GB are enough for ever,
    // 2,999 GB run out on day 3 and lack 1 GB each day from then on.
    @Test
    void bytesThatComeBackCanBeWrittenAgain() {
        Show show = show(1, days(1, 20, 1000));
        PoolOutlook enough = asPlanned(show, pool(3, Kept.WHOLE, List.of(item(3000, 0))));
        PoolOutlook short1 = asPlanned(show, pool(3, Kept.WHOLE, List.of(item(2999, 0))));

        assertThat(enough.lastsForSure()).isTrue();
        // Days 1 to 17 come back by day 20.
        assertThat(enough.points())
                .extracting(point -> point.returningBytes().p50() / GB)
                .startsWith(0L, 0L, 0L, 1000L, 1000L)
                .filteredOn(gb -> gb == 1000)
                .hasSize(17);
        assertThat(leftGb(enough, 19)).isZero();
        assertThat(short1.runsOutBy(1)).isEqualTo(date(3));
        assertThat(short1.shortfallBytes()).isEqualTo(Band.certain(GB));
    }

    // 1,000 GB used, of which 700 come back on day 2 and 500 should have come back before today: room on day 1 is
    // 1,000 GB, on day 2 0 + 500 (only 500 of the 1,000 are not overdue), which day 2 then needs 800 of.
    @Test
    void releasesAreCountedOnTheirDateAndOverdueOnesAreOnlyReported() {
        List<Pool.Release> releases =
                List.of(new Pool.Release(date(2), 700 * GB), new Pool.Release(date(1).minusDays(2), 500 * GB));
        Pool pool = new Pool(
                Played.POOL, "SHUTTLE", false, 0, 4, Kept.WHOLE, List.of(item(2000, 1000)), List.of(), releases, 0);
        PoolOutlook outlook = asPlanned(show(1, List.of(day(1, 1000), day(2, 800))), pool);

        assertThat(outlook.overdueReturnBytes()).isEqualTo(500 * GB);
        assertThat(outlook.points().get(1).returningBytes()).isEqualTo(Band.certain(500 * GB));
        assertThat(leftGb(outlook, 1)).isEqualTo(1000 - 1000 + 500 - 800);
        assertThat(outlook.runsOutBy(1)).isEqualTo(date(2));
    }

    // 2,000 GB and 1,000 GB a day. An order of 2 x 1,000 GB that comes on day 2 is there for day 3: days 1 to 4 fit.
    // If it comes on day 3 instead, day 3 finds nothing, though the end of the show still has what it needs.
    @Test
    void anArrivalCountsFromTheNextDate() {
        Show show = show(1, days(1, 4, 1000));
        List<Pool.Item> items = List.of(item(2000, 0));
        PoolOutlook inTime = asPlanned(show, pool(null, Kept.WHOLE, items, arrival(2, 2, 1000)));
        PoolOutlook aDayLate = asPlanned(show, pool(null, Kept.WHOLE, items, arrival(3, 2, 1000)));

        assertThat(inTime.lastsForSure()).isTrue();
        assertThat(leftGb(inTime)).containsExactly(1000L, 2000L, 1000L, 0L);
        assertThat(inTime.arrivals())
                .containsExactly(new PoolOutlook.ExpectedArrival(2, 2000 * GB, date(2), date(2), date(2)));
        assertThat(aDayLate.runsOutBy(1)).isEqualTo(date(3));
        assertThat(aDayLate.shortfallBytes()).isEqualTo(Band.certain(1000 * GB));
        assertThat(leftGb(aDayLate, 3)).isZero();
    }

    @Test
    void anOrderThatShouldHaveComeIsCountedTodayAndReported() {
        PoolOutlook outlook = asPlanned(
                show(3, days(3, 6, 1000)), pool(null, Kept.WHOLE, List.of(item(1000, 0)), arrival(1, 3, 1000)));

        assertThat(outlook.overdueArrivalItems()).isEqualTo(3);
        assertThat(leftGb(outlook, 0)).isEqualTo(3000);
        assertThat(outlook.lastsForSure()).isTrue();
    }

    // Own drive 4,000 GB, hired drive 2,000 GB due back on day 3 with 1,000 GB written on it. Room 5,000 GB; days 1 and
    // 2 leave 3,000; the drive takes 2,000 away, 1,000 are left, and day 4 finds nothing.
    @Test
    void aHiredItemLeavesOnTheMorningOfItsDueDateAndItsContentNeedsRoomElsewhere() {
        Pool.Item hired = new Pool.Item("DRIVE-02", 2000 * GB, 1000 * GB, true, null, date(3));
        PoolOutlook outlook = asPlanned(show(1, days(1, 4, 1000)), kept(item(4000, 0), hired));

        assertThat(outlook.roomNowBytes()).isEqualTo(5000 * GB);
        assertThat(outlook.points().get(2).leavingBytes()).isEqualTo(2000 * GB);
        assertThat(leftGb(outlook)).containsExactly(4000L, 3000L, 0L, -1000L);
        assertThat(outlook.runsOutBy(1)).isEqualTo(date(4));
    }

    @Test
    void theContentOfAHiredItemThatFindsNoRoomRunsThePoolOut() {
        Pool.Item hired = new Pool.Item("DRIVE-02", 2000 * GB, 1500 * GB, true, null, date(2));
        PoolOutlook outlook = asPlanned(show(1, List.of(day(1, 0), day(3, 0))), kept(item(1000, 0), hired));

        assertThat(outlook.runsOutBy(1)).isEqualTo(date(2));
        assertThat(outlook.causes()).isEqualTo(new PoolOutlook.Causes(0, 0, 1));
        assertThat(outlook.shortfallBytes()).isEqualTo(Band.certain(500 * GB));
    }

    // 1,000 GB usable; a quarantined item never counts; an item away until day 2 comes back empty if the pool comes
    // back. What is on a kept item stays: only 300 GB come back.
    @Test
    void anItemThatIsAwayCountsFromTheDateItIsBack() {
        Pool.Item quarantined = new Pool.Item("DRIVE-02", 8000 * GB, 0, false, null, null);
        Pool.Item away = new Pool.Item("DRIVE-03", 2000 * GB, 1700 * GB, false, date(2), null);
        List<Pool.Item> items = List.of(item(1000, 0), quarantined, away);
        PoolOutlook shuttle = asPlanned(show(1, days(1, 4, 1000)), pool(30, Kept.WHOLE, items));
        PoolOutlook kept = asPlanned(show(1, days(1, 4, 1000)), pool(null, Kept.WHOLE, items));

        assertThat(shuttle.roomNowBytes()).isEqualTo(1000 * GB);
        assertThat(shuttle.runsOutBy(1)).isEqualTo(date(4));
        assertThat(kept.runsOutBy(1)).isEqualTo(date(2));
        assertThat(kept.points().get(1).returningBytes()).isEqualTo(Band.certain(300 * GB));
    }

    // 95 % of 1,000 GB is 950 GB. One item holds 990 GB already: it has no room, and takes none from the other.
    @Test
    void theFillLevelLimitsEachItemByItself() {
        PoolOutlook outlook =
                asPlanned(show(1, days(1, 1, 950)), Share.percent(95), kept(item(1000, 990), item(1000, 0)));

        assertThat(outlook.roomNowBytes()).isEqualTo(950 * GB);
        assertThat(outlook.capacityNowBytes()).isEqualTo(1900 * GB);
        assertThat(outlook.lastsForSure()).isTrue();
    }

    @Test
    void whatIsRecordedAndNotYetCopiedNeedsRoomToday() {
        Pool pool = new Pool(
                Played.POOL,
                "TAPE",
                false,
                0,
                null,
                Kept.WHOLE,
                List.of(item(1000, 0)),
                List.of(),
                List.of(),
                1200 * GB);
        PoolOutlook outlook = asPlanned(show(2, List.of()), pool);

        assertThat(outlook.neededBytes()).isEqualTo(Band.certain(1200 * GB));
        assertThat(outlook.points().get(0).demandBytes()).isEqualTo(Band.certain(1200 * GB));
        assertThat(outlook.runsOutBy(1)).isEqualTo(date(2));
        assertThat(outlook.causes()).isEqualTo(new PoolOutlook.Causes(1, 0, 0));
    }

    // Days 1 and 2 should be over and count today, day 3: after 700 of 1,500 GB, 800 GB are left, so day 2's 1,000
    // don't fit, and one day is covered.
    @Test
    void daysOfOneDateShareThePoolInTheirOrder() {
        LocalDate today = date(3);
        List<DayToCome> days = List.of(
                new DayToCome(new DayRef("main", 1, date(1)), today, 1000 * GB, 300 * GB),
                new DayToCome(new DayRef("main", 2, date(2)), today, 1000 * GB, 0),
                day(3, 100));
        PoolOutlook outlook = asPlanned(show(3, days), kept(item(1500, 0)));

        assertThat(outlook.runsOutBy(1)).isEqualTo(today);
        assertThat(outlook.coverDays()).isEqualTo(Band.certain(1));
        assertThat(outlook.points().get(0).days()).extracting(DayRef::number).containsExactly(1, 2, 3);
    }

    @Test
    void aShowWithoutDaysNeedsNothing() {
        PoolOutlook outlook = asPlanned(show(1, List.of()), kept());

        assertThat(outlook.lastsForSure()).isTrue();
        assertThat(outlook.coverDays()).isEqualTo(Band.NONE);
        assertThat(outlook.points()).hasSize(1);
    }

    @Test
    void sumsBeyondSixtyFourBitsFailInsteadOfWrapping() {
        Pool.Item item = new Pool.Item("ARRAY-01", Long.MAX_VALUE, 0, true, null, null);

        assertThatThrownBy(() -> asPlanned(show(1, List.of()), kept(item, item)))
                .isInstanceOf(ArithmeticException.class);
    }

    // Film-school production handbook, data allocation sheet: 5 pages at 1 min a page and a shooting ratio of 20:1 are
    // 100 min, at 6 GB/min 600 GB a day, so 120 GB a page. A 4-day plan of it needs 2,400 GB; 16 pages' worth,
    // 1,920 GB, lasts 3 days.
    @Test
    void coversAsManyDaysOfAPublishedAllocationSheetAsTheirPagesFit() {
        PoolOutlook outlook = asPlanned(show(1, days(1, 4, 5 * 20 * 6)), kept(item(16 * 120, 0)));

        assertThat(outlook.neededBytes()).isEqualTo(Band.certain(2400 * GB));
        assertThat(outlook.coverDays()).isEqualTo(Band.certain(3));
        assertThat(outlook.shortfallBytes()).isEqualTo(Band.certain(4 * 120 * GB));
    }

    // Derived: three rolls of 7 TB on 12 TB tapes need 3 tapes, for a roll stays whole; dividing bytes gives 2. Two
    // tapes lose 5 TB each, and a whole roll lacks.
    @Test
    void aRollThatDoesntFitTheRestOfATapeIsWrittenToTheNext() {
        Show show = show(1, days(1, 3, 7000));
        PoolOutlook two = asPlanned(show, wholeRolls(7000, List.of(item(12_000, 0), item(12_000, 0))));
        PoolOutlook three =
                asPlanned(show, wholeRolls(7000, List.of(item(12_000, 0), item(12_000, 0), item(12_000, 0))));

        assertThat(two.runsOutBy(1)).isEqualTo(date(3));
        assertThat(leftGb(two)).containsExactly(17_000L, 5_000L, -7_000L);
        assertThat(two.lostBytes()).isEqualTo(Band.certain(10_000 * GB));
        assertThat(three.lastsForSure()).isTrue();
        assertThat(three.lostBytes()).isEqualTo(Band.certain(10_000 * GB));
        assertThat(asPlanned(show, kept(item(12_000, 0), item(12_000, 0))).lastsForSure())
                .isTrue();
    }

    // A day of 10 TB in rolls of 4 TB is 4 + 4 + 2; the 9 TB that are left of the first tape take two rolls, and the
    // 1 TB that is left then is lost. The tape that comes on day 1 takes the roll that lacks.
    @Test
    void theLastRollOfADayIsSmallerAndWhatLacksGoesToTheTapeThatComes() {
        PoolOutlook outlook = asPlanned(
                show(1, List.of(day(1, 10_000), day(2, 0))),
                wholeRolls(4000, List.of(item(12_000, 3_000)), arrival(1, 1, 12_000)));

        assertThat(outlook.lostBytes()).isEqualTo(Band.certain(1000 * GB));
        assertThat(outlook.shortfallBytes()).isEqualTo(Band.certain(4000 * GB));
        assertThat(outlook.chanceOfRunningOut()).isEqualTo(1);
        assertThat(leftGb(outlook, 1)).isEqualTo(8_000);
    }

    // 6 TB of the hired tape's content are two rolls of 4 and 2 TB; the rest of the pool has 3 TB, which takes neither
    // the first of them, nor, once it is closed, the second.
    @Test
    void whatIsOnAHiredTapeIsWrittenToTheOthersInWholeRolls() {
        Pool.Item hired = new Pool.Item("TAPE-02", 12_000 * GB, 6_000 * GB, true, null, date(2));
        PoolOutlook outlook = asPlanned(
                show(1, List.of(day(1, 0), day(2, 0))), wholeRolls(4000, List.of(item(12_000, 9_000), hired)));

        assertThat(outlook.causes()).isEqualTo(new PoolOutlook.Causes(0, 0, 1));
        assertThat(outlook.shortfallBytes()).isEqualTo(Band.certain(8_000 * GB));
    }

    private static long leftGb(PoolOutlook pool, int date) {
        return leftGb(pool).get(date);
    }

    private static List<Long> leftGb(PoolOutlook pool) {
        return pool.points().stream().map(point -> point.leftBytes().p50() / GB).toList();
    }
}
