package rollbook.inventory;

import java.util.Collection;
import java.util.Optional;
import java.util.UUID;

/**
 * Implemented by modules that put something onto media: asked before an item leaves for good. It is called inside the
 * transaction that holds the item's row lock.
 */
public interface ItemHold {
    /**
     * Locks what this module looks at and others lock before they lock items. Called first of all in the transaction, so that
     * nobody waits for each other.
     */
    default void lockFirst(UUID productionId, Collection<UUID> itemIds) {}

    /** @return why the item can't leave, or nothing if as far as this module knows nothing depends on it */
    Optional<Hold> reasonToKeep(UUID productionId, UUID itemId);
}
