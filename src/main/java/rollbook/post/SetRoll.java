package rollbook.post;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;

/**
 * A roll of a set, as it was when the set was made.
 *
 * @param itemId the medium that it lay on; null if it was missing
 * @param place where the medium lay
 */
record SetRoll(
        UUID rollId,
        String rollCode,
        @Nullable UUID itemId,
        @Nullable String itemCode,
        @Nullable String place,
        @Nullable Verdict verdict,
        boolean proven) {}
