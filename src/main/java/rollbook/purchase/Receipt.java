package rollbook.purchase;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * What came of an order at one time.
 *
 * @param number counted from one in each order
 * @param takenBack null while it counts
 */
record Receipt(
        UUID id,
        int number,
        LocalDate cameOn,
        Instant at,
        String byName,
        String note,
        @Nullable TakenBack takenBack,
        List<Line> lines) {

    /** Who found it wrong, and why. */
    record TakenBack(Instant at, String byName, String reason) {}

    /**
     * What came of a line of the order.
     *
     * @param good items in order, those too that have no entry in the book
     * @param items that were entered in the book with this receipt
     */
    record Line(UUID lineId, MediaKind kind, String model, int good, List<Fault> faults, List<Item> items) {
        public int damagedOrWrong() {
            return faults.stream().mapToInt(Fault::items).sum();
        }
    }

    /** @param serial empty if it has none */
    record Item(UUID id, String code, String serial) {}

    public boolean counts() {
        return takenBack == null;
    }

    public int good() {
        return lines.stream().mapToInt(Line::good).sum();
    }

    public int damagedOrWrong() {
        return lines.stream().mapToInt(Line::damagedOrWrong).sum();
    }

    public List<Item> items() {
        return lines.stream().flatMap(line -> line.items().stream()).toList();
    }
}
