package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The set of changes that a budget buys best: least waiting, then the earliest last card, both to the minute, then the
 * least cost, then the fewest changes.
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
    private static final int DAYS_A_ROUND = 512;

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
            List<Candidate> ranked = candidates.parallelStream()
                    .map(candidate -> candidate.played(seed, days))
                    .sorted(BEST_FIRST)
                    .toList();
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

    private static final Comparator<Candidate> BEST_FIRST = Comparator.comparingLong(Candidate::waitingMinutes)
            .thenComparingLong(Candidate::lastProvenMinutes)
            .thenComparingLong(Candidate::costMinorUnits)
            .thenComparingInt(candidate -> candidate.proposals.size());

    /** A set within the budget, and its means on the luck that it was played on so far. */
    private record Candidate(
            List<Proposal> proposals, long costMinorUnits, DayPlan plan, long waitingMinutes, long lastProvenMinutes) {

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
                    Math.round(waiting / days / Outcomes.MILLIS_PER_MINUTE),
                    Math.round(lastProven / days / Outcomes.MILLIS_PER_MINUTE));
        }
    }
}
