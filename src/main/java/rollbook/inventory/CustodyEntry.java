package rollbook.inventory;

import java.time.Instant;

/**
 * One link of an item's chain of custody: from then on it was there, with that holder, in that condition.
 *
 * @param byLink whether somebody without an account signed for it
 */
public record CustodyEntry(
        Instant at,
        CustodyAct act,
        String placeName,
        String holder,
        Condition condition,
        String note,
        String personName,
        boolean byLink) {}
