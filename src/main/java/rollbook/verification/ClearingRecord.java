package rollbook.verification;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Something that happened to the permission to erase a medium, or to what it relied on.
 *
 * @param rollId the roll that the card held, or whose copy fell; null for a drive, array or tape
 * @param itemCode the medium; of an alarm the one with the copy that fell
 * @param byName empty if no person did it
 * @param otherName who asked for a clearance without proof that {@code byName} approved; else empty
 * @param note a person's reason, or why a clearance fell; may be empty
 */
public record ClearingRecord(
        Kind kind,
        @Nullable UUID rollId,
        String rollCode,
        String itemCode,
        Instant at,
        String byName,
        String otherName,
        String note) {
    public enum Kind {
        CLEARED,
        CLEARED_WITHOUT_PROOF,
        WITHDRAWN,
        ERASED,
        ALARM
    }
}
