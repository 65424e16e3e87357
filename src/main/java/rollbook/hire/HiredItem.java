package rollbook.hire;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.production.MediaKind;

/**
 * An item that is or was hired, as the inventory has it.
 *
 * @param weekMinorUnits null if nobody knows
 * @param cameOn with its order; null if it came without one
 * @param agreementId under which it is hired, or was when it left; null if nobody wrote one down
 */
record HiredItem(
        UUID id,
        String code,
        MediaKind kind,
        String model,
        @Nullable Long capacityBytes,
        String supplier,
        @Nullable Long weekMinorUnits,
        @Nullable LocalDate hiredUntil,
        Condition condition,
        @Nullable CardState cardState,
        String placeName,
        String holder,
        Instant registeredAt,
        @Nullable LocalDate cameOn,
        @Nullable UUID agreementId) {

    /** Whether it has yet to go back: what is lost too, for nobody has settled it with the supplier. */
    boolean isHere() {
        return condition != Condition.RETURNED && condition != Condition.RETIRED;
    }

    public boolean isLost() {
        return condition == Condition.LOST;
    }

    /** Whether it is a card that may hold the only original of a roll. */
    boolean mayHoldRoll() {
        return cardState != null && cardState != CardState.BLANK;
    }
}
