package rollbook.verification;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What somebody said that a document describes of a roll, whether that still stands or was corrected.
 *
 * @param copyId the copy, if it is one
 * @param itemCode the medium of that copy
 * @param correctedAt when somebody said otherwise; null while it stands
 * @param correctedBecause what that person wrote
 */
record RollDocument(
        UUID partId,
        UUID documentId,
        String fileName,
        Instant uploadedAt,
        String uploadedByName,
        Subject subject,
        @Nullable UUID copyId,
        @Nullable String itemCode,
        Instant saidAt,
        String saidByName,
        @Nullable Instant correctedAt,
        @Nullable String correctedByName,
        @Nullable String correctedBecause) {

    /** Whether it still counts as what it was said to be. */
    public boolean stands() {
        return correctedAt == null;
    }

    /** Whether somebody else than its sender said what it describes. */
    public boolean saidByAnother() {
        return !saidByName.equals(uploadedByName);
    }
}
