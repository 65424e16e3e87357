package rollbook.learning;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A wrapped day all of whose rolls are in.
 *
 * @param number of the day within its unit
 * @param plannedBytes as the plan stood when the day began
 * @param minutes planned and recorded, null where a roll's minutes aren't known
 */
public record ShotDay(
        String unit,
        int number,
        LocalDate date,
        long plannedBytes,
        long actualBytes,
        @Nullable Minutes minutes) {
    public ShotDay {
        if (plannedBytes < 0 || actualBytes < 0) {
            throw new IllegalArgumentException("Less than no bytes on day %d of %s".formatted(number, unit));
        }
    }

    /** Minutes of all cameras together. */
    public record Minutes(double planned, double actual) {
        Minutes plus(Minutes other) {
            return new Minutes(planned + other.planned, actual + other.actual);
        }
    }
}
