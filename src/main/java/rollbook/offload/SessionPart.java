package rollbook.offload;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.Rendition;
import rollbook.quantity.DataRate;
import rollbook.recording.OffloadRate;

/**
 * One thing that the bytes of an offload pass.
 *
 * @param bytesPerSecond its reading speed, for a destination its writing speed; null if unknown
 * @param legName the leg of the copy plan that a destination serves, if any
 * @param rendition of the copy on a destination; null for everything else
 */
record SessionPart(
        OffloadRate.Place kind,
        UUID itemId,
        String code,
        @Nullable Long bytesPerSecond,
        @Nullable Long capacityBytes,
        @Nullable UUID legId,
        @Nullable String legName,
        @Nullable Rendition rendition) {

    /** The code of the part that holds the others back, as all destinations are written together; null if no speed is known. */
    static @Nullable String slowest(List<SessionPart> parts) {
        List<OffloadRate.Link> links = parts.stream()
                .filter(part -> part.bytesPerSecond() != null)
                .map(part -> new OffloadRate.Link(
                        part.kind(), part.code(), DataRate.ofBytesPerSecond(part.bytesPerSecond())))
                .toList();
        return links.isEmpty() ? null : new OffloadRate(links).slowest().code();
    }
}
