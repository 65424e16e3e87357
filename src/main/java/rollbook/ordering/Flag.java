package rollbook.ordering;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * A sign that something has to be ordered for a pool.
 *
 * @param openedOn the date of the forecast that raised it
 * @param snoozedUntil the date on which it is open again; null unless it is snoozed
 * @param calmSince the date since which forecasts see no need for it, null if the last one did
 */
public record Flag(
        State state,
        LocalDate openedOn,
        @Nullable LocalDate snoozedUntil,
        @Nullable LocalDate calmSince) {

    public enum State {
        /** Somebody has to see to it. */
        OPEN,
        /** Somebody sees to it. */
        ACKNOWLEDGED,
        /** Nobody has to, for a stated reason, until a date. */
        SNOOZED,
        /** What was needed is ordered. */
        CLOSED_BY_ORDER,
        /** Forecasts no longer see a need. */
        CLOSED_BY_FORECAST;

        public boolean isClosed() {
            return this == CLOSED_BY_ORDER || this == CLOSED_BY_FORECAST;
        }
    }

    public Flag {
        if ((state == State.SNOOZED) != (snoozedUntil != null)) {
            throw new IllegalArgumentException(state + " until " + snoozedUntil);
        }
    }

    static Flag openedOn(LocalDate date) {
        return new Flag(State.OPEN, date, null, null);
    }

    /** @throws IllegalStateException if it is closed */
    public Flag acknowledged() {
        return in(State.ACKNOWLEDGED, null);
    }

    /** @throws IllegalStateException if it is closed */
    public Flag snoozedUntil(LocalDate date) {
        return in(State.SNOOZED, date);
    }

    /**
     * Takes back that it was acknowledged or snoozed.
     *
     * @throws IllegalStateException if it is closed
     */
    public Flag reopened() {
        return in(State.OPEN, null);
    }

    /** @throws IllegalStateException if it is closed already */
    public Flag ordered() {
        return in(State.CLOSED_BY_ORDER, null);
    }

    Flag closed(State how) {
        return in(how, null);
    }

    private Flag in(State next, @Nullable LocalDate until) {
        if (state.isClosed()) {
            throw new IllegalStateException("A flag that is " + state);
        }
        return new Flag(next, openedOn, until, calmSince);
    }

    /** Open again if it was snoozed until this date or before. */
    Flag wokenOn(LocalDate today) {
        return snoozedUntil != null && !snoozedUntil.isAfter(today) ? reopened() : this;
    }

    Flag withoutCalm() {
        return new Flag(state, openedOn, snoozedUntil, null);
    }

    Flag calmOn(LocalDate today) {
        return calmSince == null ? new Flag(state, openedOn, snoozedUntil, today) : this;
    }

    long calmDatesOn(LocalDate today) {
        return calmSince == null ? 0 : ChronoUnit.DAYS.between(calmSince, today) + 1;
    }
}
