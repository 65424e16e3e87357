package rollbook.inventory;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * A physical thing with a code.
 *
 * @param serial the maker’s number, empty if unknown; unique among items that are neither retired nor returned
 * @param legId the leg of the copy plan whose pool the item belongs to, if any
 * @param holder who has it, in words; empty if nobody in particular
 * @param cardState for cards only
 * @param costMinorUnits price if bought, price per week if hired, in the currency's smallest unit
 */
public record MediaItem(
        UUID id,
        String code,
        String serial,
        MediaKind kind,
        String model,
        @Nullable Long capacityBytes,
        @Nullable Long readBytesPerSecond,
        @Nullable Long writeBytesPerSecond,
        Ownership ownership,
        String supplier,
        @Nullable Long costMinorUnits,
        @Nullable LocalDate hiredUntil,
        @Nullable UUID legId,
        UUID placeId,
        String placeName,
        boolean offSite,
        String holder,
        Condition condition,
        @Nullable CardState cardState,
        int version) {

    public boolean usable() {
        return condition == Condition.GOOD;
    }

    /** The message that words how it stands; for templates. */
    public String stateKey() {
        return ItemState.of(this).key();
    }
}
