package rollbook.forecast;

import java.time.LocalDate;
import rollbook.burndown.DayRef;

/**
 * A shooting day as the forecast sees it.
 *
 * @param plannedBytes bytes planned as recorded, all cameras of the unit together
 * @param actualBytes bytes recorded: so far if the day is being shot, in all once it is wrapped
 */
record ForecastDay(String unit, int number, LocalDate date, State state, long plannedBytes, long actualBytes) {
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

    /** The day on which bytes still to come are counted: a day that should be over and isn't, is counted today. */
    LocalDate countedOn(LocalDate today) {
        return date.isBefore(today) ? today : date;
    }

    /** Bytes as recorded that this day is still expected to bring; never below zero. */
    long bytesToCome(PlanRatio ratio) {
        return isStillToCome() ? Math.max(0, ratio.applyTo(plannedBytes) - actualBytes) : 0;
    }
}
