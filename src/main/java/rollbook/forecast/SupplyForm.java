package rollbook.forecast;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.PositiveOrZero;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.MediaItem;
import rollbook.inventory.Ownership;
import rollbook.production.MediaKind;

/** Where more media for a leg comes from, as a person writes it. */
record SupplyForm(
        @NotNull @Positive @DecimalMax("1000000") @Digits(integer = 7, fraction = 9)
        BigDecimal itemCapacityGb,

        @NotNull @Min(1) @Max(1000) Integer packSize,
        @NotNull @Min(0) @Max(250) Integer leadTimeWorkingDays,
        @NotNull @Min(0) @Max(250) Integer safetyWorkingDays,

        @NotNull @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal itemPrice,

        int version) {

    private static final int GB_DIGITS = 9;
    /** Common practice, no source: delivery within a working week, two days of slack. */
    private static final int USUAL_LEAD_TIME = 5;

    private static final int USUAL_SAFETY = 2;

    static SupplyForm of(LegSupply supply, Currency currency) {
        return new SupplyForm(
                gigabytes(supply.itemCapacityBytes()),
                supply.packSize(),
                supply.leadTimeWorkingDays(),
                supply.safetyWorkingDays(),
                price(supply.itemPriceMinorUnits(), currency),
                supply.version());
    }

    /** What is likely, judged by what the pool has already. */
    static SupplyForm likely(MediaKind kind, List<MediaItem> pool, Currency currency) {
        return new SupplyForm(
                gigabytes(Objects.requireNonNullElse(
                        commonest(pool, MediaItem::capacityBytes), usualCapacityBytes(kind))),
                1,
                USUAL_LEAD_TIME,
                USUAL_SAFETY,
                likelyPrice(pool, currency),
                LegSupply.NOT_KEPT);
    }

    private static @Nullable BigDecimal likelyPrice(List<MediaItem> pool, Currency currency) {
        Long price = commonest(
                pool.stream()
                        .filter(item -> item.ownership() == Ownership.BOUGHT)
                        .toList(),
                MediaItem::costMinorUnits);
        return price == null ? null : price(price, currency);
    }

    /** What a new item of the kind may hold; a tape as LTO-9 defines it, the others common practice, no source. */
    private static long usualCapacityBytes(MediaKind kind) {
        return kind == MediaKind.TAPE ? 18_000_000_000_000L : 4_000_000_000_000L;
    }

    private static @Nullable Long commonest(List<MediaItem> pool, Function<MediaItem, @Nullable Long> figure) {
        return pool.stream()
                .map(figure)
                .filter(Objects::nonNull)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.<Long, Long>comparingByValue()
                        .thenComparing(Map.Entry::getKey, Comparator.naturalOrder()))
                .map(Map.Entry::getKey)
                .orElse(null);
    }

    /** Whether the price has parts that the currency doesn't have. */
    boolean isTooFineFor(Currency currency) {
        return itemPrice.stripTrailingZeros().scale() > currency.getDefaultFractionDigits();
    }

    LegSupply supply(UUID legId, Currency currency) {
        return new LegSupply(
                legId,
                itemCapacityGb.movePointRight(GB_DIGITS).longValueExact(),
                packSize,
                leadTimeWorkingDays,
                safetyWorkingDays,
                itemPrice.movePointRight(currency.getDefaultFractionDigits()).longValueExact(),
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
}
