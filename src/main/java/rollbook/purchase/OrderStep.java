package rollbook.purchase;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.Membership;

/**
 * What somebody did with an order.
 *
 * @param number counted from one
 * @param onDate the date on which it was placed
 * @param expectedOn when it comes, as the supplier says; of being placed and of a later promise
 * @param reason why, or the supplier's words; may be empty
 * @param takenBackStep number of the step that this one takes back
 */
public record OrderStep(
        int number,
        Kind kind,
        Instant at,
        UUID byId,
        String byName,
        @Nullable LocalDate onDate,
        @Nullable LocalDate expectedOn,
        String reason,
        @Nullable Integer takenBackStep) {
    /** What was done. */
    public enum Kind {
        PROPOSED,
        CHANGED,
        APPROVED,
        DECLINED,
        PLACED,
        /** The supplier says another date. */
        PROMISED,
        /** What hadn't come was called off. */
        CANCELLED,
        CLOSED,
        TAKEN_BACK
    }

    /** Whoever took a step may take it back, and the office. */
    boolean mayBeTakenBackBy(Membership person) {
        return person.mayKeepBooks() || byId.equals(person.personId());
    }
}
