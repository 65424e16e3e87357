package rollbook.shipment;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;

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
        List<String> manifests) {}
