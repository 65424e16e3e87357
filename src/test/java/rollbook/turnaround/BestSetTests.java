package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class BestSetTests {
    private static final long SEED = 7;
    private static final Proposal FASTER_WAY =
            new Proposal(new Change.OtherWay("READER", new Way("CARD", null, TestDay.megabytes(200))), 100, 0);
    private static final Proposal FASTER_DRIVE =
            new Proposal(new Change.OtherSpeed("DRIVE", TestDay.megabytes(200), TestDay.megabytes(200)), 0, 50);

    /** 60 GB at 100 MB/s take 10 minutes while the reader or the drive does no more, and 5 if both do 200. */
    @Test
    void whatHelpsOnlyTogetherIsFoundTogether() {
        TestDay day = TestDay.ofOneCard();
        day.destinations = List.of(TestDay.destination("DRIVE", 100));

        BestSet both = BestSet.of(day.plan(), List.of(FASTER_WAY, FASTER_DRIVE), 200, 2, SEED, 4);

        assertThat(both.proposals()).containsExactly(FASTER_WAY, FASTER_DRIVE);
        assertThat(both.costMinorUnits()).isEqualTo(200);
        assertThat(both.difference().lastProvenMinutes()).isEqualTo(new Estimate(-5, -5, -5));
        BestSet poor = BestSet.of(day.plan(), List.of(FASTER_WAY, FASTER_DRIVE), 199, 2, SEED, 4);
        assertThat(poor.proposals()).as("one alone brings nothing").isEmpty();
        assertThat(poor.costMinorUnits()).isZero();
        assertThat(poor.difference().mayBeNothing()).isTrue();
    }

    @Test
    void ofTwoThatSettleTheSameOneIsTaken() {
        Proposal fastest =
                new Proposal(new Change.OtherWay("READER", new Way("CARD", null, TestDay.megabytes(300))), 100, 0);

        BestSet best = BestSet.of(TestDay.ofOneCard().plan(), List.of(FASTER_WAY, fastest), 1_000, 1, SEED, 4);

        assertThat(best.proposals()).containsExactly(fastest);
    }

    /** 480 GB take 80 minutes; a reader that is a hundredth faster saves 48 seconds. */
    @Test
    void secondsAreNotPaidFor() {
        TestDay day = TestDay.ofOneCard();
        day.cardBytes = 480 * TestDay.GB;
        day.wrapMillis = 80 * TestDay.MINUTE;
        Proposal hardlyFaster =
                new Proposal(new Change.OtherWay("READER", new Way("CARD", null, TestDay.megabytes(101))), 1, 0);

        assertThat(BestSet.of(day.plan(), List.of(hardlyFaster), 1, 1, SEED, 4).proposals())
                .isEmpty();
    }

    @Test
    void tenProposalsAreTheMost() {
        List<Proposal> many = Collections.nCopies(11, FASTER_WAY);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BestSet.of(TestDay.ofOneCard().plan(), many, 0, 1, SEED, 4))
                .withMessageContaining("proposals");
    }

    /** Without chance, so that each set can be tried by itself: no other one within the budget is better. */
    @RepeatedTest(10)
    void noSetWithinTheBudgetIsAMinuteBetterAndNoneAsGoodIsCheaper(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        Random random = new Random(seed);
        DayPlan plan = withoutChance(random);
        List<Proposal> proposals = proposals(plan, random);
        long budget = random.nextInt(0, 400);

        BestSet best = BestSet.of(plan, proposals, budget, 1, seed, 8);

        Figures found = figures(plan, best.proposals());
        List<Figures> all = sets(proposals).stream()
                .map(set -> figures(plan, set))
                .filter(set -> set.cost <= budget)
                .toList();
        double leastWaiting = all.stream().mapToDouble(Figures::waiting).min().orElseThrow();
        List<Figures> waitLittle =
                all.stream().filter(set -> set.waiting < leastWaiting + 1).toList();
        double earliest =
                waitLittle.stream().mapToDouble(Figures::lastProven).min().orElseThrow();
        List<Figures> good =
                waitLittle.stream().filter(set -> set.lastProven < earliest + 1).toList();
        assertThat(good).as("seed %d: %s", seed, best.proposals()).contains(found);
        assertThat(best.costMinorUnits())
                .as("seed %d: %s", seed, best.proposals())
                .isEqualTo(found.cost)
                .isEqualTo(good.stream().mapToLong(Figures::cost).min().orElseThrow());
    }

    private static List<List<Proposal>> sets(List<Proposal> proposals) {
        List<List<Proposal>> sets = new ArrayList<>();
        for (int set = 0; set < 1 << proposals.size(); set++) {
            List<Proposal> chosen = new ArrayList<>();
            for (int i = 0; i < proposals.size(); i++) {
                if ((set >> i & 1) == 1) {
                    chosen.add(proposals.get(i));
                }
            }
            sets.add(chosen);
        }
        return sets;
    }

    /** In minutes. */
    private record Figures(double waiting, double lastProven, long cost) {}

    private static Figures figures(DayPlan plan, List<Proposal> chosen) {
        DayPlan changed = plan;
        long cost = 0;
        for (Proposal proposal : chosen) {
            changed = proposal.change().applyTo(changed);
            cost += proposal.costMinorUnits(1);
        }
        DayResult day = Simulation.summary(changed, Draws.MEANS);
        return new Figures(day.waitingMillis() / 60_000.0, day.lastProvenMillis() / 60_000.0, cost);
    }

    private static DayPlan withoutChance(Random random) {
        TestDay day = new TestDay();
        day.wrapMillis = 3 * TestDay.HOUR;
        day.cards = random.nextInt(2, 7);
        day.clearing = Delay.fixed(random.nextInt(0, 20) * TestDay.MINUTE);
        day.readers = List.of(TestDay.reader("READER", random.nextInt(60, 160)));
        day.destinations = List.of(TestDay.destination("DRIVE", random.nextInt(60, 160)));
        day.takes = Takes.of(30, 5, Spread.NONE);
        return day.plan();
    }

    private static List<Proposal> proposals(DayPlan plan, Random random) {
        List<Change> changes = List.of(
                new Change.MoreCards("CARD", 1),
                new Change.MoreCards("CARD", 2),
                Change.OneMoreReader.likeTheFastest(plan.stations().get(0)),
                new Change.OtherWay("READER", new Way("CARD", null, TestDay.megabytes(200))),
                new Change.OtherSpeed("DRIVE", TestDay.megabytes(250), TestDay.megabytes(250)),
                new Change.EncodingOn("DRIVE", new Encoder.ByBytes(TestDay.megabytes(180)), 0.6));
        return changes.stream()
                .map(change -> new Proposal(change, random.nextInt(0, 200), random.nextInt(0, 50)))
                .toList();
    }
}
