package rollbook.shipment;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What happened to a shipment, or to an item of it.
 *
 * @param itemCode null if it is about the shipment as a whole
 * @param expectedBy the new time, for one that is expected anew
 * @param byLink whether somebody without an account signed for it
 */
public record ShipmentAct(
        Instant at,
        Kind act,
        @Nullable String itemCode,
        @Nullable Instant expectedBy,
        String note,
        String byName,
        boolean byLink) {
    /** The kinds of act. */
    public enum Kind {
        SENT,
        TAKEN_BACK,
        EXPECTED_ANEW,
        ARRIVED,
        /** It arrived, and its seal or its box was not as it had been sent. */
        SEAL_DAMAGED,
        MISSING,
        LOST
    }
}
