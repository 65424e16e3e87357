package rollbook.inventory;

import java.time.LocalDate;
import java.util.UUID;

/**
 * An item has left the production for good: it went back to its supplier or was retired.
 *
 * @param on the date on which it left, in the production's zone
 */
public record ItemLeft(UUID productionId, UUID itemId, LocalDate on, UUID personId, String note) {}
