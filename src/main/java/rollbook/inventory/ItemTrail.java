package rollbook.inventory;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Implemented by modules that use items: what they did to one, for its trail. */
public interface ItemTrail {
    /** In the order of time, in one statement. */
    List<Happening> of(UUID productionId, UUID itemId);

    /**
     * Something that happened to an item.
     *
     * @param kindKey message that names the kind, in a word or two; what has the same one stands on one line
     * @param says a sentence
     */
    record Happening(Instant at, String kindKey, Hold says) {}
}
