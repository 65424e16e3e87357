package rollbook.forecast;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;

/** How full items may get and how sure the production wants to be, as a person writes it. */
record AssumptionsForm(
        @NotNull @Min(1) @Max(100) Integer fillPercent,
        @NotNull @Min(50) @Max(99) Integer serviceLevelPercent,
        int version) {

    static AssumptionsForm of(Assumptions kept) {
        return new AssumptionsForm(kept.fillPercent(), kept.serviceLevelPercent(), kept.version());
    }

    Assumptions assumptions() {
        return new Assumptions(fillPercent, serviceLevelPercent, version);
    }
}
