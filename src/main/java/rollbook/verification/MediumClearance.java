package rollbook.verification;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/** The permission to erase a drive, array or tape, what it relied on, and what became of it. */
record MediumClearance(
        UUID id,
        UUID itemId,
        MediaKind kind,
        Instant clearedAt,
        String clearedByName,
        String policy,
        List<Long> verdictIds,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnReason,
        @Nullable Instant erasedAt,
        @Nullable String erasedByName) {

    /** Whether the medium may be erased on the strength of it now. */
    boolean stands() {
        return withdrawnAt == null && erasedAt == null;
    }
}
