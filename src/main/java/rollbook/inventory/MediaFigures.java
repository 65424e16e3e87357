package rollbook.inventory;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a production's items are doing. Lists of codes are joined by commas, which no code holds.
 *
 * @param registered all items ever
 * @param present those not retired or returned
 * @param cards good cards, in whatever state
 * @param working cards in a camera, exposed or being copied
 * @param overdue hired items that should have gone back
 * @param dueSoon hired items due back within {@link #SOON_DAYS} days
 * @param dueSoonUntil the last day of those
 */
record MediaFigures(
        long registered,
        long present,
        long cards,
        long blank,
        long held,
        long clearToErase,
        long working,
        String quarantined,
        String lost,
        String overdue,
        String dueSoon,
        @Nullable LocalDate dueSoonUntil) {
    static final int SOON_DAYS = 7;

    static List<String> list(String codes) {
        return codes.isEmpty() ? List.of() : List.of(codes.split(","));
    }
}
