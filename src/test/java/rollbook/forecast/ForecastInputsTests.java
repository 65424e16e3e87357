package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.forecast.StorageShow.BYTES_PER_MINUTE;
import static rollbook.forecast.StorageShow.GB;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;
import rollbook.learning.ShotDay;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.purchase.Orders;
import rollbook.purchase.Receipts;
import rollbook.purchase.TestOrders;
import rollbook.quantity.Share;
import rollbook.schedule.DayStates;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;

/** Expected figures are worked out by hand from the rows; see {@link StorageShow} for the units. */
@PortalTest
class ForecastInputsTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ForecastInputs inputs;

    @Autowired
    DayStates states;

    @Autowired
    Orders allOrders;

    @Autowired
    Receipts receipts;

    @Autowired
    StatementCount statements;

    private StorageShow show;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
    }

    @Test
    void aDaysPlanIsItsMinutesInBytesAndWhatWasRecordedIsMeasuredOrElseItsMinutesInBytes() {
        UUID day = show.day(1, -1, "WRAPPED", 100);
        show.roll(day, 5 * GB, 30);
        show.roll(day, null, 2.5);
        show.day(2, 0, "SHOOTING", 0);

        assertThat(gather().today()).isEqualTo(show.today);
        assertThat(gather().days())
                .containsExactly(
                        new ForecastDay(
                                "Main",
                                1,
                                show.date(-1),
                                ForecastDay.State.WRAPPED,
                                100 * BYTES_PER_MINUTE,
                                5 * GB + 5 * BYTES_PER_MINUTE / 2,
                                true,
                                new ShotDay.Minutes(100, 32.5)),
                        new ForecastDay(
                                "Main",
                                2,
                                show.date(0),
                                ForecastDay.State.SHOOTING,
                                0,
                                0,
                                true,
                                new ShotDay.Minutes(0, 0)));
    }

    @Test
    void aDayTeachesByItsPlanAsItWasWhenItBegan() {
        UUID day = show.day(1, -1, "PLANNED", 100);
        Membership office = show.production.as(Role.OFFICE);
        states.start(office, day);
        jdbc.sql("update schedule_plan set minutes = 250 where day_id = ?")
                .param(day)
                .update();
        show.roll(day, 150 * GB, 110);
        states.wrap(office, day);

        assertThat(gather().shotDays())
                .containsExactly(new ShotDay(
                        "Main", 1, show.date(-1), 100 * BYTES_PER_MINUTE, 150 * GB, new ShotDay.Minutes(100, 110)));

        jdbc.sql("update format_recording_format set frame_rate_numerator = frame_rate_numerator * 2 where id = ?")
                .param(show.format)
                .update();
        assertThat(gather().shotDays().get(0).plannedBytes())
                .as("in the format as it was then")
                .isEqualTo(100 * BYTES_PER_MINUTE);
    }

    @Test
    void aDayThatIsStoppedAndStartedAgainTeachesByItsSecondPlanAndOneThatIsReopenedByItsFirst() {
        UUID day = show.day(1, -1, "PLANNED", 100);
        Membership office = show.production.as(Role.OFFICE);
        states.start(office, day);
        states.stop(office, day);
        jdbc.sql("update schedule_plan set minutes = 60 where day_id = ?")
                .param(day)
                .update();
        states.start(office, day);
        states.wrap(office, day);
        states.reopen(office, day, "a roll was forgotten");
        jdbc.sql("update schedule_plan set minutes = 5 where day_id = ?")
                .param(day)
                .update();

        assertThat(gather().days()).extracting(ForecastDay::plannedBytes).containsExactly(60 * BYTES_PER_MINUTE);
    }

    @Test
    void aWrappedDayTeachesNothingWhileARollIsStillInItsCamera() {
        UUID day = show.day(1, -1, "WRAPPED", 100);
        UUID roll = show.roll(day, null, 40);
        assertThat(gather().shotDays()).hasSize(1);

        jdbc.sql("update offload_roll set pulled_at = null, pulled_by = null, minutes = null where id = ?")
                .param(roll)
                .update();
        assertThat(gather().shotDays()).as("late data is no small day").isEmpty();
    }

    @Test
    void mediaOnOrderIsExpectedAtItsDateAndPerhapsAsMuchLaterAsTheSupplyIsAtItsSlowest() {
        show.everyDayIsAWorkingDay();
        UUID leg = show.keptLeg("Array");
        UUID item = show.supply(leg, 8000, 2, 3, 5, 18_050);
        Membership office = show.production.as(Role.OFFICE);
        TestOrders orders = new TestOrders(allOrders, receipts, office);
        orders.proposed(item, leg, 2, "not counted yet");
        UUID order = orders.placed(item, leg, 6, show.date(-1), show.date(3), "by telephone");
        orders.came(order, 2, show.today);

        assertThat(leg("Array").arrivals())
                .containsExactly(new Pool.Arrival(
                        show.date(-1),
                        LeadTime.usually(4, 6),
                        gather().offers().get(0).supplier().days().calendar(),
                        4,
                        8000 * GB));

        allOrders.promise(
                office,
                order,
                show.date(5),
                "the ship is late",
                orders.get(order).version());
        assertThat(leg("Array").arrivals()).extracting(Pool.Arrival::leadTime).containsExactly(LeadTime.usually(6, 8));
        orders.cancel(order);
        assertThat(leg("Array").arrivals()).isEmpty();
    }

    @Test
    void onTapeARollStaysWholeAndIsAsLargeAsTheRollsThatHoldMostOfTheBytes() {
        UUID leg = show.leg("Tape", null, 60);
        jdbc.sql("update production_leg set media_kind = 'TAPE' where id = ?")
                .param(leg)
                .update();
        UUID day = show.day(1, -1, "WRAPPED", 100);
        assertThat(leg("Tape").wholeRolls())
                .as("without a roll nobody knows how large one is")
                .isFalse();
        for (int i = 0; i < 5; i++) {
            show.roll(day, GB, 1);
        }
        show.roll(day, 100 * GB, 70);
        show.roll(day, 200 * GB, 140);

        assertThat(leg("Tape").wholeRolls()).isTrue();
        // Half of 305 GB is reached with the largest roll; 60 % of it are written.
        assertThat(leg("Tape").rollBytes()).isEqualTo(120 * GB);
    }

    @Test
    void whatHasNoCopyOnALegIsWaitingInBytesAsWritten() {
        UUID kept = show.keptLeg("Array");
        UUID encoded = show.leg("Tape", null, 60);
        UUID array = show.drive("ARRAY-1", kept, 100);
        UUID tape = show.drive("TAPE-1", encoded, 100);
        UUID day = show.day(1, -1, "WRAPPED", 100);
        UUID copied = show.roll(day, 10 * GB, 7);
        show.copy(copied, array, kept);
        show.copy(copied, tape, encoded, "ENCODED");
        show.roll(day, 20 * GB + 1, 14);

        Pool arrayLeg = leg("Array");
        assertThat(arrayLeg.waitingBytes()).isEqualTo(20 * GB + 1);
        assertThat(arrayLeg.items()).containsExactly(new Pool.Item("ARRAY-1", 100 * GB, 10 * GB, true, null, null));
        Pool tapeLeg = leg("Tape");
        assertThat(tapeLeg.kept().usual()).isEqualTo(new Share(60, 100));
        // 60 % of 20,000,000,001 bytes, rounded up.
        assertThat(tapeLeg.waitingBytes()).isEqualTo(12_000_000_001L);
        assertThat(tapeLeg.items()).containsExactly(new Pool.Item("TAPE-1", 100 * GB, 6 * GB, true, null, null));
    }

    @Test
    void fiveMeasuredRollsTellWhatEncodingLeavesAndFewerDoNot() {
        UUID leg = show.leg("Tape", null, 60);
        UUID tape = show.drive("TAPE-1", leg, 100);
        UUID day = show.day(1, -1, "WRAPPED", 100);
        for (int i = 1; i <= 4; i++) {
            show.encoded(show.roll(day, 10 * GB, 7), 5 * GB);
        }
        assertThat(gather().legs().get(0).reduction()).isEqualTo(new Reduction(20 * GB, 40 * GB, 4, 60));
        assertThat(leg("Tape").kept().usual()).isEqualTo(new Share(60, 100));

        UUID large = show.roll(day, 60 * GB, 42);
        show.encoded(large, 40 * GB);
        show.copy(large, tape, leg, "ENCODED");
        // By bytes: 4 × 5 + 40 of 4 × 10 + 60 GB are 0.6; the mean of the rolls' own shares would be 0.53.
        assertThat(leg("Tape").kept().usual()).isEqualTo(new Share(60 * GB, 100 * GB));
        assertThat(leg("Tape").waitingBytes()).as("4 × 10 GB").isEqualTo(24 * GB);
        assertThat(leg("Tape").items())
                .as("as large as it was measured")
                .extracting(Pool.Item::usedBytes)
                .containsExactly(40 * GB);
    }

    @Test
    void aCopyWhoseSizeIsNotKnownYetIsWaitingInItsMinutesForItCountsOnNoItem() {
        UUID leg = show.keptLeg("Array");
        UUID array = show.drive("ARRAY-1", leg, 100);
        show.copy(show.roll(show.day(1, 0, "SHOOTING", 10), null, 10), array, leg);

        assertThat(leg("Array").waitingBytes()).isEqualTo(10 * BYTES_PER_MINUTE);
        assertThat(leg("Array").items()).extracting(Pool.Item::usedBytes).containsExactly(0L);
    }

    @Test
    void aCopyOnAnItemThatIsInDoubtOrGoneHasToBeMadeAgain() {
        UUID leg = show.keptLeg("Array");
        UUID day = show.day(1, -1, "WRAPPED", 100);
        for (String condition : new String[] {"GOOD", "RETIRED", "QUARANTINED", "LOST", "RETURNED"}) {
            UUID drive = show.drive(condition, leg, 100);
            show.copy(
                    show.roll(
                            day,
                            switch (condition) {
                                case "QUARANTINED" -> 2 * GB;
                                case "LOST" -> 4 * GB;
                                case "RETURNED" -> 8 * GB;
                                default -> GB;
                            },
                            1),
                    drive,
                    leg);
            show.condition(drive, condition);
        }

        assertThat(leg("Array").waitingBytes()).isEqualTo((2 + 4 + 8) * GB);
        assertThat(leg("Array").items())
                .containsExactly(
                        new Pool.Item("GOOD", 100 * GB, GB, true, null, null),
                        new Pool.Item("QUARANTINED", 100 * GB, 2 * GB, false, null, null));
    }

    @Test
    void onALegThatComesBackWhatIsOldEnoughIsGoneAndTheRestIsReleasedByDate() {
        UUID leg = show.leg("Shuttle", 7, 100);
        UUID shuttle = show.drive("SHUTTLE-1", leg, 100);
        UUID other = show.drive("SHUTTLE-2", leg, 100);
        show.copy(show.roll(show.day(1, -10, "WRAPPED", 10), 50 * GB, 9), shuttle, leg);
        show.copy(show.roll(show.day(2, -7, "WRAPPED", 10), 40 * GB, 9), shuttle, leg);
        UUID six = show.day(3, -6, "WRAPPED", 10);
        show.copy(show.roll(six, 3 * GB, 9), shuttle, leg);
        show.copy(show.roll(six, 2 * GB, 9), other, leg);
        show.copy(show.roll(show.day(4, -2, "WRAPPED", 10), 7 * GB, 9), shuttle, leg);

        Pool returning = leg("Shuttle");
        assertThat(returning.returnAfterDays()).isEqualTo(7);
        assertThat(returning.items()).extracting(Pool.Item::usedBytes).containsExactly(10 * GB, 2 * GB);
        assertThat(returning.releases())
                .containsExactly(new Pool.Release(show.date(1), 5 * GB), new Pool.Release(show.date(5), 7 * GB));
        assertThat(returning.waitingBytes()).isZero();
    }

    @Test
    void onALegThatComesBackALostMediumMattersOnlyUntilItWouldHaveComeBack() {
        UUID leg = show.leg("Shuttle", 7, 100);
        UUID shuttle = show.drive("SHUTTLE-1", leg, 100);
        show.copy(show.roll(show.day(1, -10, "WRAPPED", 10), 50 * GB, 9), shuttle, leg);
        show.copy(show.roll(show.day(2, -3, "WRAPPED", 10), 3 * GB, 9), shuttle, leg);
        show.condition(shuttle, "LOST");
        show.roll(show.day(3, -9, "WRAPPED", 10), 6 * GB, 9);

        assertThat(leg("Shuttle").waitingBytes())
                .as("day 2's copy is lost, day 3 never had one")
                .isEqualTo((3 + 6) * GB);
    }

    @Test
    void aHiredItemLeavesOnItsDate() {
        UUID leg = show.keptLeg("Array");
        show.hiredUntil(show.drive("ARRAY-1", leg, 100), 4);

        assertThat(leg("Array").items())
                .containsExactly(new Pool.Item("ARRAY-1", 100 * GB, 0, true, null, show.date(4)));
    }

    @Test
    void theFillLevelIsTheUsualOneUntilSomebodySaysAnother() {
        assertThat(gather().fillLevel()).isEqualTo(Share.percent(95));
        show.fillLevel(80);
        assertThat(gather().fillLevel()).isEqualTo(Share.percent(80));
    }

    @Test
    void unitsThatShootOnOneDateComeInTheirOrder() {
        UUID alpha = show.production.unit("Alpha");
        jdbc.sql("update production_unit set position = 2 where id = ?")
                .param(alpha)
                .update();
        show.day(alpha, 1, 1, "PLANNED", 10);
        show.day(1, 1, "PLANNED", 10);

        assertThat(gather().days()).extracting(ForecastDay::unit).containsExactly("Main", "Alpha");
    }

    @Test
    void theNumberOfQueriesDoesNotGrowWithTheRows() throws Exception {
        UUID leg = show.leg("Shuttle", 7, 100);
        int few = statements.during(this::gather);
        for (int i = 1; i <= 10; i++) {
            UUID drive = show.drive("SHUTTLE-" + i, show.keptLeg("Leg " + i), 100);
            show.copy(show.roll(show.day(i, -i, "WRAPPED", 10), GB, 1), drive, leg);
        }
        assertThat(statements.during(this::gather)).isEqualTo(few).isLessThanOrEqualTo(19);
    }

    private ForecastInput gather() {
        return inputs.gather(show.production.id);
    }

    private Pool leg(String name) {
        return gather().pools().stream()
                .filter(leg -> leg.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
