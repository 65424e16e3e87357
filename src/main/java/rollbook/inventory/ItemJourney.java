package rollbook.inventory;

import java.util.Collection;
import java.util.Map;
import java.util.UUID;

/** Implemented by modules that send items: says where they are on their way to. They are moved by arriving there, not by hand. */
public interface ItemJourney {
    /** @return of those of the items that, as far as this module knows, are on their way; in one statement */
    Map<UUID, Journey> of(UUID productionId, Collection<UUID> itemIds);

    /**
     * @param says a sentence
     * @param page of the production, without a slash at its beginning, that tells more
     */
    record Journey(Hold says, String page) {}
}
