package rollbook.shipment;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;
import rollbook.web.Typed;

/**
 * When a shipment should have arrived.
 *
 * @param expectedBy in the production's zone
 * @param note whence that is known; empty while nobody asks
 */
record ExpectedForm(
        @NotNull @Nullable LocalDateTime expectedBy,
        @Size(max = 200) String note,
        int version) {

    ExpectedForm {
        note = Typed.text(note);
    }
}
