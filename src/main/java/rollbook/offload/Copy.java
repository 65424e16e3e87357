package rollbook.offload;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;

/**
 * One rendition of one roll on one media item.
 *
 * @param writtenFrom when the last writing of this copy began; evidence from before says nothing of it
 * @param threat the disaster that threatens the place; empty if nobody said
 * @param disturbedAt when the medium last moved, or was doubted, released or found; null if it never was
 * @param erasedAt when its medium was erased, if it was and the copy hasn't been written again since
 */
public record Copy(
        UUID id,
        UUID rollId,
        UUID itemId,
        String itemCode,
        MediaKind itemKind,
        Condition itemCondition,
        UUID placeId,
        String placeName,
        boolean offSite,
        String threat,
        @Nullable UUID legId,
        Rendition rendition,
        Instant writtenFrom,
        @Nullable Instant erasedAt,
        @Nullable Instant disturbedAt) {

    public boolean isErased() {
        return erasedAt != null;
    }
}
