package rollbook.burndown;

import java.time.LocalDate;

/**
 * A shooting day that still has bytes to bring: one that is planned, or is being shot.
 *
 * @param countedOn the date on which they are counted: the day's own, or today if it should be over and isn't
 * @param plannedBytes bytes planned as recorded, all cameras of the unit together
 * @param recordedBytes bytes recorded so far
 */
public record DayToCome(DayRef day, LocalDate countedOn, long plannedBytes, long recordedBytes) {
    public DayToCome {
        if (plannedBytes < 0 || recordedBytes < 0) {
            throw new IllegalArgumentException("%s: planned %d and recorded %d bytes, neither may be below zero"
                    .formatted(day, plannedBytes, recordedBytes));
        }
    }
}
