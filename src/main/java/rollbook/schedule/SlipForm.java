package rollbook.schedule;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotEmpty;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How a day slips: to a date, or by a number of shooting days.
 *
 * @param seen the fingerprint of the moves that were shown
 */
record SlipForm(
        @Nullable LocalDate date,
        @Min(1) @Max(400) @Nullable Integer steps,
        @NotEmpty @Nullable Set<DayOfWeek> weekdays,
        boolean skipHolidays,
        @Nullable String seen) {}
