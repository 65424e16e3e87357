package rollbook.inventory;

import java.util.UUID;

/** An item was registered, moved, or changed in condition or capacity. Heard in the same transaction. */
public record MediaItemChanged(UUID productionId, UUID itemId) {}
