package rollbook.ordering;

import rollbook.burndown.LeadTime;

/**
 * Whoever sells or hires out media. What is ordered from one supplier on one day comes in one delivery, for whichever
 * pools it is.
 *
 * @param leadTime working days from the day of the order to the day it is delivered
 * @param deliveryMinorUnits what one delivery costs, in the smallest unit of the currency
 */
public record Supplier(String name, LeadTime leadTime, SupplierDays days, long deliveryMinorUnits) {
    public Supplier {
        if (deliveryMinorUnits < 0) {
            throw new IllegalArgumentException("%s: a delivery for %d".formatted(name, deliveryMinorUnits));
        }
    }
}
