package rollbook.burndown;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rollbook.burndown.Played.EVERY_DAY;
import static rollbook.burndown.Played.GB;
import static rollbook.burndown.Played.date;
import static rollbook.burndown.Played.days;
import static rollbook.burndown.Played.item;
import static rollbook.burndown.Played.kept;
import static rollbook.burndown.Played.only;
import static rollbook.burndown.Played.pool;
import static rollbook.burndown.Played.show;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.ExponentialDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.learning.Belief;
import rollbook.learning.Habits;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.learning.RatioPaths;
import rollbook.learning.ShotDay;
import rollbook.learning.Streams;
import rollbook.quantity.Share;
import rollbook.testing.CheckValueFile;

/** Chances that were computed by other means than by playing shows. */
class RunOutChanceTests {
    private static final int REPLICATES = 40_000;
    private static final long SEED = 4;

    /** Days of 5 TB that vary by themselves, as a factor on 5; the level and spread of the others are known. */
    private static final Map<String, ContinuousDistribution> DAYS = Map.of(
            "normal", NormalDistribution.of(5, 1.5),
            "gamma", GammaDistribution.of(4, 1.25),
            "exponential", ExponentialDistribution.of(5));

    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    @ParameterizedTest(name = "{argumentSetName}")
    @MethodSource("lines")
    void theChancesOfHavingRunOutAreThoseComputedOtherwise(CSVRecord line) {
        PoolOutlook outlook = played(line.get("days"), tenths(line.get("plan")), Long.parseLong(line.get("room")));
        double[] chances = numbers(line.get("chances"));
        int first = Integer.parseInt(line.get("first"));
        for (int i = 0; i < chances.length; i++) {
            double chance = chances[i];
            assertThat(outlook.points().get(first - 1 + i).chanceOfHavingRunOut())
                    .as("day %d, seed %d", first + i, SEED)
                    .isEqualTo(chance, within(fourStandardErrors(chance) + Double.parseDouble(line.get("apart"))));
        }
    }

    // The same chances say where quantiles of the run-out day lie: the first day by which it is as likely as that.
    @ParameterizedTest
    @CsvSource({"0.05, 5", "0.10, 5", "0.50, 6", "0.90, 7", "0.95, 8"})
    void theRunOutDayOfAChanceIsTheFirstByWhichItIsReached(double chance, int day) {
        assertThat(played("learned", new long[] {50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50}, 32)
                        .runsOutBy(chance))
                .isEqualTo(date(day));
    }

    // Ten days of 5 TB after the five days of the worked example need 46.70, 54.49 and 64.32 TB with a chance of 10, 50
    // and 90 % (computed by numerical integration). If level and spread were drawn anew each day, it would be 48.97 and
    // 61.79. The standard error of the outer ones is 0.25 % at 10,000 replicates.
    @Test
    void theBandOfManyDaysIsAsWideAsTheLevelIsUnknown() {
        Band needed = played("learned", new long[] {50, 50, 50, 50, 50, 50, 50, 50, 50, 50}, 32)
                .neededBytes();

        assertThat(needed.p10() / (1000.0 * GB)).isEqualTo(46.7024, within(46.7024 * 0.005));
        assertThat(needed.p50() / (1000.0 * GB)).isEqualTo(54.4909, within(54.4909 * 0.003));
        assertThat(needed.p90() / (1000.0 * GB)).isEqualTo(64.3228, within(64.3228 * 0.005));
    }

    // An order that ends all want, placed at the close of a day, leaves the chance of having run out by the close of
    // the
    // day on which it comes: 2, 3 or 4 days later with chances of 0.5, 0.3 and 0.2 (mixture of the chances above).
    @ParameterizedTest
    @CsvSource({"0, 0.003863", "1, 0.032993", "2, 0.160561", "3, 0.417014", "4, 0.748725"})
    void anOrderLeavesTheChanceOfRunningOutBeforeItComes(int orderedOn, double risk) {
        LeadTime leadTime = LeadTime.of(new TreeMap<>(Map.of(2, 0.5, 3, 0.3, 4, 0.2)));
        Pool pool = pool(
                null,
                Kept.WHOLE,
                List.of(item(32_000, 0)),
                new Pool.Arrival(date(orderedOn), leadTime, EVERY_DAY, 1, 1_000_000 * GB));
        PoolOutlook outlook = only(Simulation.run(
                show(1, days(1, 12, 5000)),
                List.of(pool),
                learned(Habits.USUAL.prior()),
                Share.WHOLE,
                SEED,
                REPLICATES));

        assertThat(outlook.chanceOfRunningOut()).isEqualTo(risk, within(fourStandardErrors(risk) + 1e-5));
    }

    // With a lead time of 1 to 4 days that order may wait until the close of day 3, 2, 1 and 0 if the risk may be 5 %,
    // and no day longer; with 5 days it is too late (computed from the chances above).
    @ParameterizedTest
    @CsvSource({"1, 3", "2, 2", "3, 1", "4, 0", "5, -1"})
    void theLatestDayToOrderIsTheLastThatKeepsTheRisk(int leadTimeDays, int latest) {
        assertThat(riskOfOrderingOn(latest, leadTimeDays)).isLessThan(0.05);
        assertThat(riskOfOrderingOn(latest + 1, leadTimeDays)).isGreaterThan(0.05);
    }

    // Days that are log-normal with mu 0.05 and sigma 0.22 times their plan, 32 TB of room. Mean and standard deviation
    // of
    // the bytes by a day follow from the moments of the log-normal; a normal distribution with them is a quick guess
    // that
    // is off by as much as two hundredths (moments and guesses computed by formula, chances by convolution).
    @ParameterizedTest
    @CsvSource({
        "6, 26.925555, 2.724071, 0.03124, 0.039341",
        "7, 32.310666, 2.976349, 0.54157, 0.522962",
        "8, 37.695777, 3.208854, 0.96205, 0.970597"
    })
    void bytesHaveTheMomentsOfTheirDaysAndChancesAreNearerThanByANormal(
            int day, double meanTb, double deviationTb, double guess, double chance) {
        long[] plan = {40, 40, 50, 60, 0, 60, 50, 50, 40, 30};
        double[] sums = new double[REPLICATES];
        for (int number = 1; number <= day; number++) {
            double[] factors = factors("log-normal").factors("main", number);
            for (int i = 0; i < REPLICATES; i++) {
                sums[i] += plan[number - 1] / 10.0 * factors[i];
            }
        }
        double mean = Arrays.stream(sums).average().orElseThrow();
        double deviation = Math.sqrt(Arrays.stream(sums)
                .map(sum -> (sum - mean) * (sum - mean))
                .average()
                .orElseThrow());
        assertThat(mean).isEqualTo(meanTb, within(4 * deviationTb / Math.sqrt(REPLICATES)));
        assertThat(deviation).isEqualTo(deviationTb, within(4 * deviationTb / Math.sqrt(2.0 * REPLICATES)));

        assertThat(1 - STANDARD.cumulativeProbability((32 - meanTb) / deviationTb))
                .isEqualTo(guess, within(1e-5));
        double played = played("log-normal", plan, 32).points().get(day - 1).chanceOfHavingRunOut();
        assertThat(Math.abs(played - chance)).isLessThan(Math.abs(guess - chance));
    }

    private static double riskOfOrderingOn(int day, int leadTimeDays) {
        Pool pool = pool(
                null,
                Kept.WHOLE,
                List.of(item(32_000, 0)),
                new Pool.Arrival(date(day), LeadTime.certain(leadTimeDays), EVERY_DAY, 1, 1_000_000 * GB));
        return only(Simulation.run(
                        show(1, days(1, 12, 5000)),
                        List.of(pool),
                        learned(Habits.USUAL.prior()),
                        Share.WHOLE,
                        SEED,
                        REPLICATES))
                .chanceOfRunningOut();
    }

    private static PoolOutlook played(String kind, long[] planTenthsOfTb, long roomTb) {
        List<DayToCome> days = new ArrayList<>();
        for (int i = 0; i < planTenthsOfTb.length; i++) {
            days.addAll(days(i + 1, i + 1, planTenthsOfTb[i] * 100));
        }
        return only(Simulation.run(
                show(1, days), List.of(kept(item(roomTb * 1000, 0))), factors(kind), Share.WHOLE, SEED, REPLICATES));
    }

    private static DayFactors factors(String kind) {
        return switch (kind) {
            case "normal", "gamma", "exponential" ->
                independent(
                        uniform -> Objects.requireNonNull(DAYS.get(kind)).inverseCumulativeProbability(uniform) / 5);
            case "log-normal" ->
                independent(uniform -> Math.exp(0.05 + 0.22 * STANDARD.inverseCumulativeProbability(uniform)));
            case "learned" -> learnt(Habits.USUAL.prior());
            case "learned-from-surer-level" -> learnt(new Belief(4, 0, 2, 0.15));
            default -> throw new IllegalArgumentException(kind);
        };
    }

    private static DayFactors independent(DoubleUnaryOperator factor) {
        return (unit, day) -> Arrays.stream(new Streams(SEED).uniforms(REPLICATES, "noise", unit, day))
                .map(factor)
                .toArray();
    }

    private static DayFactors learnt(Belief prior) {
        return RatioPaths.of(learned(prior), SEED, REPLICATES)::factors;
    }

    /** Five days planned 4, 5, 4, 6, 5 TB that recorded 3.6, 6, 5, 4.8, 7 TB, none of which counts less for its age. */
    private static Learned learned(Belief prior) {
        double[] planned = {4, 5, 4, 6, 5};
        double[] recorded = {3.6, 6, 5, 4.8, 7};
        List<ShotDay> days = new ArrayList<>();
        for (int i = 0; i < planned.length; i++) {
            days.add(new ShotDay(
                    "main",
                    i - planned.length,
                    date(i - planned.length),
                    Math.round(planned[i] * 1000) * GB,
                    Math.round(recorded[i] * 1000) * GB,
                    null));
        }
        return Learning.from(days, new Habits(prior, Double.POSITIVE_INFINITY, false));
    }

    private static double fourStandardErrors(double chance) {
        return 4 * Math.sqrt(chance * (1 - chance) / REPLICATES);
    }

    static Stream<Arguments> lines() {
        return CheckValueFile.lines(RunOutChanceTests.class, "run-out-chances.csv").stream()
                .map(line -> Arguments.argumentSet(line.get("days") + " [" + line.get("source") + "]", line));
    }

    private static double[] numbers(String blankSeparated) {
        return Arrays.stream(blankSeparated.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static long[] tenths(String plan) {
        return Arrays.stream(numbers(plan))
                .mapToLong(number -> Math.round(number * 10))
                .toArray();
    }
}
