package rollbook.forecast;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalTime;
import java.util.Currency;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Where more media for a leg comes from, as a person writes it. */
record SupplyForm(
        @NotNull @Positive @DecimalMax("1000000") @Digits(integer = 7, fraction = 9)
        BigDecimal itemCapacityGb,

        @NotNull @Min(1) @Max(1000) Integer packSize,

        @NotNull @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal itemPrice,

        @NotNull @Size(max = 80) String supplier,
        @NotNull @Min(0) @Max(250) Integer leadTimeWorkingDays,
        @NotNull @Min(0) @Max(250) Integer slowLeadTimeWorkingDays,
        @Nullable String country,

        @NotNull LocalTime orderCutOff,
        @NotNull DeliveredTo deliveredTo,

        @NotNull @PositiveOrZero @Digits(integer = 9, fraction = 3)
        BigDecimal deliveryPrice,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal hireWeekPrice,

        @Min(1) @Max(250) @Nullable Integer hireMinimumWeeks,
        int version) {

    private static final int GB_DIGITS = 9;

    SupplyForm {
        supplier = supplier == null ? "" : supplier.strip();
    }

    static SupplyForm of(LegSupply supply, Currency currency) {
        LegSupply.Source source = supply.source();
        LegSupply.HireTerms hire = supply.hire();
        return new SupplyForm(
                gigabytes(supply.itemCapacityBytes()),
                supply.packSize(),
                // Nothing costs nothing: before it is kept it means that nobody knows.
                supply.version() == LegSupply.NOT_KEPT && supply.itemPriceMinorUnits() == 0
                        ? null
                        : price(supply.itemPriceMinorUnits(), currency),
                source.name(),
                source.leadTimeWorkingDays(),
                source.slowLeadTimeWorkingDays(),
                source.country(),
                source.orderCutOff(),
                source.deliveredTo(),
                price(source.deliveryMinorUnits(), currency),
                hire == null ? null : price(hire.weekMinorUnits(), currency),
                hire == null ? null : hire.minimumWeeks(),
                supply.version());
    }

    /** Whether a price has parts that the currency doesn't have. */
    static boolean isTooFine(@Nullable BigDecimal price, Currency currency) {
        return price != null && price.stripTrailingZeros().scale() > currency.getDefaultFractionDigits();
    }

    /** Whether the lead times are the wrong way round. */
    boolean isSlowFasterThanUsual() {
        return slowLeadTimeWorkingDays < leadTimeWorkingDays;
    }

    /** Whether one half of the hire's terms is there and the other isn't. */
    boolean isHireHalfSaid() {
        return Stream.of(hireWeekPrice, hireMinimumWeeks)
                        .filter(Objects::isNull)
                        .count()
                == 1;
    }

    LegSupply supply(UUID legId, Currency currency) {
        return new LegSupply(
                legId,
                itemCapacityGb.movePointRight(GB_DIGITS).longValueExact(),
                packSize,
                minorUnits(Objects.requireNonNull(itemPrice), currency),
                new LegSupply.Source(
                        supplier,
                        leadTimeWorkingDays,
                        slowLeadTimeWorkingDays,
                        country == null || country.isEmpty() ? null : country,
                        orderCutOff,
                        deliveredTo,
                        minorUnits(deliveryPrice, currency)),
                hireWeekPrice == null || hireMinimumWeeks == null
                        ? null
                        : new LegSupply.HireTerms(minorUnits(hireWeekPrice, currency), hireMinimumWeeks),
                version);
    }

    private static BigDecimal gigabytes(long bytes) {
        BigDecimal gigabytes =
                BigDecimal.valueOf(bytes).movePointLeft(GB_DIGITS).stripTrailingZeros();
        return gigabytes.scale() < 0 ? gigabytes.setScale(0) : gigabytes;
    }

    private static BigDecimal price(long minorUnits, Currency currency) {
        return BigDecimal.valueOf(minorUnits, currency.getDefaultFractionDigits());
    }

    private static long minorUnits(BigDecimal price, Currency currency) {
        return price.movePointRight(currency.getDefaultFractionDigits()).longValueExact();
    }
}
