package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Media on order for a leg's pool.
 *
 * @param supplierId whom it was ordered from; null and no name if the leg had no supply then
 * @param expectedOn when it is said to come
 * @param came how many items came so far
 * @param cancelled whether what hasn't come was called off
 * @param changedAt when it was entered, or the last step recorded
 * @param steps how many steps were recorded, so the number of the last one
 */
public record MediaOrder(
        UUID id,
        UUID legId,
        String legName,
        @Nullable UUID supplierId,
        String supplierName,
        LocalDate orderedOn,
        LocalDate expectedOn,
        int items,
        long itemCapacityBytes,
        String note,
        int came,
        boolean cancelled,
        Instant changedAt,
        int steps) {

    /** Items that may still come. */
    public int left() {
        return cancelled ? 0 : items - came;
    }

    public boolean isOpen() {
        return left() > 0;
    }
}
