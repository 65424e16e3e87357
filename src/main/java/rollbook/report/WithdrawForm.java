package rollbook.report;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** @param reason why a person takes their signature back */
record WithdrawForm(@NotBlank @Size(max = 500) @Nullable String reason) {}
