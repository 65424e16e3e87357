package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.ordering.Flag;

/**
 * The newest flag of a pool, with all that became of it.
 *
 * @param acts in their order; the last one says how the flag stands
 */
record PoolFlag(
        UUID id, UUID legId, LocalDate openedOn, @Nullable LocalDate calmSince, List<Act> acts) {
    enum Kind {
        OPENED(Flag.State.OPEN),
        ACKNOWLEDGED(Flag.State.ACKNOWLEDGED),
        SNOOZED(Flag.State.SNOOZED),
        /** A person took back that it was acknowledged or snoozed. */
        REOPENED(Flag.State.OPEN),
        /** The date of a snooze came. */
        WOKEN(Flag.State.OPEN),
        CLOSED_BY_FORECAST(Flag.State.CLOSED_BY_FORECAST),
        CLOSED_BY_ORDER(Flag.State.CLOSED_BY_ORDER);

        final Flag.State state;

        Kind(Flag.State state) {
            this.state = state;
        }
    }

    /** @param byName empty if no person did it */
    record Act(
            int number,
            Instant at,
            Kind kind,
            String byName,
            String reason,
            @Nullable LocalDate until) {}

    PoolFlag {
        acts = List.copyOf(acts);
    }

    Act last() {
        return acts.get(acts.size() - 1);
    }

    Flag flag() {
        return new Flag(last().kind().state, openedOn, last().until(), calmSince);
    }

    Flag.State state() {
        return last().kind().state;
    }

    boolean isOpen() {
        return !state().isClosed();
    }
}
