package rollbook.scenario;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What somebody proposes to order, from a scenario.
 *
 * @param scenarioName as it was called then
 * @param costMinorUnits in all, or null if the cost of a part isn't known
 * @param reason why it was withdrawn; empty before
 * @param version for noticing that somebody else answered it meanwhile
 */
record OrderProposal(
        UUID id,
        UUID scenarioId,
        String scenarioName,
        List<ProposalLine> lines,
        @Nullable Long costMinorUnits,
        LocalDate neededBy,
        State state,
        String reason,
        Instant proposedAt,
        String proposedByName,
        int version) {

    /** What became of it. */
    enum State {
        PROPOSED,
        TAKEN_UP,
        WITHDRAWN
    }
}
