package rollbook.verification;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The permission to erase a card, what it relied on, and what became of it.
 *
 * @param policy the clearing policy and copy plan as they were, in words for the record
 * @param overrideId the request that two people cleared it on, if it was cleared without proof; who asked and why
 */
record Clearance(
        UUID id,
        UUID rollId,
        UUID cardId,
        Instant clearedAt,
        String clearedByName,
        String policy,
        List<Long> verdictIds,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnReason,
        @Nullable Instant erasedAt,
        @Nullable String erasedByName,
        @Nullable UUID overrideId,
        @Nullable String askedByName,
        @Nullable String overrideReason) {

    /** Whether the card may be erased on the strength of it now. */
    boolean stands() {
        return withdrawnAt == null && erasedAt == null;
    }

    public boolean withoutProof() {
        return overrideId != null;
    }
}
