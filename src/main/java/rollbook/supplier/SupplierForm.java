package rollbook.supplier;

import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.ordering.PublicHolidays;
import rollbook.quantity.Money;
import rollbook.web.Typed;

/** A supplier as a person writes it. */
record SupplierForm(
        @NotBlank @Size(max = 80) String name,
        @Nullable String country,
        Set<DayOfWeek> workingDays,
        @NotNull @Nullable LocalTime orderCutOff,
        @NotNull @Min(0) @Max(250) @Nullable Integer leadTimeWorkingDays,
        @NotNull @Min(0) @Max(250) @Nullable Integer slowLeadTimeWorkingDays,

        @NotNull @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal deliveryPrice,

        @Size(max = 1000) String note,
        int version) {

    SupplierForm {
        name = Typed.text(name);
        note = Typed.text(note);
        workingDays = workingDays == null ? Set.of() : workingDays;
    }

    /** Delivery within a working week, two days of slack, orders until four: common practice, no source. */
    static SupplierForm blank() {
        return new SupplierForm("", null, Set.of(), LocalTime.of(16, 0), 5, 7, BigDecimal.ZERO, "", 0);
    }

    static SupplierForm of(MediaSupplier supplier, Money money) {
        SupplierDetails details = supplier.details();
        return new SupplierForm(
                details.name(),
                details.country(),
                details.workingDays(),
                details.orderCutOff(),
                details.leadTimeWorkingDays(),
                details.slowLeadTimeWorkingDays(),
                money.amount(details.deliveryMinorUnits()),
                details.note(),
                supplier.version());
    }

    /** Looks for what a single field doesn't tell; only in a form without errors. */
    void lookFurther(Money money, BindingResult result) {
        if (result.hasErrors()) {
            return;
        }
        if (Objects.requireNonNull(slowLeadTimeWorkingDays) < Objects.requireNonNull(leadTimeWorkingDays)) {
            result.rejectValue("slowLeadTimeWorkingDays", "supplier.form.slowLeadTimeWorkingDays.too-short");
        }
        if (country != null && !country.isEmpty() && !PublicHolidays.countries().contains(country)) {
            result.rejectValue("country", "supplier.form.country.unknown");
        }
        if (!money.canPay(Objects.requireNonNull(deliveryPrice))) {
            result.rejectValue("deliveryPrice", "supplier.form.price-too-fine");
        }
    }

    /** Only of a form without errors. */
    SupplierDetails details(Money money) {
        return new SupplierDetails(
                name,
                country == null || country.isEmpty() ? null : country,
                workingDays,
                Objects.requireNonNull(orderCutOff),
                money.toMinorUnits(Objects.requireNonNull(deliveryPrice)),
                Objects.requireNonNull(leadTimeWorkingDays),
                Objects.requireNonNull(slowLeadTimeWorkingDays),
                note);
    }
}
