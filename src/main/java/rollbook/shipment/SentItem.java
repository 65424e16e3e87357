package rollbook.shipment;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An item of a shipment.
 *
 * @param carrier who brings it; empty if it is handed over without one
 * @param sentAt when it was sent; while it is being packed, when that began
 * @param closedAt when it arrived, was missed or was reported lost; null while it is on its way
 * @param closedByName who said so
 */
public record SentItem(
        UUID shipmentId,
        int number,
        UUID itemId,
        UUID toPlaceId,
        String toPlaceName,
        String carrier,
        Instant sentAt,
        @Nullable Instant expectedBy,
        ShipmentItem.State state,
        @Nullable Instant closedAt,
        @Nullable String closedByName) {

    /** Whether its way hasn't ended. */
    public boolean isOpen() {
        return state == ShipmentItem.State.UNDER_WAY || state == ShipmentItem.State.MISSING;
    }

    /** Whether it should have arrived and hasn't. */
    public boolean isLate(Instant now) {
        return state == ShipmentItem.State.UNDER_WAY && expectedBy != null && expectedBy.isBefore(now);
    }
}
