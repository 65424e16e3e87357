package rollbook.cost;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One cost.
 *
 * @param hired else bought
 * @param minorUnits in the smallest unit of the production's currency; not below zero
 * @param what in words, such as a model or a supplier
 * @param source of what it is: order 7, hire 3, an item's code; empty for what nobody has ordered yet
 * @param path below the production's address, of the page that tells more
 * @param on when it is owed; null if nobody wrote it down
 */
record CostLine(
        Stage stage,
        CostKind kind,
        boolean hired,
        long minorUnits,
        String what,
        String source,
        String path,
        @Nullable LocalDate on) {
    CostLine {
        if (minorUnits < 0) {
            throw new IllegalArgumentException("%s for %d".formatted(what, minorUnits));
        }
    }
}
