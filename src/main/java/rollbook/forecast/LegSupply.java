package rollbook.forecast;

import java.util.UUID;
import rollbook.supplier.DeliveredTo;

/**
 * What a leg's pool is filled up with, as it is kept.
 *
 * @param itemId of a supplier's catalogue
 * @param version for noticing that somebody else changed it meanwhile; -1 before it is kept
 */
public record LegSupply(UUID legId, UUID itemId, DeliveredTo deliveredTo, int version) {
    public static final int NOT_KEPT = -1;
}
