package rollbook.ordering;

import java.util.Currency;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Media that can be had for a pool.
 *
 * @param packSize items that are sold together, at least one
 * @param itemPriceMinorUnits price of one item in the currency's smallest unit, such as cents
 * @param hire null if it is only for sale
 */
public record Offer(
        UUID id,
        String name,
        UUID poolId,
        long itemCapacityBytes,
        int packSize,
        long itemPriceMinorUnits,
        Currency currency,
        @Nullable Hire hire,
        Supplier supplier) {
    public Offer {
        if (itemCapacityBytes < 1 || packSize < 1 || itemPriceMinorUnits < 0) {
            throw new IllegalArgumentException("%s: %d-byte items in packs of %d at %d each"
                    .formatted(name, itemCapacityBytes, packSize, itemPriceMinorUnits));
        }
    }

    /** The same, were it not for hire. */
    public Offer forSaleOnly() {
        return new Offer(id, name, poolId, itemCapacityBytes, packSize, itemPriceMinorUnits, currency, null, supplier);
    }

    long packPriceMinorUnits() {
        return Math.multiplyExact(itemPriceMinorUnits, packSize);
    }
}
