package rollbook.inventory;

import java.util.Collection;
import java.util.Set;
import java.util.UUID;

/**
 * Implemented by modules that refer to items: asked before items are struck out as registered by mistake. It is called
 * inside the transaction that holds the items' row locks.
 */
public interface ItemUse {
    /** Those of the items that this module has ever had something to do with. */
    Set<UUID> used(UUID productionId, Collection<UUID> itemIds);
}
