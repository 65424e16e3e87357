package rollbook.turnaround;

import java.util.Comparator;
import java.util.List;

/**
 * What each change alone would bring, all played on the same luck as the plan itself.
 *
 * @param effects what helps most first: less waiting, then an earlier last card, both to the minute, then less cost; then
 *     what may bring nothing, and at last what does harm
 */
public record Changes(List<Effect> effects) {

    /** @param difference with the change less without it */
    public record Effect(Proposal proposal, long costMinorUnits, Difference difference) {}

    private static final Comparator<Effect> MOST_HELP_FIRST = Comparator.comparing(
                    (Effect effect) -> !effect.difference().helps())
            .thenComparing(effect -> !effect.difference().mayBeNothing())
            .thenComparingLong(
                    effect -> Math.round(effect.difference().waitingMinutes().value()))
            .thenComparingLong(
                    effect -> Math.round(effect.difference().lastProvenMinutes().value()))
            .thenComparingLong(Effect::costMinorUnits);

    /**
     * @param weeks for which things are hired
     * @param replicates 2 or more
     */
    public static Changes of(DayPlan plan, List<Proposal> proposals, int weeks, long seed, int replicates) {
        Invalid.unless(replicates > 1, "replicates", "must be 2 or more");
        Outcomes as = Outcomes.of(plan, seed, replicates);
        return new Changes(proposals.stream()
                .map(proposal -> new Effect(
                        proposal,
                        proposal.costMinorUnits(weeks),
                        Outcomes.of(proposal.change().applyTo(plan), seed, replicates)
                                .less(as)))
                .sorted(MOST_HELP_FIRST)
                .toList());
    }
}
