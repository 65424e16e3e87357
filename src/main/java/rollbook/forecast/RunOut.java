package rollbook.forecast;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;

/**
 * The first day on which the pool has less room than it needs. To need exactly what is left isn't running out.
 *
 * @param date the date on which it happens, today at the earliest
 * @param day the shooting day whose bytes don't fit, null if nothing is shot on that date
 */
public record RunOut(LocalDate date, @Nullable DayRef day, Cause cause) {
    public enum Cause {
        /** What is recorded already doesn't fit. */
        WAITING,
        /** The day's bytes don't fit. */
        DEMAND,
        /** A hired item leaves, and what is on it finds no room on the rest of the pool. */
        HIRED_ITEM_LEAVES
    }
}
