package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.ToLongFunction;
import org.junit.jupiter.api.Test;
import rollbook.burndown.LeadTime;
import rollbook.burndown.WorkingCalendar;
import rollbook.learning.GeneratedShow;
import rollbook.learning.GeneratedShows;

/**
 * What becomes of 400 generated shows whose production does what the flags say, printed for docs/maths.md. The rule was found
 * on other shows, from seed 100001 on. System properties play others: {@code replay.seed}, {@code replay.shows}, lead time
 * {@code replay.median} and {@code replay.nine}, {@code replay.delivery} in cents.
 */
class ReplayTests {
    private static final WorkingCalendar WEEKDAYS =
            new WorkingCalendar(Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY), Set.of());

    private static final List<GeneratedShow> SHOWS =
            GeneratedShows.shows(Integer.getInteger("replay.shows", 400), Integer.getInteger("replay.seed", 1));
    private static final Offer OFFER = offer(
            LeadTime.usually(Integer.getInteger("replay.median", 3), Integer.getInteger("replay.nine", 5)),
            Integer.getInteger("replay.delivery", 4000));

    /** Items of 8 TB at 180.00. */
    private static Offer offer(LeadTime leadTime, long deliveryMinorUnits) {
        return new Offer(
                new UUID(0, 2),
                "8 TB",
                Replay.POOL,
                8_000_000_000_000L,
                1,
                18_000,
                Currency.getInstance("EUR"),
                null,
                new Supplier(
                        "supplier",
                        leadTime,
                        new SupplierDays(WEEKDAYS, LocalTime.of(16, 0), ZoneOffset.UTC, 0),
                        deliveryMinorUnits));
    }

    @Test
    void showsThatObeyTheFlagsSeldomRunDryAndCostLittleMoreThanHindsight() {
        List<Replay.Outcome> flags = SHOWS.parallelStream()
                .map(show -> Replay.play(show, OFFER, Replay::obeyFlags))
                .toList();
        print("flags", flags);
        for (GeneratedShow.Regime regime : GeneratedShow.Regime.values()) {
            print(
                    "  " + regime,
                    flags.stream()
                            .filter(outcome -> outcome.show().regime() == regime)
                            .toList());
        }
        print(
                "  40 days and more",
                flags.stream()
                        .filter(outcome -> outcome.show().days().size() >= 40)
                        .toList());
        for (int cover : new int[] {2, 4, 6, 8}) {
            List<Replay.Outcome> sheet = SHOWS.stream()
                    .map(show -> Replay.play(show, OFFER, new Spreadsheet(cover)))
                    .toList();
            print("spreadsheet, " + cover + " days of cover", sheet);
            assertThat(ranDry(sheet)).isGreaterThan(ranDry(flags));
        }
        assertThat(ranDry(flags)).isLessThanOrEqualTo(Replay.LEVEL.allowedRisk());
        // More than the 10 % that we aimed at; docs/maths.md says why. Measured 1.208 and 1.140.
        assertThat(costOverHindsight(flags)).isLessThan(1.23);
        assertThat(costWithMediaAtHand(flags)).isLessThan(1.16);
        assertThat(perShow(flags, Replay.Outcome::dueWithoutFlag)).isZero();
        assertThat(perShow(flags, Replay.Outcome::flagsOpened)).isLessThan(perShow(flags, Replay.Outcome::orders) + 1);
        assertThat(perShow(flags, Replay.Outcome::flagsUpAgainSoon)).isLessThan(0.1);
    }

    /** So what these forecasts leave to hold ready for the last days is more than the 10 % over hindsight that we aimed at. */
    @Test
    void noRuleThatKeepsTheRiskOnEveryEveningComesWithin10PercentOfHindsight() {
        List<Replay.Outcome> fewest = SHOWS.parallelStream()
                .map(show -> Replay.play(show, OFFER, Replay::fewestThatKeepTheRisk))
                .toList();
        print("fewest that keep the risk", fewest);
        assertThat(costOverHindsight(fewest)).isBetween(1.10, 1.13);
    }

    @Test
    void whoKnowsWhatADayBringsOnAverageComesWithin10PercentOfHindsight() {
        List<Replay.Outcome> knowing = SHOWS.parallelStream()
                .map(show -> Replay.play(show, OFFER, Replay::obeyFlagsKnowingTheAverage))
                .toList();
        print("flags, average known", knowing);
        assertThat(ranDry(knowing)).isLessThanOrEqualTo(Replay.LEVEL.allowedRisk());
        assertThat(costOverHindsight(knowing)).isBetween(1.05, 1.1);
    }

    private static double ranDry(List<Replay.Outcome> outcomes) {
        return (double) outcomes.stream().filter(Replay.Outcome::ranDry).count() / outcomes.size();
    }

    private static double sum(List<Replay.Outcome> outcomes, ToLongFunction<Replay.Outcome> figure) {
        return outcomes.stream().mapToLong(figure).sum();
    }

    private static double costOverHindsight(List<Replay.Outcome> outcomes) {
        return sum(outcomes, Replay.Outcome::costMinorUnits) / sum(outcomes, Replay.Outcome::hindsightMinorUnits);
    }

    private static double costWithMediaAtHand(List<Replay.Outcome> outcomes) {
        double atHand = sum(outcomes, Replay.Outcome::atHandMinorUnits);
        return (sum(outcomes, Replay.Outcome::costMinorUnits) + atHand)
                / (sum(outcomes, Replay.Outcome::hindsightMinorUnits) + atHand);
    }

    private static double perShow(List<Replay.Outcome> outcomes, ToLongFunction<Replay.Outcome> figure) {
        return sum(outcomes, figure) / outcomes.size();
    }

    private static void print(String name, List<Replay.Outcome> outcomes) {
        double[] ratios = outcomes.stream()
                .filter(outcome -> outcome.hindsightMinorUnits() > 0)
                .mapToDouble(outcome -> (double) outcome.costMinorUnits() / outcome.hindsightMinorUnits())
                .sorted()
                .toArray();
        System.out.printf(
                "%-30s shows %d, ran dry %.3f, cost/hindsight %.3f (with media at hand %.3f, median show %.3f), within"
                        + " 10 %% %.2f, orders %.2f, flags up %.2f, down by forecast %.2f, up again soon %.3f, due without"
                        + " flag %.3f%n",
                name,
                outcomes.size(),
                ranDry(outcomes),
                costOverHindsight(outcomes),
                costWithMediaAtHand(outcomes),
                ratios[ratios.length / 2],
                (double) Arrays.stream(ratios).filter(ratio -> ratio <= 1.1).count() / ratios.length,
                perShow(outcomes, Replay.Outcome::orders),
                perShow(outcomes, Replay.Outcome::flagsOpened),
                perShow(outcomes, Replay.Outcome::flagsClosedByForecast),
                perShow(outcomes, Replay.Outcome::flagsUpAgainSoon),
                perShow(outcomes, Replay.Outcome::dueWithoutFlag));
    }
}
