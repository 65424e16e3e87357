package rollbook.shipment;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.Size;
import java.util.Set;
import java.util.UUID;
import rollbook.web.Typed;

/**
 * Which items are lost, and how that is known.
 *
 * @param typed the shipment's number
 */
record LossForm(
        @NotEmpty Set<UUID> items,
        @NotBlank @Size(max = 200) String reason,
        String typed,
        int version) {

    LossForm {
        items = items == null ? Set.of() : items;
        reason = Typed.text(reason);
        typed = Typed.text(typed);
    }
}
