package rollbook.offload;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A blank card goes into a camera. An empty code stands for the camera's next one. */
record LoadForm(
        @NotNull @Nullable UUID camera,
        @NotBlank @Nullable String card,
        @Pattern(regexp = CODE) @Nullable String code,
        @NotNull @Nullable UUID day,
        @NotNull @Nullable UUID format) {
    /** Codes name folders and stand on labels, so they keep to what every file system and scanner takes. */
    static final String CODE = "\\s*|\\s*[A-Za-z0-9][A-Za-z0-9_-]{0,29}\\s*";
}
