package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
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

    @Test
    void tenProposalsAreTheMost() {
        List<Proposal> many = Collections.nCopies(11, FASTER_WAY);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BestSet.of(TestDay.ofOneCard().plan(), many, 0, 1, SEED, 4))
                .withMessageContaining("proposals");
    }

    /** Without chance, so that each set can be tried by itself: no other one within the budget is better. */
    @RepeatedTest(10)
    void noSetWithinTheBudgetIsBetterThanTheOneFound(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        Random random = new Random(seed);
        DayPlan plan = withoutChance(random);
        List<Proposal> proposals = proposals(plan, random);
        long budget = random.nextInt(0, 400);

        BestSet best = BestSet.of(plan, proposals, budget, 1, seed, 8);

        assertThat(best.costMinorUnits()).isLessThanOrEqualTo(budget);
        assertThat(figures(plan, best.proposals()))
                .as("seed %d: %s", seed, best.proposals())
                .isEqualTo(bestByTrying(plan, proposals, budget));
    }

    private static List<Long> bestByTrying(DayPlan plan, List<Proposal> proposals, long budget) {
        List<List<Long>> all = new ArrayList<>();
        for (int set = 0; set < 1 << proposals.size(); set++) {
            List<Proposal> chosen = new ArrayList<>();
            for (int i = 0; i < proposals.size(); i++) {
                if ((set >> i & 1) == 1) {
                    chosen.add(proposals.get(i));
                }
            }
            List<Long> figures = figures(plan, chosen);
            if (figures.get(2) <= budget) {
                all.add(figures);
            }
        }
        return all.stream()
                .min(Comparator.<List<Long>>comparingLong(one -> one.get(0))
                        .thenComparingLong(one -> one.get(1))
                        .thenComparingLong(one -> one.get(2)))
                .orElseThrow();
    }

    /** Minutes waited, the minute of the last card, cost. */
    private static List<Long> figures(DayPlan plan, List<Proposal> chosen) {
        DayPlan changed = plan;
        long cost = 0;
        for (Proposal proposal : chosen) {
            changed = proposal.change().applyTo(changed);
            cost += proposal.costMinorUnits(1);
        }
        DayResult day = Simulation.summary(changed, Draws.MEANS);
        return List.of(Math.round(day.waitingMillis() / 60_000.0), Math.round(day.lastProvenMillis() / 60_000.0), cost);
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
