package rollbook.purchase;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.NewItem;

/**
 * What came of an order, before it is kept.
 *
 * @param id comes with the form: what is sent twice is one receipt
 * @param restExpectedOn when the supplier says that the rest comes; null if it said nothing
 */
public record NewReceipt(
        UUID id, LocalDate cameOn, String note, @Nullable LocalDate restExpectedOn, List<Line> lines) {
    public NewReceipt {
        lines = List.copyOf(lines);
    }

    /**
     * What came of a line of the order.
     *
     * @param onlyCounted items in order that get no entry in the book
     * @param items in order, to be entered in the book
     */
    public record Line(UUID lineId, int onlyCounted, List<NewItem> items, List<Fault> faults) {
        int good() {
            return onlyCounted + items.size();
        }

        int came() {
            return good() + Fault.items(faults);
        }

        /** Items of which nothing is expected any more. */
        int settled() {
            return good() + Fault.credited(faults);
        }
    }
}
