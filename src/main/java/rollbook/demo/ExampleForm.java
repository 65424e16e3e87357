package rollbook.demo;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;
import rollbook.manifest.Verdict;

/** A field of each sort that forms know, on the living page. */
record ExampleForm(
        @NotBlank String code,
        @Min(1) @Max(100_000) @Nullable Integer capacityGb,
        @DecimalMin("0.5") @Nullable BigDecimal hours,
        @NotNull @Nullable LocalDate arrives,
        @Nullable LocalTime call,
        @Nullable LocalDateTime due,
        @Email @Nullable String mail,
        @Size(min = 12, max = 200) String secret,
        @Nullable String document,
        @NotBlank String unit,
        @NotNull @Nullable CardState state,
        @NotNull @Nullable Verdict verdict,
        @NotEmpty Set<CardState> states,
        boolean hired,
        @NotBlank String note,
        @Nullable String typed) {
    static ExampleForm filledIn() {
        return new ExampleForm(
                "CARD-014",
                960,
                new BigDecimal("2.5"),
                LocalDate.of(2026, 7, 16),
                LocalTime.of(7, 30),
                LocalDateTime.of(2026, 7, 16, 18, 0),
                "post@example.org",
                "",
                null,
                "2",
                CardState.HELD,
                Verdict.PROVEN,
                Set.of(CardState.BLANK, CardState.HELD),
                true,
                "",
                "");
    }

    /** A rule about the form as a whole: the code that is typed below is that of the card above. */
    @AssertTrue(message = "{demo.components.form.not-the-card}")
    boolean isTheCardThatIsTyped() {
        return typed == null || typed.isBlank() || typed.equals(code);
    }
}
