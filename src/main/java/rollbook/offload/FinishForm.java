package rollbook.offload;

import jakarta.validation.constraints.NotBlank;
import org.jspecify.annotations.Nullable;

/** @param size bytes read from the card as people write them, see {@link ReportedBytes} */
record FinishForm(@NotBlank @Nullable String size) {}
