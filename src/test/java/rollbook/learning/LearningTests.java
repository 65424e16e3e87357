package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rollbook.learning.GeneratedShow.Regime;

class LearningTests {
    private static final long GB = 1_000_000_000L;
    private static final Habits FORGETS_NOTHING = new Habits(Habits.USUAL.prior(), Double.POSITIVE_INFINITY, false);

    private static ShotDay day(int number, long plannedGb, long actualGb) {
        return day("main", number, plannedGb, actualGb);
    }

    private static ShotDay day(String unit, int number, long plannedGb, long actualGb) {
        return new ShotDay(
                unit, number, LocalDate.of(2026, 6, 1).plusDays(number), plannedGb * GB, actualGb * GB, null);
    }

    private static ShotDay day(int number, long plannedGb, long actualGb, double plannedMinutes, double minutes) {
        ShotDay day = day(number, plannedGb, actualGb);
        return new ShotDay(
                day.unit(),
                number,
                day.date(),
                day.plannedBytes(),
                day.actualBytes(),
                new ShotDay.Minutes(plannedMinutes, minutes));
    }

    private static LearnedUnit learned(ShotDay... days) {
        return Learning.from(List.of(days), FORGETS_NOTHING).unit("main");
    }

    @Test
    void aShowWithoutDaysBelievesThePlan() {
        Learned learned = Learning.from(List.of(), Habits.USUAL);

        assertThat(learned.unit("main").belief()).isEqualTo(Habits.USUAL.prior());
        assertThat(learned.unit("main").days()).isZero();
        assertThat(learned.unit("main").borrowedFromUnits()).isFalse();
    }

    @Test
    void aTinyDayIsTakenTogetherWithTheDayBefore() {
        LearnedUnit merged = learned(day(1, 4000, 4400), day(2, 4000, 3000), day(3, 100, 900), day(4, 4000, 4000));

        assertThat(merged.belief())
                .isEqualTo(learned(day(1, 4000, 4400), day(2, 4100, 3900), day(4, 4000, 4000))
                        .belief());
        assertThat(merged.days()).isEqualTo(3);
        assertThat(merged.remarks())
                .extracting(Remark::kind, Remark::dayNumber, Remark::intoDayNumber, Remark::ratio)
                .containsExactly(tuple(Remark.Kind.MERGED, 3, 2, 9.0));
    }

    @Test
    void aTinyFirstDayIsTakenTogetherWithTheNext() {
        LearnedUnit merged = learned(day(1, 100, 900), day(2, 4000, 3000), day(3, 4000, 4000));

        assertThat(merged.belief())
                .isEqualTo(learned(day(2, 4100, 3900), day(3, 4000, 4000)).belief());
        assertThat(merged.remarks().get(0).intoDayNumber()).isEqualTo(2);
    }

    @Test
    void aTinyDayWithoutNeighboursIsSkippedAndSaid() {
        LearnedUnit skipped = learned(day(1, 4000, 0), day(2, 100, 50), day(3, 4000, 0));

        assertThat(skipped.belief()).isEqualTo(Habits.USUAL.prior());
        assertThat(skipped.remarks())
                .extracting(Remark::kind)
                .containsExactly(Remark.Kind.NOTHING_RECORDED, Remark.Kind.SKIPPED, Remark.Kind.NOTHING_RECORDED);
    }

    @Test
    void aDayFarOffIsLearnedAsTheBoundAndSaid() {
        LearnedUnit bounded = learned(day(1, 100, 5000), day(2, 100, 100));

        assertThat(bounded.belief())
                .isEqualTo(learned(day(1, 100, 1000), day(2, 100, 100)).belief());
        assertThat(bounded.remarks())
                .extracting(Remark::kind, Remark::dayNumber, Remark::ratio)
                .containsExactly(tuple(Remark.Kind.WINSORISED, 1, 50.0));
    }

    @Test
    void aDayWithNothingRecordedTeachesHowOftenThatHappensAndNoRatio() {
        Learned learned = Learning.from(List.of(day(1, 4000, 4400), day(2, 4000, 0)), Habits.USUAL);

        assertThat(learned.unit("main").days()).isEqualTo(1);
        assertThat(learned.zeroDays()).isEqualTo(new ZeroDays(2, 20));
    }

    @Test
    void bytesThatNobodyPlannedAreKeptApart() {
        LearnedUnit unit = learned(day(1, 4000, 4400), day(2, 0, 300), day(3, 0, 0));

        assertThat(unit.belief()).isEqualTo(learned(day(1, 4000, 4400)).belief());
        assertThat(unit.unplannedBytesPerDay()).isEqualTo(100.0 * GB);
        assertThat(unit.remarks()).extracting(Remark::kind).containsExactly(Remark.Kind.UNPLANNED);
    }

    @Test
    void zeroPlannedBytesGiveFiniteAnswers() {
        LearnedUnit unit = learned(day(1, 0, 300), day(2, 0, 0));

        assertThat(unit.belief()).isEqualTo(Habits.USUAL.prior());
        assertThat(unit.unplannedBytesPerDay()).isFinite();
        assertThat(Arrays.stream(RatioPaths.of(Learning.from(List.of(day(1, 0, 300)), Habits.USUAL), 1, 100)
                        .factors("main", 2)))
                .allMatch(Double::isFinite);
    }

    @Test
    void theOrderInWhichDaysAreHandedOverDoesNotMatter() {
        for (long seed = 1; seed <= 20; seed++) {
            List<ShotDay> days = new ArrayList<>(shotDays(Regime.TWO_UNITS, seed));
            Learned inOrder = Learning.from(days, Habits.USUAL);
            Collections.shuffle(days, new Random(seed));
            assertThat(Learning.from(days, Habits.USUAL)).as("seed %d", seed).isEqualTo(inOrder);
        }
    }

    @Test
    void withNothingForgottenItDoesNotMatterWhichDayWasShotFirst() {
        Belief forwards = learned(day(1, 4000, 4400), day(2, 4000, 3000), day(3, 4000, 5000))
                .belief();
        Belief backwards = learned(day(1, 4000, 5000), day(2, 4000, 3000), day(3, 4000, 4400))
                .belief();

        assertThat(backwards.mu()).isCloseTo(forwards.mu(), within(1e-15));
        assertThat(backwards.b()).isCloseTo(forwards.b(), within(1e-15));
    }

    @Test
    void withAHalfLifeTheNewestDayTeachesMost() {
        Learned up = Learning.from(List.of(day(1, 4000, 3000), day(2, 4000, 5000)), Habits.USUAL);
        Learned down = Learning.from(List.of(day(1, 4000, 5000), day(2, 4000, 3000)), Habits.USUAL);

        assertThat(up.unit("main").belief().mu())
                .isGreaterThan(down.unit("main").belief().mu());
        assertThat(up.unit("main").effectiveDays()).isCloseTo(1 + Math.pow(2, -1 / 5.0), within(1e-12));
    }

    @Test
    void scalingAllBytesLeavesWhatIsLearned() {
        for (long seed = 1; seed <= 20; seed++) {
            List<ShotDay> days = shotDays(Regime.HEAVIER, seed);
            List<ShotDay> doubled = days.stream()
                    .map(day -> new ShotDay(
                            day.unit(),
                            day.number(),
                            day.date(),
                            2 * day.plannedBytes(),
                            2 * day.actualBytes(),
                            day.minutes()))
                    .toList();
            assertThat(Learning.from(doubled, Habits.USUAL).unit("main").belief())
                    .as("seed %d", seed)
                    .isEqualTo(Learning.from(days, Habits.USUAL).unit("main").belief());
        }
    }

    @Test
    void aUnitWithFewDaysBorrowsFromTheOthersAndLessWithEachDay() {
        List<ShotDay> days = new ArrayList<>(shotDays(Regime.STEADY, 1));
        double borrowed = 1;
        for (int number = 1; number <= 10; number++) {
            days.add(day("second", number, 1000, 1500));
            LearnedUnit second = Learning.from(days, FORGETS_NOTHING).unit("second");
            assertThat(second.borrowedFromUnits()).isTrue();
            assertThat(second.borrowed()).isCloseTo(4.0 / (4 + number), within(1e-12));
            assertThat(second.borrowed()).isLessThan(borrowed);
            borrowed = second.borrowed();
        }
    }

    @Test
    void minutesAndBytesPerMinuteMultiplyToBytes() {
        LearnedUnit unit =
                learned(day(1, 4000, 4400, 100, 120), day(2, 4000, 3600, 80, 70), day(3, 5000, 6000, 120, 130));
        LearnedUnit.Apart apart = Objects.requireNonNull(unit.apart());

        assertThat(apart.minutes().mu() + apart.bytesPerMinute().mu())
                .isCloseTo(unit.belief().mu(), within(1e-14));
        assertThat(apart.minutes().mu()).isPositive();
    }

    @Test
    void oneDayWithoutMinutesAndTheyAreNotLearnedApart() {
        assertThat(learned(day(1, 4000, 4400, 100, 120), day(2, 4000, 3600)).apart())
                .isNull();
        assertThat(learned(day(1, 4000, 4400, 100, 0)).apart()).isNull();
    }

    private static List<ShotDay> shotDays(Regime regime, long seed) {
        GeneratedShow show = GeneratedShows.show(regime, seed);
        return show.wrappedBy(show.lastDate());
    }
}
