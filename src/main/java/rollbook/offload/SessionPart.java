package rollbook.offload;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.Rendition;

/**
 * One thing that the bytes of an offload pass.
 *
 * @param bytesPerSecond its reading speed, for a destination its writing speed; null if unknown
 * @param legName the leg of the copy plan that a destination serves, if any
 * @param rendition of the copy on a destination; null for everything else
 */
record SessionPart(
        Kind kind,
        UUID itemId,
        String code,
        @Nullable Long bytesPerSecond,
        @Nullable Long capacityBytes,
        @Nullable UUID legId,
        @Nullable String legName,
        @Nullable Rendition rendition) {

    enum Kind {
        CARD,
        ADAPTER,
        READER,
        DESTINATION
    }

    /**
     * The part that holds the others back, as all destinations are written together; of equals the first on the way;
     * empty if no speed is known.
     */
    static Optional<SessionPart> slowest(List<SessionPart> parts) {
        return parts.stream()
                .filter(part -> part.bytesPerSecond() != null)
                .min(Comparator.comparing(SessionPart::bytesPerSecond));
    }
}
