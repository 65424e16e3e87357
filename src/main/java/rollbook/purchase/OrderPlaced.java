package rollbook.purchase;

import java.util.Set;
import java.util.UUID;
import rollbook.production.Membership;

/**
 * An order was placed with its supplier.
 *
 * @param legIds the legs whose pools it fills up
 */
public record OrderPlaced(Membership by, UUID orderId, Set<UUID> legIds) {}
