package rollbook.supplier;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rollbook.ordering.Hire;

/**
 * What an item costs from a date on, in the smallest unit of the production's currency. Never changed: a new price is a
 * price of its own.
 *
 * @param number counted from one, in the order in which the item's prices were entered
 * @param itemMinorUnits of one item bought; null if it is only for hire
 * @param hire of one item; null if it is only for sale
 * @param enteredBy empty if it was there before prices were kept with their dates
 */
public record Price(
        int number,
        LocalDate validFrom,
        @Nullable Long itemMinorUnits,
        @Nullable Hire hire,
        Instant enteredAt,
        String enteredBy) {
    public Price {
        if (itemMinorUnits == null && hire == null) {
            throw new IllegalArgumentException("A price neither to buy nor to hire");
        }
    }
}
