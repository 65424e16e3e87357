package rollbook.supplier;

/**
 * On what terms an item can be had today.
 *
 * @param price valid today
 */
public record SupplyTerms(MediaSupplier supplier, CatalogueItem item, Price price, Punctuality punctuality) {
    /** Whether a pool can be filled up with it: what can only be hired isn't ordered, and what holds nothing helps none. */
    public boolean fillsPools() {
        return price.itemMinorUnits() != null && item.details().capacityBytes() != null;
    }
}
