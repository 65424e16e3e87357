package rollbook.shipment;

import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.web.Typed;

/**
 * What is handed over to whom.
 *
 * @param items codes and runs of codes
 */
record HandOverForm(
        @Size(max = 8000) String items,
        @Nullable UUID toPlaceId,
        @Size(max = 120) String receiver,
        @Size(max = 1000) String note) {

    HandOverForm {
        items = Typed.text(items);
        receiver = Typed.text(receiver);
        note = Typed.text(note);
    }
}
