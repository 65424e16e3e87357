package rollbook.forecast;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Media that was ordered, as a person writes it. */
record OrderForm(
        @NotNull @Min(1) @Max(10_000) @Nullable Integer items,

        @NotNull @Positive @DecimalMax("1000000") @Digits(integer = 7, fraction = 9) @Nullable
        BigDecimal itemCapacityGb,

        @NotNull LocalDate orderedOn,
        @NotNull @Nullable LocalDate expectedOn,

        @NotNull @Size(max = 200) String note) {

    private static final int GB_DIGITS = 9;

    OrderForm {
        note = note == null ? "" : note.strip();
    }

    /** Only of a form without errors. */
    boolean isExpectedBeforeItIsOrdered() {
        return Objects.requireNonNull(expectedOn).isBefore(orderedOn);
    }

    /** Only of a form without errors. */
    MediaOrders.NewOrder order(UUID legId) {
        return new MediaOrders.NewOrder(
                legId,
                orderedOn,
                Objects.requireNonNull(expectedOn),
                Objects.requireNonNull(items),
                Objects.requireNonNull(itemCapacityGb).movePointRight(GB_DIGITS).longValueExact(),
                note);
    }
}
