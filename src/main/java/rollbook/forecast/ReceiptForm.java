package rollbook.forecast;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;

/**
 * How many items of an order came and when, as a person writes it.
 *
 * @param steps of the order that the person has seen
 */
record ReceiptForm(
        @NotNull @Min(1) @Max(10_000) Integer items,
        @NotNull LocalDate cameOn,
        int steps) {}
