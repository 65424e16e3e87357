package rollbook.hire;

import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.PositiveOrZero;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a week costs of each item of a model, as a person writes it.
 *
 * @param like an item of that model
 */
record ModelForm(
        @Nullable UUID like,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal weekPrice) {}
