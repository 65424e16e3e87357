package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * The set of changes that a budget buys best: of those with less than a minute more waiting than any, and a last card less
 * than a minute later than any of these, the one of the least cost, and then of the fewest changes.
 *
 * <p>All sets within the budget are played on a little luck, the same for all; the better quarter of them on four times
 * as much, and so on until few are left (known as successive halving, here by four).
 *
 * @param proposals none if nothing helps
 * @param difference of this very set from the plan as it is; not the sum of what each change brings alone
 */
public record BestSet(List<Proposal> proposals, long costMinorUnits, Difference difference) {
    /** Sets double with each. */
    public static final int MOST_PROPOSALS = 10;

    /** Days played in each round, of all sets together. */
    private static final int DAYS_A_ROUND = 256;

    private static final int KEEP_ONE_OF = 4;

    /**
     * @param proposals at most {@link #MOST_PROPOSALS}
     * @param weeks for which things are hired
     * @param replicates on which the result is reported, 2 or more
     */
    public static BestSet of(
            DayPlan plan, List<Proposal> proposals, long budgetMinorUnits, int weeks, long seed, int replicates) {
        Invalid.unless(proposals.size() <= MOST_PROPOSALS, "proposals", "must be %d at most".formatted(MOST_PROPOSALS));
        Invalid.unless(budgetMinorUnits >= 0, "budgetMinorUnits", "must not be negative");
        Invalid.unless(replicates > 1, "replicates", "must be 2 or more");
        List<Candidate> candidates = affordable(plan, proposals, budgetMinorUnits, weeks);
        Outcomes as = Outcomes.of(plan, seed, replicates);
        while (candidates.size() > 1) {
            int days = Math.min(replicates, Math.max(1, DAYS_A_ROUND / candidates.size()));
            List<Candidate> ranked = bestFirst(candidates.parallelStream()
                    .map(candidate -> candidate.played(seed, days))
                    .toList());
            int kept = days == replicates ? 1 : (candidates.size() + KEEP_ONE_OF - 1) / KEEP_ONE_OF;
            candidates = ranked.subList(0, kept);
        }
        Candidate best = candidates.get(0);
        return new BestSet(
                best.proposals,
                best.costMinorUnits,
                Outcomes.of(best.plan, seed, replicates).less(as));
    }

    private static List<Candidate> affordable(DayPlan plan, List<Proposal> proposals, long budget, int weeks) {
        List<Candidate> candidates = new ArrayList<>();
        candidates.add(new Candidate(List.of(), 0, plan, 0, 0));
        for (Proposal proposal : proposals) {
            for (Candidate without : List.copyOf(candidates)) {
                long cost = Math.addExact(without.costMinorUnits, proposal.costMinorUnits(weeks));
                if (cost <= budget && without.canHave(proposal)) {
                    List<Proposal> with = new ArrayList<>(without.proposals);
                    with.add(proposal);
                    candidates.add(new Candidate(
                            List.copyOf(with), cost, proposal.change().applyTo(without.plan), 0, 0));
                }
            }
        }
        return candidates;
    }

    /** Minutes are counted from the best: rounded ones would part sets that are a second apart. */
    private static List<Candidate> bestFirst(List<Candidate> played) {
        double leastWaiting = least(played.stream(), Candidate::waitingMinutes);
        double earliestLast = least(
                played.stream().filter(one -> one.waitingMinutes - leastWaiting < 1), Candidate::lastProvenMinutes);
        return played.stream()
                .sorted(Comparator.comparingDouble((Candidate one) -> Math.floor(one.waitingMinutes - leastWaiting))
                        .thenComparingDouble(one -> Math.floor(one.lastProvenMinutes - earliestLast))
                        .thenComparingLong(Candidate::costMinorUnits)
                        .thenComparingInt(one -> one.proposals.size()))
                .toList();
    }

    private static double least(Stream<Candidate> played, ToDoubleFunction<Candidate> minutes) {
        return played.mapToDouble(minutes).min().orElseThrow();
    }

    /** A set within the budget, and its means on the luck that it was played on so far. */
    private record Candidate(
            List<Proposal> proposals,
            long costMinorUnits,
            DayPlan plan,
            double waitingMinutes,
            double lastProvenMinutes) {

        boolean canHave(Proposal proposal) {
            Set<List<Object>> settled = new HashSet<>();
            proposals.forEach(one -> settled.add(one.change().settles()));
            return !settled.contains(proposal.change().settles());
        }

        Candidate played(long seed, int days) {
            double waiting = 0;
            double lastProven = 0;
            for (int day = 0; day < days; day++) {
                DayResult result = Simulation.summary(plan, Draws.of(seed, day));
                waiting += result.waitingMillis();
                lastProven += result.lastProvenMillis();
            }
            return new Candidate(
                    proposals,
                    costMinorUnits,
                    plan,
                    waiting / days / Outcomes.MILLIS_PER_MINUTE,
                    lastProven / days / Outcomes.MILLIS_PER_MINUTE);
        }
    }
}
