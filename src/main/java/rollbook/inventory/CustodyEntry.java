package rollbook.inventory;

import java.time.Instant;

/** One link of an item's chain of custody: from then on it was there, with that holder, in that condition. */
public record CustodyEntry(
        Instant at,
        CustodyAct act,
        String placeName,
        String holder,
        Condition condition,
        String note,
        String personName) {}
