package rollbook.schedule;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A whole schedule as it is entered; the minutes are read beside it. */
record EntryForm(
        @NotNull @Nullable LocalDate startDate,
        @NotEmpty @Nullable Set<DayOfWeek> weekdays,
        @NotNull @Min(1) @Max(400) @Nullable Integer days,
        @NotNull @Min(1) @Max(9000) @Nullable Integer firstNumber,
        boolean skipHolidays) {}
