package rollbook.offload;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** @param version of the roll when its page was opened */
record CorrectForm(
        @NotBlank @Pattern(regexp = LoadForm.CODE) @Nullable String code,
        @NotNull @Nullable UUID day,
        @NotNull @Nullable UUID format,
        @NotBlank @Nullable String minutes,
        @Size(max = 1000) @Nullable String note,
        int version) {

    static CorrectForm of(Roll roll) {
        return new CorrectForm(
                roll.code(),
                roll.dayId(),
                roll.formatId(),
                RecordedMinutes.format(roll.minutes()),
                roll.note(),
                roll.version());
    }
}
