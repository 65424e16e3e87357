package rollbook.purchase;

import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;

/**
 * Which orders are late on a day: those that didn't wholly come when they were expected, nor in the further days that the
 * forecast reckons with.
 *
 * @param lateAfter for each order that is past its date, the last day on which it isn't late yet
 */
record Lateness(LocalDate today, Map<UUID, LocalDate> lateAfter) {
    Lateness {
        lateAfter = Map.copyOf(lateAfter);
    }

    boolean isOverdue(PurchaseOrder order) {
        return lateAfter.containsKey(order.id());
    }

    boolean isLate(PurchaseOrder order) {
        LocalDate last = lateAfter.get(order.id());
        return last != null && last.isBefore(today);
    }
}
