package rollbook.offload;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import rollbook.turnaround.MeasuredRates;
import rollbook.turnaround.MeasuredRates.Expected;
import rollbook.turnaround.PastSession;

/**
 * What the sessions of a show teach.
 *
 * @param sessions by id, those that still run or broke off among them
 */
public record LearnedOffloads(MeasuredRates rates, Map<UUID, PastSession> sessions) {

    /** What such a session reaches alone; empty if nothing is known, or it is too long ago to be among the sessions. */
    Optional<Expected> expected(UUID sessionId) {
        return Optional.ofNullable(sessions.get(sessionId))
                .flatMap(session -> rates.expected(
                        session.way(),
                        session.written().stream()
                                .map(PastSession.Written::kind)
                                .toList()));
    }
}
