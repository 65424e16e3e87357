package rollbook.supplier;

import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.ordering.Hire;
import rollbook.quantity.Money;

/**
 * A price as a person writes it.
 *
 * @param prices how many prices of the item the person has seen
 */
record PriceForm(
        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal itemPrice,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal hireWeekPrice,

        @Min(1) @Max(250) @Nullable Integer hireMinimumWeeks,
        @NotNull @Nullable LocalDate validFrom,
        int prices) {

    /** Begins with what is valid today, to be changed. */
    static PriceForm of(CatalogueItem item, LocalDate today, Money money) {
        Price price = item.prices().on(today).orElse(null);
        Hire hire = price == null ? null : price.hire();
        return new PriceForm(
                price == null || price.itemMinorUnits() == null ? null : money.amount(price.itemMinorUnits()),
                hire == null ? null : money.amount(hire.weeklyRateMinorUnits()),
                hire == null ? null : hire.minimumWeeks(),
                today,
                item.prices().entered().size());
    }

    /** Looks for what a single field doesn't tell; only in a form without errors. */
    void lookFurther(Money money, BindingResult result) {
        if (result.hasErrors()) {
            return;
        }
        if (itemPrice == null && hireWeekPrice == null && hireMinimumWeeks == null) {
            result.rejectValue("itemPrice", "supplier.price.none-given");
        } else if ((hireWeekPrice == null) != (hireMinimumWeeks == null)) {
            result.rejectValue(
                    hireWeekPrice == null ? "hireWeekPrice" : "hireMinimumWeeks", "supplier.price.hire-half");
        }
        Map<String, BigDecimal> given = new TreeMap<>();
        if (itemPrice != null) {
            given.put("itemPrice", itemPrice);
        }
        if (hireWeekPrice != null) {
            given.put("hireWeekPrice", hireWeekPrice);
        }
        given.forEach((field, price) -> {
            if (!money.canPay(price)) {
                result.rejectValue(field, "supplier.form.price-too-fine");
            }
        });
    }

    /** Only of a form without errors. */
    Catalogue.NewPrice price(Money money) {
        return new Catalogue.NewPrice(
                Objects.requireNonNull(validFrom),
                itemPrice == null ? null : money.toMinorUnits(itemPrice),
                hireWeekPrice == null || hireMinimumWeeks == null
                        ? null
                        : new Hire(money.toMinorUnits(hireWeekPrice), hireMinimumWeeks));
    }
}
