package rollbook.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Simulated factors against what is known of them in closed form, within four standard errors of the simulation. */
class RatioPathsTests {
    private static final int REPLICATES = 20_000;
    private static final long SEED = 20261126;
    private static final long TB = 1_000_000_000_000L;

    /** Five days: planned 4, 5, 4, 6, 5 TB, recorded 3.6, 6, 5, 4.8, 7. */
    private static final double[] RATIOS = {0.9, 1.2, 1.25, 0.8, 1.4};

    private static Learned learned(double halfLifeDays) {
        return Learning.from(days("main", RATIOS), new Habits(Habits.USUAL.prior(), halfLifeDays, false));
    }

    private static Learned learned() {
        return learned(Double.POSITIVE_INFINITY);
    }

    private static List<ShotDay> days(String unit, double... ratios) {
        List<ShotDay> days = new ArrayList<>();
        for (double ratio : ratios) {
            int number = days.size() + 1;
            LocalDate date = LocalDate.of(2026, 6, number);
            days.add(new ShotDay(unit, number, date, 5 * TB, Math.round(5 * TB * ratio), null));
        }
        return days;
    }

    /** The mean of the logs of the next so many days, as a factor. */
    private static double[] geometricMeans(RatioPaths paths, int days) {
        double[] sums = new double[REPLICATES];
        for (int day = 1; day <= days; day++) {
            double[] factors = paths.factors("main", RATIOS.length + day);
            for (int i = 0; i < REPLICATES; i++) {
                sums[i] += Math.log(factors[i]) / days;
            }
        }
        return Arrays.stream(sums).map(Math::exp).toArray();
    }

    private static double[] totals(IntToDoubleFunction plan, int days, RatioPaths paths) {
        double[] totals = new double[paths.factors("main", RATIOS.length + 1).length];
        for (int day = 1; day <= days; day++) {
            double[] factors = paths.factors("main", RATIOS.length + day);
            for (int i = 0; i < totals.length; i++) {
                totals[i] += plan.applyAsDouble(day) * factors[i];
            }
        }
        return totals;
    }

    private static void assertShareBelow(double[] sample, double bound, double chance) {
        double share =
                (double) Arrays.stream(sample).filter(value -> value <= bound).count() / sample.length;
        assertThat(share)
                .as("share below %s", bound)
                .isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / sample.length)));
    }

    @Test
    void oneDayFollowsItsClosedForm() {
        double[] factors = RatioPaths.of(learned(), SEED, REPLICATES).factors("main", 6);

        // Log-t quantiles to 50 digits.
        assertShareBelow(factors, 0.753252364063065, 0.1);
        assertShareBelow(factors, 1.06084090138900, 0.5);
        assertShareBelow(factors, 1.49403237447469, 0.9);
        assertShareBelow(factors, 1.85732553669315, 0.975);
    }

    @Test
    void theMeanOfManyDaysFollowsItsClosedForm() {
        RatioPaths paths = RatioPaths.of(learned(), SEED, REPLICATES);

        double[] five = geometricMeans(paths, 5);
        assertShareBelow(five, 0.879424519017, 0.1);
        assertShareBelow(five, 1.27968164831, 0.9);
        double[] twenty = geometricMeans(paths, 20);
        assertShareBelow(twenty, 0.921640373807, 0.1);
        assertShareBelow(twenty, 1.22106566731, 0.9);
    }

    /** Quantiles of ten days of 5 TB: by quadrature, confirmed with eight million draws. */
    @Test
    void theSumOfTenDaysIsAsWideAsTheCommonLevelMakesIt() {
        double[] totals = totals(day -> 5, 10, RatioPaths.of(learned(), SEED, REPLICATES));

        assertShareBelow(totals, 46.7024, 0.1);
        assertShareBelow(totals, 54.4909, 0.5);
        assertShareBelow(totals, 64.3228, 0.9);
        assertThat(Quantiles.interpolated(totals, 0.9)).isGreaterThan(63.5);
    }

    /** Levels drawn anew each day give 48.97 and 61.79 instead (four million draws): the bound above would tell. */
    @Test
    void levelsDrawnAnewEachDayWouldBeSeen() {
        double[] totals = new double[REPLICATES];
        for (int day = 1; day <= 10; day++) {
            double[] factors = RatioPaths.of(learned(), SEED + day, REPLICATES).factors("main", 5 + day);
            for (int i = 0; i < REPLICATES; i++) {
                totals[i] += 5 * factors[i];
            }
        }

        assertShareBelow(totals, 48.97, 0.1);
        assertShareBelow(totals, 61.79, 0.9);
        assertThat(Quantiles.interpolated(totals, 0.9)).isLessThan(63.5);
    }

    @Test
    void twoDaysAreCorrelatedByWhatTheyShare() {
        RatioPaths paths = RatioPaths.of(learned(), SEED, REPLICATES);

        assertThat(correlation(logs(paths.factors("main", 6)), logs(paths.factors("main", 17))))
                .isCloseTo(0.125, within(4 * 1.5 / Math.sqrt(REPLICATES)));
    }

    @Test
    void aWanderingLevelFollowsItsClosedForm() {
        Learned forgetful = learned(4);
        RatioPaths paths = RatioPaths.of(forgetful, SEED, REPLICATES);
        for (int days : new int[] {1, 2, 3, 8, 30}) {
            LogT expected = forgetful.unit("main").ofNextDays(days);
            double[] means = geometricMeans(paths, days);
            for (double chance : new double[] {0.1, 0.5, 0.9}) {
                assertShareBelow(means, expected.quantile(chance), chance);
            }
        }
    }

    @Test
    void aWanderingLevelWidensTheBandOfDistantDays() {
        LogT wandering = learned(6).unit("main").ofNextDays(30);
        LogT staying = learned(6).unit("main").belief().ofMean(30);

        assertThat(wandering.quantile(0.9)).isGreaterThan(1.04 * staying.quantile(0.9));
        assertThat(learned().unit("main").ofNextDays(30))
                .isEqualTo(learned().unit("main").belief().ofMean(30));
    }

    @Test
    void unitsThatBorrowFromEachOtherAreOffTogether() {
        List<ShotDay> days = new ArrayList<>(days("main", RATIOS));
        days.addAll(days("second", 0.5, 0.8));
        RatioPaths paths = RatioPaths.of(Learning.from(days, Habits.USUAL), SEED, REPLICATES);

        assertThat(correlation(logs(paths.factors("second", 3)), logs(paths.factors("third", 1))))
                .isGreaterThan(0.1);
    }

    @Test
    void theSameSeedGivesTheSameFactorsAndAnotherGivesOthers() {
        double[] factors = RatioPaths.of(learned(6), 1, 100).factors("main", 9);

        assertThat(RatioPaths.of(learned(6), 1, 100).factors("main", 9)).isEqualTo(factors);
        assertThat(RatioPaths.of(learned(6), 2, 100).factors("main", 9)).isNotEqualTo(factors);
    }

    @Test
    void anotherDayUnitOrReplicateShiftsNoOtherNumber() {
        double[] alone = RatioPaths.of(learned(6), 1, 100).factors("main", 14);
        RatioPaths paths = RatioPaths.of(learned(6), 1, 500);
        paths.factors("second", 1);
        paths.factors("main", 30);
        paths.factors("main", 6);

        assertThat(Arrays.copyOf(paths.factors("main", 14), 100)).isEqualTo(alone);
    }

    @Test
    void noDayBringsMoreThanTenTimesItsPlan() {
        Habits wild = new Habits(new Belief(1, 1, 1, 5), 6, false);

        assertThat(RatioPaths.of(Learning.from(List.of(), wild), 1, 1000).factors("main", 1))
                .contains(RatioPaths.MOST)
                .doesNotContain(0)
                .satisfies(factors -> assertThat(Arrays.stream(factors).max()).hasValue(RatioPaths.MOST));
    }

    /** One of eight days brought nothing: beta(2, 26), and by the beta-binomial ten days all bring something so often. */
    @Test
    void daysThatBringNothingComeAsOftenAsLearned() {
        List<ShotDay> days = days("main", 1, 1, 1, 1, 1, 1, 1, 0);
        RatioPaths paths =
                RatioPaths.of(Learning.from(days, new Habits(Habits.USUAL.prior(), 6, true)), SEED, REPLICATES);
        double[] zeroDays = new double[REPLICATES];
        for (int day = 9; day <= 18; day++) {
            double[] factors = paths.factors("main", day);
            for (int i = 0; i < REPLICATES; i++) {
                zeroDays[i] += factors[i] == 0 ? 1 : 0;
            }
        }

        assertShareBelow(zeroDays, 0, 0.527027027);
    }

    @Test
    void unlessAskedForNoDayBringsNothing() {
        RatioPaths paths = RatioPaths.of(Learning.from(days("main", 1, 0, 1, 0), Habits.USUAL), SEED, 1000);

        assertThat(paths.factors("main", 5)).doesNotContain(0);
    }

    /** Two plans on the same luck: measured variance ratio 64; at least 20 is asked. */
    @Test
    void plansComparedOnTheSameLuckDifferByThePlanAlone() {
        int pairs = 25;
        double[] same = new double[pairs];
        double[] other = new double[pairs];
        for (int pair = 0; pair < pairs; pair++) {
            double usual = quantileOfTwentyDays(1, 1000 + pair);
            same[pair] = quantileOfTwentyDays(1.1, 1000 + pair) - usual;
            other[pair] = quantileOfTwentyDays(1.1, 5000 + pair) - usual;
        }

        assertThat(variance(other) / variance(same)).isGreaterThan(20);
    }

    private static double quantileOfTwentyDays(double secondHalf, long seed) {
        RatioPaths paths = RatioPaths.of(learned(), seed, 4096);
        return Quantiles.interpolated(totals(day -> day > 10 ? 5 * secondHalf : 5, 20, paths), 0.9);
    }

    private static double[] logs(double[] factors) {
        return Arrays.stream(factors).map(Math::log).toArray();
    }

    private static double correlation(double[] x, double[] y) {
        double[] sums =
                IntStream.range(0, x.length).mapToDouble(i -> x[i] + y[i]).toArray();
        return (variance(sums) - variance(x) - variance(y)) / 2 / Math.sqrt(variance(x) * variance(y));
    }

    private static double variance(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        return Arrays.stream(values)
                        .map(value -> (value - mean) * (value - mean))
                        .sum()
                / (values.length - 1);
    }
}
