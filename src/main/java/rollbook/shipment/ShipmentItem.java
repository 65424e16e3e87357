package rollbook.shipment;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.production.MediaKind;

/**
 * An item of a shipment.
 *
 * @param condition the item's now, wherever it is
 * @param cardState for cards only
 * @param placeId where the item is now; while it is under way, where it came from
 */
public record ShipmentItem(
        UUID shipmentId,
        UUID itemId,
        String code,
        MediaKind kind,
        String model,
        State state,
        Condition condition,
        @Nullable CardState cardState,
        UUID placeId,
        String placeName) {
    /** How far an item has come. */
    public enum State {
        PACKED,
        UNDER_WAY,
        /** Somebody missed it on arrival; it may still come. */
        MISSING,
        ARRIVED,
        LOST
    }

    /** Whether its way hasn't ended. */
    public boolean isOpen() {
        return state == State.UNDER_WAY || state == State.MISSING;
    }

    /** Lost on the way, and here again since. */
    public boolean isFoundAgain() {
        return state == State.LOST && condition != Condition.LOST;
    }
}
