package rollbook.ordering;

import java.time.LocalDate;
import java.util.SortedMap;
import java.util.TreeMap;
import rollbook.burndown.LeadTime;
import rollbook.burndown.Pool;

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

    /** What is on its way once it is ordered, as a pool has to know it. */
    public Pool.Arrival onOrder(LocalDate orderOn, long items, long itemCapacityBytes) {
        SortedMap<Integer, Double> chances = new TreeMap<>();
        leadTime.chances().forEach((lead, chance) -> chances.put(lead + days.deliveryWorkingDays(), chance));
        return new Pool.Arrival(orderOn, new LeadTime(chances), days.calendar(), items, itemCapacityBytes);
    }
}
