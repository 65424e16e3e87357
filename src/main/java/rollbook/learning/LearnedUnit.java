package rollbook.learning;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one unit's days.
 *
 * @param belief about recorded / planned bytes of the next day
 * @param wander of the level
 * @param lastDayNumber of the last wrapped day; 0 before any
 * @param borrowed how much of the level comes from elsewhere, 0 to 1: from the other units, or from the prior where
 *     there are none
 * @param days of its own that taught a ratio, merged ones as one
 * @param effectiveDays the same, older days counting less
 * @param unplannedBytesPerDay recorded on days with nothing planned, over all its days; no forecast adds them
 * @param apart minutes and bytes per minute; null unless every day that taught has minutes
 */
public record LearnedUnit(
        String unit,
        Belief belief,
        Wander wander,
        int lastDayNumber,
        double borrowed,
        boolean borrowedFromUnits,
        int days,
        double effectiveDays,
        double unplannedBytesPerDay,
        @Nullable Apart apart,
        List<Remark> remarks) {

    /** Shooting more, and shooting fatter: recorded / planned minutes, and the same of bytes per minute. */
    public record Apart(Belief minutes, Belief bytesPerMinute) {}

    public LearnedUnit {
        remarks = List.copyOf(remarks);
    }

    /** By which factor the plan of the next so many days is to be multiplied: their geometric mean. */
    public LogT ofNextDays(int days) {
        return belief.ofMean(days, wander.partOfMean(days));
    }
}
