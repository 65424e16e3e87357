package rollbook.scenario;

import org.jspecify.annotations.Nullable;

/**
 * Things of a kind that a scenario adds.
 *
 * @param what which of them: the model of a card, the leg of a drive; empty where there is no choice
 * @param hireWeeks for how long they are hired; null if they are bought, and of proposals from before it was kept
 * @param costMinorUnits of all of them together, or null if nobody said what they cost
 */
record ProposalLine(
        Kind kind,
        String what,
        int count,
        @Nullable Integer hireWeeks,
        @Nullable Long costMinorUnits) {
    enum Kind {
        CARDS,
        READERS,
        ADAPTERS,
        DRIVES
    }
}
