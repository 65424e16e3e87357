package rollbook.cost;

import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A budget as a person writes it.
 *
 * @param budgets how many budgets the person has seen
 */
record BudgetForm(
        @NotNull @PositiveOrZero @Digits(integer = 11, fraction = 3) @Nullable
        BigDecimal amount,

        @NotBlank @Size(max = 500) @Nullable String reason,
        int budgets) {}
