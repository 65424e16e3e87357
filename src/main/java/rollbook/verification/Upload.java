package rollbook.verification;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A file that somebody is sending in parts.
 *
 * @param sentName the name under which it is sent, as it came
 * @param sizeBytes of the whole file
 * @param keptBytes how many of them are here, from the first one on without a gap
 * @param saidItemCode the medium that the sender says it describes
 * @param deliveryId the delivery that tells what became of it, once it is complete
 */
record Upload(
        UUID id,
        String sentName,
        long sizeBytes,
        long keptBytes,
        @Nullable Subject saidSubject,
        @Nullable UUID saidItemId,
        @Nullable String saidItemCode,
        UUID deliveryId,
        Instant lastPartAt,
        boolean complete) {
    /** How long the parts of an unfinished one are kept after the last of them. */
    static final Duration KEPT = Duration.ofDays(7);

    /** A part that is kept. */
    record Part(long startByte, int sizeBytes, String sha256) {}

    /** What became of an attempt to send a part, or to end the upload. */
    enum Outcome {
        KEPT,
        COMPLETE,
        /** It doesn't begin where the kept bytes end, or the end was said too early. */
        ELSEWHERE,
        /** Another request is at work on this upload. */
        BUSY,
        /** It isn't what its digest says. */
        DAMAGED,
        /** It reaches beyond the end that was announced: all of the upload is discarded. */
        TOO_LONG
    }

    public Instant keptUntil() {
        return lastPartAt.plus(KEPT);
    }

    Described said() {
        return new Described(saidSubject, saidItemId);
    }

    public String shownName() {
        return DocumentName.shown(sentName);
    }
}
