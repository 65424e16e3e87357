package rollbook.purchase;

import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** That an order was placed, as a person writes it. */
record PlaceForm(
        @NotNull @Nullable LocalDate orderedOn,
        @NotNull @Nullable LocalDate expectedOn,
        int version) {}
