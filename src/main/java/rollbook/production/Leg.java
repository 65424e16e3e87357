package rollbook.production;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A leg of the copy plan: every roll gets a copy of this rendition on a medium of this kind, at this place.
 *
 * @param keptPercent bytes of the rendition per hundred bytes as recorded; 100 for the rendition as recorded
 * @param returnsAfterDays how many days after the shooting day the medium comes back into use, or null if it is kept
 * @param neededToClear whether a card is cleared only once this copy is proven
 * @param version for noticing that somebody else changed the leg meanwhile
 */
public record Leg(
        UUID id,
        String name,
        MediaKind mediaKind,
        UUID placeId,
        String placeName,
        Rendition rendition,
        int keptPercent,
        @Nullable Integer returnsAfterDays,
        boolean neededToClear,
        int version) {}
