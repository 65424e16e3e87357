package rollbook.verification;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is proven of a production's rolls, and what waits for somebody.
 *
 * @param ready rolls whose card may be cleared now
 * @param cleared rolls whose card is cleared and not erased yet
 * @param bad rolls with a copy that is known to be bad, each with the sentence that says so
 * @param held rolls whose card is held until more is proven
 * @param exposed rolls that nobody has begun to copy
 * @param copying rolls that are being copied
 * @param rollsOfDays how many rolls there are of each shooting day that has any
 * @param copiesProven copies whose newest verdict is proven
 * @param documentsUnassigned documents with parts that nobody has assigned
 * @param documentsRejected documents rejected since yesterday
 * @param alarms verdicts that fell after a card had been cleared or erased, by roll
 * @param asked requests to clear a card without proof that wait for a second person
 * @param withoutProof cards that were cleared without proof, for good
 * @param media media of legs that come back into use, which may be cleared or erased now
 */
public record ProofSummary(
        int rolls,
        List<RollLine> ready,
        List<RollLine> cleared,
        List<RollLine> bad,
        List<RollLine> held,
        List<RollLine> exposed,
        List<RollLine> copying,
        Map<UUID, Long> rollsOfDays,
        int copies,
        int copiesProven,
        int documentsUnassigned,
        int documentsRejected,
        List<Alarm> alarms,
        List<Override> asked,
        List<Override> withoutProof,
        List<Medium> media) {

    public record RollLine(UUID rollId, String rollCode, String cardCode, String says) {}

    public record Alarm(UUID rollId, String rollCode, String itemCode, boolean cardErased) {}

    /** @param approvedByName null while it waits */
    public record Override(
            UUID requestId,
            UUID rollId,
            String rollCode,
            String cardCode,
            String askedByName,
            @Nullable String approvedByName) {}

    /** @param cleared whether it is cleared and not erased yet */
    public record Medium(UUID itemId, String itemCode, boolean cleared) {}
}
