package rollbook.forecast;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;
import rollbook.learning.ShotDay;

/**
 * A shooting day as the forecast sees it.
 *
 * @param plannedBytes bytes planned as recorded, all cameras of the unit together; of a day that began, as planned then
 * @param actualBytes bytes recorded: so far if the day is being shot, in all once it is wrapped
 * @param complete whether the bytes of every roll of the day are known
 * @param minutes planned, and recorded so far; null where a roll's aren't known
 */
record ForecastDay(
        String unit,
        int number,
        LocalDate date,
        State state,
        long plannedBytes,
        long actualBytes,
        boolean complete,
        ShotDay.@Nullable Minutes minutes) {
    enum State {
        PLANNED,
        SHOOTING,
        WRAPPED,
        CANCELLED
    }

    ForecastDay {
        if (plannedBytes < 0 || actualBytes < 0) {
            throw new IllegalArgumentException("%s day %d: planned %d and actual %d bytes, neither may be below zero"
                    .formatted(unit, number, plannedBytes, actualBytes));
        }
    }

    DayRef ref() {
        return new DayRef(unit, number, date);
    }

    boolean isStillToCome() {
        return state == State.PLANNED || state == State.SHOOTING;
    }

    /** Whether something can be learned from it: late data must not pass for a small day. */
    boolean isShot() {
        return state == State.WRAPPED && complete;
    }

    boolean is(DayRef day) {
        return unit.equals(day.unit()) && number == day.number();
    }
}
