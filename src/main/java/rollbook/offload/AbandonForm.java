package rollbook.offload;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** @param reason why the session broke off */
record AbandonForm(@NotBlank @Size(max = 1000) @Nullable String reason) {}
