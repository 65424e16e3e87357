package rollbook.report;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** @param sha256 of the facts that the page showed */
record SignForm(
        @Size(max = 500) @Nullable String remark,
        @NotNull @Nullable String sha256) {}
