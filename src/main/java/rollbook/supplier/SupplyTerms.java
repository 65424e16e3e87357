package rollbook.supplier;

import rollbook.production.MediaKind;

/**
 * On what terms an item can be had today.
 *
 * @param price valid today
 */
public record SupplyTerms(MediaSupplier supplier, CatalogueItem item, Price price, Punctuality punctuality) {

    /** Whether pools of this kind can be filled up with it: it holds copies and can be bought. */
    public boolean fills(MediaKind kind) {
        return item.details().kind() == kind
                && item.details().capacityBytes() != null
                && price.itemMinorUnits() != null;
    }
}
