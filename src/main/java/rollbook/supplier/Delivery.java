package rollbook.supplier;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What became of an order.
 *
 * @param what what it was for, in words
 * @param items how many came or still may
 * @param came how many came so far
 * @param completeOn when the last of it came; null while something is still to come
 * @param wayWorkingDays working days that the way to where it was delivered adds to the supplier's lead time
 */
public record Delivery(
        UUID orderId,
        UUID supplierId,
        String what,
        int items,
        int came,
        LocalDate orderedOn,
        LocalDate expectedOn,
        @Nullable LocalDate completeOn,
        int wayWorkingDays) {}
