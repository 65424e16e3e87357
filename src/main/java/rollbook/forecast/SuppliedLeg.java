package rollbook.forecast;

import java.util.Objects;
import rollbook.ordering.LearnedLeadTime;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.SupplyTerms;

/** What a leg's pool is filled up with, and the terms on which that can be had today. */
record SuppliedLeg(LegSupply supply, SupplyTerms terms) {

    /** What can only be hired isn't ordered: the forecast weighs hiring against buying. */
    boolean canBeOrdered() {
        return terms.price().itemMinorUnits() != null && details().capacityBytes() != null;
    }

    CatalogueDetails details() {
        return terms.item().details();
    }

    /** Only of what can be ordered. */
    long itemCapacityBytes() {
        return Objects.requireNonNull(details().capacityBytes());
    }

    /** Only of what can be ordered. */
    long itemPriceMinorUnits() {
        return Objects.requireNonNull(terms.price().itemMinorUnits());
    }

    LearnedLeadTime leadTime() {
        return terms.punctuality().leadTime();
    }
}
