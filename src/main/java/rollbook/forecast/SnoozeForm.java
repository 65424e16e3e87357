package rollbook.forecast;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;

/**
 * Until when nobody has to see to a flag, and why, as a person writes it.
 *
 * @param lastAct the last act of the flag that the person has seen
 */
record SnoozeForm(
        @NotBlank @Size(max = 200) String reason, @NotNull LocalDate until, int lastAct) {}
