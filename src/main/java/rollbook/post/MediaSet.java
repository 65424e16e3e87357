package rollbook.post;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A set of a leg's media that was made: all that was shot up to the end of a day lies on them, but for what it says.
 *
 * @param number counts the production's sets, from 1
 * @param reason why it was made although something is missing or isn't proven; empty if nothing is
 * @param items codes of its media, by their codes
 * @param rolls that it should hold
 * @param gaps how many of them are missing or weren't proven
 * @param replacesNumber the set that it corrects; null if it corrects none
 * @param replacedByNumber the set that corrects it; null if none does
 * @param withdrawnAt when somebody said that it never was; null if nobody did
 */
record MediaSet(
        UUID id,
        int number,
        UUID legId,
        String legName,
        UUID dayId,
        int dayNumber,
        String unitName,
        LocalDate date,
        String note,
        String reason,
        Instant at,
        String byName,
        List<String> items,
        int rolls,
        int gaps,
        @Nullable Integer replacesNumber,
        @Nullable Integer replacedByNumber,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnByName,
        @Nullable String withdrawnReason) {

    /** Whether it holds: it wasn't corrected and wasn't withdrawn. */
    public boolean stands() {
        return replacedByNumber == null && withdrawnAt == null;
    }

    /** Whether all that it should hold was there and proven when it was made. */
    public boolean isComplete() {
        return gaps == 0;
    }
}
