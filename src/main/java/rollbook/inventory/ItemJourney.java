package rollbook.inventory;

import java.util.Optional;
import java.util.UUID;

/** Implemented by modules that send items: says where one is on its way to. It is moved by arriving there, not by hand. */
public interface ItemJourney {
    /** @return nothing if as far as this module knows the item isn't on its way */
    Optional<Journey> of(UUID productionId, UUID itemId);

    /**
     * @param says a sentence
     * @param page of the production, without a slash at its beginning, that tells more
     */
    record Journey(Hold says, String page) {}
}
