package rollbook.purchase;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why the rest of an order is called off, as a person writes it. */
record CancelForm(@NotBlank @Size(max = 200) String cancelReason, int version) {
    CancelForm {
        cancelReason = cancelReason == null ? "" : cancelReason.strip();
    }
}
