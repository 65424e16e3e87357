package rollbook.ordering;

import java.time.LocalDate;

/**
 * Something that a purchase plan may order.
 *
 * @param pool index of the pool it is for
 * @param hired until the end of the show; else bought
 */
record PossibleOrder(
        Offer offer, int pool, Delivery delivery, boolean hired, long packPriceMinorUnits, long packBytes) {

    /** What is ordered from one supplier on one day. */
    record Delivery(Supplier supplier, LocalDate orderOn) {

        /** The first date on which it helps, with this chance no later. */
        LocalDate usefulFrom(double chance) {
            return supplier.days()
                    .arrival(orderOn, supplier.leadTime().days(chance))
                    .plusDays(1);
        }
    }
}
