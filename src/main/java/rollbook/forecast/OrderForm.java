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
import java.util.UUID;
import org.springframework.format.annotation.DateTimeFormat;

/** Media that was ordered, as a person writes it. */
record OrderForm(
        @NotNull @Min(1) @Max(10_000) Integer items,

        @NotNull @Positive @DecimalMax("1000000") @Digits(integer = 7, fraction = 9)
        BigDecimal itemCapacityGb,

        @NotNull @DateTimeFormat(iso = DateTimeFormat.ISO.DATE)
        LocalDate orderedOn,

        @NotNull @DateTimeFormat(iso = DateTimeFormat.ISO.DATE)
        LocalDate expectedOn,

        @NotNull @Size(max = 200) String note) {

    private static final int GB_DIGITS = 9;

    OrderForm {
        note = note == null ? "" : note.strip();
    }

    boolean isExpectedBeforeItIsOrdered() {
        return expectedOn.isBefore(orderedOn);
    }

    MediaOrders.NewOrder order(UUID legId) {
        return new MediaOrders.NewOrder(
                legId,
                orderedOn,
                expectedOn,
                items,
                itemCapacityGb.movePointRight(GB_DIGITS).longValueExact(),
                note);
    }
}
