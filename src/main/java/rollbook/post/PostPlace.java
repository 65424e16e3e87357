package rollbook.post;

import java.time.ZoneId;
import java.util.UUID;

/**
 * The place of a production that is post.
 *
 * @param zone of the production
 * @param version for noticing that somebody else chose another one meanwhile
 */
record PostPlace(UUID placeId, String placeName, ZoneId zone, int version) {
    /** The version while nobody chose a place. */
    static final int NOT_CHOSEN = 0;
}
