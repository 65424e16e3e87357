package rollbook.supplier;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.production.MediaKind;
import rollbook.web.Typed;

/** An item of a catalogue as a person writes it. */
record CatalogueForm(
        @NotNull @Nullable MediaKind kind,
        @NotBlank @Size(max = 80) String model,

        @Positive @DecimalMax("1000000") @Digits(integer = 7, fraction = 9) @Nullable
        BigDecimal capacityGb,

        @Positive @Digits(integer = 6, fraction = 6) @Nullable
        BigDecimal readMbPerSecond,

        @Positive @Digits(integer = 6, fraction = 6) @Nullable
        BigDecimal writeMbPerSecond,

        @NotNull @Min(1) @Max(1000) @Nullable Integer packSize,
        int version) {

    private static final int GB_DIGITS = 9;
    private static final int MB_DIGITS = 6;

    CatalogueForm {
        model = Typed.text(model);
    }

    static CatalogueForm blank() {
        return new CatalogueForm(MediaKind.DRIVE, "", null, null, null, 1, 0);
    }

    static CatalogueForm of(CatalogueItem item) {
        CatalogueDetails details = item.details();
        return new CatalogueForm(
                details.kind(),
                details.model(),
                figure(details.capacityBytes(), GB_DIGITS),
                figure(details.readBytesPerSecond(), MB_DIGITS),
                figure(details.writeBytesPerSecond(), MB_DIGITS),
                details.packSize(),
                item.version());
    }

    /** Looks for what a single field doesn't tell; only in a form without errors. */
    void lookFurther(BindingResult result) {
        if (!result.hasErrors() && Objects.requireNonNull(kind).hasCapacity() && capacityGb == null) {
            result.rejectValue("capacityGb", "supplier.item.capacity.missing");
        }
    }

    /** Only of a form without errors. */
    CatalogueDetails details() {
        MediaKind known = Objects.requireNonNull(kind);
        return new CatalogueDetails(
                known,
                model,
                known.hasCapacity() ? whole(capacityGb, GB_DIGITS) : null,
                whole(readMbPerSecond, MB_DIGITS),
                whole(writeMbPerSecond, MB_DIGITS),
                Objects.requireNonNull(packSize));
    }

    private static @Nullable BigDecimal figure(@Nullable Long bytes, int digits) {
        if (bytes == null) {
            return null;
        }
        BigDecimal figure = BigDecimal.valueOf(bytes).movePointLeft(digits).stripTrailingZeros();
        return figure.scale() < 0 ? figure.setScale(0) : figure;
    }

    private static @Nullable Long whole(@Nullable BigDecimal figure, int digits) {
        return figure == null ? null : figure.movePointRight(digits).longValueExact();
    }
}
