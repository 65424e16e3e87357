package rollbook.hire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.quantity.Money;
import rollbook.web.Typed;

/**
 * An agreement as a person writes it.
 *
 * @param items codes, runs of them too
 * @param entries how many entries about it the person has seen
 */
record AgreementForm(
        @NotNull @Nullable UUID supplierId,
        @Size(max = 80) String reference,
        @NotNull @Nullable LocalDate startedOn,
        @NotNull @Nullable LocalDate dueOn,
        @NotNull @Min(1) @Max(250) @Nullable Integer minimumWeeks,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal lateDayPrice,

        @NotBlank @Size(max = 4000) String items,
        List<@Valid ModelForm> models,
        @Size(max = 1000) String note,
        int entries) {
    private static final int FIRST_YEAR = 2000;
    private static final int LAST_YEAR = 2999;
    private static final int MOST_YEARS = 10;

    AgreementForm {
        reference = Typed.text(reference);
        items = Typed.text(items);
        note = Typed.text(note);
        models = models == null ? List.of() : List.copyOf(models);
    }

    /** Looks for what a single field doesn't tell; only in a form without errors. */
    void lookFurther(Money money, BindingResult result) {
        if (result.hasErrors()) {
            return;
        }
        LocalDate start = Objects.requireNonNull(startedOn);
        LocalDate due = Objects.requireNonNull(dueOn);
        if (start.getYear() < FIRST_YEAR || start.getYear() > LAST_YEAR) {
            result.rejectValue("startedOn", "hire.form.year");
        }
        if (due.isBefore(start)) {
            result.rejectValue("dueOn", "hire.form.due-before-start");
        } else if (due.isAfter(start.plusYears(MOST_YEARS))) {
            result.rejectValue("dueOn", "hire.form.due-too-far");
        }
        if (lateDayPrice != null && !money.canPay(lateDayPrice)) {
            result.rejectValue("lateDayPrice", "hire.form.price-too-fine");
        }
    }

    /** Only of a form without errors. */
    NewTerms terms(Money money, Map<UUID, Long> weekMinorUnits) {
        return new NewTerms(
                Objects.requireNonNull(supplierId),
                reference,
                Objects.requireNonNull(startedOn),
                Objects.requireNonNull(dueOn),
                Objects.requireNonNull(minimumWeeks),
                lateDayPrice == null ? null : money.toMinorUnits(lateDayPrice),
                note,
                weekMinorUnits);
    }
}
