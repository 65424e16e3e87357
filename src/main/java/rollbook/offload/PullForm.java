package rollbook.offload;

import jakarta.validation.constraints.NotBlank;
import org.jspecify.annotations.Nullable;

/** @param minutes as people write them, see {@link RecordedMinutes} */
record PullForm(@NotBlank @Nullable String minutes) {}
