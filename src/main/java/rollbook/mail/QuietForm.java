package rollbook.mail;

import jakarta.validation.constraints.NotBlank;
import java.time.LocalTime;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * @param from null together with {@code until} for no quiet hours
 * @param wakes whether alarms come all the same
 * @param version of what the person saw; 0 if there was nothing
 */
record QuietForm(
        @NotBlank String zone,
        @Nullable LocalTime from,
        @Nullable LocalTime until,
        boolean wakes,
        int version) {
    QuietForm {
        zone = Objects.requireNonNullElse(zone, "");
    }
}
