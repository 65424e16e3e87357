package rollbook.forecast;

import java.util.Objects;
import rollbook.ordering.LearnedLeadTime;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.SupplyTerms;

/** What a leg's pool is filled up with, and the terms on which that can be had today; they fill pools. */
record SuppliedLeg(LegSupply supply, SupplyTerms terms) {

    CatalogueDetails details() {
        return terms.item().details();
    }

    long itemCapacityBytes() {
        return Objects.requireNonNull(details().capacityBytes());
    }

    long itemPriceMinorUnits() {
        return Objects.requireNonNull(terms.price().itemMinorUnits());
    }

    LearnedLeadTime leadTime() {
        return terms.punctuality().leadTime();
    }
}
