package rollbook.hire;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * What the hire of one item costs, in the smallest unit of the production's currency.
 *
 * @param agreementCode empty if nobody wrote the agreement down: it then began, as far as anybody knows, when the item was
 *     registered, and one week is paid for at least
 * @param dueOn null if nobody knows
 * @param endedOn when it went back or out of use; null while it is hired
 * @param weekMinorUnits null if nobody knows: then the amounts are zero
 * @param accruedMinorUnits what it would come to if the item went back on the date that was asked for, or came to when it
 *     ended
 * @param committedMinorUnits what it comes to by its due date, or by the date that was asked for if that is later or no due
 *     date is known; once it has ended, what it came to
 */
public record HiredItemCost(
        UUID itemId,
        String code,
        MediaKind kind,
        String supplier,
        String agreementCode,
        LocalDate startedOn,
        @Nullable LocalDate dueOn,
        @Nullable LocalDate endedOn,
        @Nullable Long weekMinorUnits,
        long accruedMinorUnits,
        long committedMinorUnits) {}
