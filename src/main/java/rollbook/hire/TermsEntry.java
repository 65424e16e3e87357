package rollbook.hire;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Something that was entered about an agreement. Never changed: what is entered later counts.
 *
 * @param number counted from one
 * @param reference the supplier's own number for it; empty if there is none
 * @param lateDayMinorUnits for each day and item after the due date; null if late weeks cost the weekly rate
 * @param weekMinorUnits of each item that it is about
 */
record TermsEntry(
        int number,
        Act act,
        UUID supplierId,
        String supplier,
        String reference,
        LocalDate startedOn,
        LocalDate dueOn,
        int minimumWeeks,
        @Nullable Long lateDayMinorUnits,
        String note,
        Map<UUID, Long> weekMinorUnits,
        Instant enteredAt,
        String enteredBy) {

    enum Act {
        AGREED,
        EXTENDED,
        /** Says anew what the newest entry in force should have said. */
        CORRECTED,
        /** The newest entry in force was a mistake. */
        TAKEN_BACK
    }
}
