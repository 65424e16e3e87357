package rollbook.schedule;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** One day as it is added or changed; the minutes are read beside it. */
record DayForm(
        @NotNull @Min(1) @Max(9999) @Nullable Integer number,
        @NotNull @Nullable LocalDate date,
        @Size(max = 500) @Nullable String note,
        int version) {

    String plainNote() {
        return note == null ? "" : note.strip();
    }
}
