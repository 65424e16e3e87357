package rollbook.verification;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What somebody said a part of a document describes.
 *
 * @param replaced whether a later assignment corrects this one
 */
record Assignment(
        long id,
        UUID partId,
        Subject subject,
        @Nullable UUID rollId,
        @Nullable String rollCode,
        @Nullable UUID copyId,
        @Nullable String itemCode,
        Instant assignedAt,
        String assignedByName,
        String note,
        boolean replaced) {}
