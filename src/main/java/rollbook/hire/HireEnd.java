package rollbook.hire;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * How the hire of an item ended, and what it came to, by the terms of the time at which it was entered.
 *
 * @param number counted from one; the highest of an item counts
 * @param dueOn null if nobody knew
 */
record HireEnd(
        UUID itemId,
        int number,
        @Nullable UUID agreementId,
        LocalDate startedOn,
        @Nullable LocalDate dueOn,
        LocalDate endedOn,
        long weeks,
        long hireMinorUnits,
        long lateMinorUnits,
        String note,
        Instant enteredAt,
        String enteredBy) {

    long totalMinorUnits() {
        return Math.addExact(hireMinorUnits, lateMinorUnits);
    }
}
