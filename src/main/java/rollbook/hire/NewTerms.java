package rollbook.hire;

import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What somebody enters about an agreement.
 *
 * @param lateDayMinorUnits for each day and item after the due date; null if late weeks cost the weekly rate
 * @param weekMinorUnits of each item that it is about, at least one
 */
public record NewTerms(
        UUID supplierId,
        String reference,
        LocalDate startedOn,
        LocalDate dueOn,
        int minimumWeeks,
        @Nullable Long lateDayMinorUnits,
        String note,
        Map<UUID, Long> weekMinorUnits) {}
