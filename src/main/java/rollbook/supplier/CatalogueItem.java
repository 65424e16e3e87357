package rollbook.supplier;

import java.util.UUID;

/**
 * Something that a supplier offers.
 *
 * @param archived whether it isn't to be had any more; then it stays readable
 */
public record CatalogueItem(
        UUID id, UUID supplierId, CatalogueDetails details, boolean archived, int version, PriceHistory prices) {}
