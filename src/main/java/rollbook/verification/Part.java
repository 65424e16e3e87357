package rollbook.verification;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The entries of a document under one folder: what belongs to one roll, or to none.
 *
 * @param folder the path in the document; empty for its root
 * @param guessRollId the roll that the folder or the clips are called by
 * @param guessSubject what the document probably describes
 */
record Part(
        UUID id,
        UUID documentId,
        String folder,
        long entries,
        long sizeBytes,
        @Nullable UUID guessRollId,
        @Nullable String guessRollCode,
        @Nullable Subject guessSubject,
        @Nullable UUID guessItemId) {}
