package rollbook.shipment;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An item of a shipment that was sent to a place.
 *
 * @param carrier who brings it; empty if it is handed over without one
 * @param closedAt when it arrived, was missed or was reported lost, the last of it; null while it is on its way
 * @param closedByName who said so
 */
public record SentItem(
        UUID shipmentId,
        int number,
        UUID itemId,
        String carrier,
        Instant sentAt,
        @Nullable Instant expectedBy,
        ShipmentItem.State state,
        @Nullable Instant closedAt,
        @Nullable String closedByName) {

    public boolean isLate(Instant now) {
        return state == ShipmentItem.State.UNDER_WAY && expectedBy != null && expectedBy.isBefore(now);
    }
}
