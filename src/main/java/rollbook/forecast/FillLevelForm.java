package rollbook.forecast;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;

/** How full an item may get, as a person writes it. */
record FillLevelForm(@NotNull @Min(1) @Max(100) Integer percent, int version) {}
