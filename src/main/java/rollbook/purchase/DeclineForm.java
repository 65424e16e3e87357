package rollbook.purchase;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why an order is declined, as a person writes it. */
record DeclineForm(@NotBlank @Size(max = 200) String declineReason, int version) {
    DeclineForm {
        declineReason = declineReason == null ? "" : declineReason.strip();
    }
}
