package rollbook.shipment;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.verification.RollCopies;

/**
 * What was in a shipment when it was sent: a roll on an item, or an item that holds none.
 *
 * @param rollId null for an item that holds none
 * @param rendition null for the card itself
 * @param sizeBytes null if nobody knew
 * @param verdict null for the card itself
 * @param manifests SHA-256 of the documents that spoke for it, in hexadecimal
 */
public record SentContent(
        UUID itemId,
        String itemCode,
        MediaKind itemKind,
        @Nullable UUID rollId,
        @Nullable String rollCode,
        @Nullable Rendition rendition,
        @Nullable Long sizeBytes,
        @Nullable Verdict verdict,
        List<String> manifests) {

    /** What is on an item: an entry for each copy and for the roll that a card holds, or one that says that there is nothing. */
    static List<SentContent> of(ShipmentItem item, List<RollCopies> rolls) {
        List<SentContent> contents = new ArrayList<>();
        for (RollCopies roll : rolls) {
            for (RollCopies.CopyAt copy : roll.on(Set.of(item.itemId()))) {
                contents.add(new SentContent(
                        item.itemId(),
                        item.code(),
                        item.kind(),
                        roll.rollId(),
                        roll.rollCode(),
                        copy.rendition(),
                        copy.sizeBytes(),
                        copy.verdict(),
                        copy.manifests()));
            }
            if (roll.isOnCardAmong(Set.of(item.itemId()))) {
                contents.add(new SentContent(
                        item.itemId(),
                        item.code(),
                        item.kind(),
                        roll.rollId(),
                        roll.rollCode(),
                        null,
                        roll.sizeBytes(),
                        null,
                        roll.cardManifests()));
            }
        }
        if (contents.isEmpty()) {
            contents.add(
                    new SentContent(item.itemId(), item.code(), item.kind(), null, null, null, null, null, List.of()));
        }
        return contents;
    }

    /** Whether it is a card with the roll that was recorded on it. */
    public boolean isOriginal() {
        return rollId != null && rendition == null;
    }
}
