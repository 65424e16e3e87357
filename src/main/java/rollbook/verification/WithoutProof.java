package rollbook.verification;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A card's clearing without proof: asked for by one person, approved by another.
 *
 * @param holds what held the card when it was asked, as the gate names it
 * @param holdsInWords the same for people, as they read it then
 * @param nothingProven whether no copy of the roll counted at all
 */
public record WithoutProof(
        UUID requestId,
        UUID rollId,
        String rollCode,
        UUID cardId,
        String cardCode,
        Instant requestedAt,
        UUID requestedBy,
        String requestedByName,
        String reason,
        List<String> holds,
        List<String> holdsInWords,
        boolean nothingProven,
        @Nullable Instant approvedAt,
        @Nullable String approvedByName,
        @Nullable UUID clearanceId,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnByName,
        @Nullable String withdrawnReason) {

    /** Whether it waits for a second person, if its day isn't over. */
    public boolean isOpen() {
        return approvedAt == null && withdrawnAt == null;
    }

    public boolean isApproved() {
        return approvedAt != null;
    }
}
