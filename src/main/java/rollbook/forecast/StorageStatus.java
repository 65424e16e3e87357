package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Band;

/**
 * Whether storage lasts the show, for somebody who has one page's time for it.
 *
 * @param sentence one or two sentences that say it, the worst leg first
 * @param today the date it was made for, in the production's zone
 * @param checkedAt when it was last found to hold
 * @param method how it was computed, in words
 * @param outdated whether something has changed since
 * @param pools the worst first
 */
public record StorageStatus(
        String sentence,
        LocalDate today,
        LocalDate endOfShow,
        Instant checkedAt,
        String method,
        boolean outdated,
        List<Pool> pools) {

    /**
     * One leg's pool.
     *
     * @param tag the order flag in a few words
     * @param roomBytes free on the usable items, within the fill level
     * @param capacityBytes what the usable items may hold in all, within the fill level
     * @param coverDays shooting days that fit before it runs out, of {@code daysToCome}
     * @param leadDays shooting days before an order placed now is likely there; null where that isn't known or is too late
     * @param chance that it runs out before the end of the show, in words
     * @param orderBy the last day to order on; null without an order
     * @param order what to order, in words; empty without an order
     * @param cost of the order, in words; empty without an order
     * @param points the room left at the end of each date on which something happens, from today on
     */
    public record Pool(
            UUID id,
            String name,
            String sentence,
            String tag,
            OrderFlag flag,
            long roomBytes,
            long capacityBytes,
            Band coverDays,
            int daysToCome,
            @Nullable Integer leadDays,
            String chance,
            @Nullable LocalDate orderBy,
            String order,
            String cost,
            List<Point> points) {}

    public record Point(LocalDate date, Band leftBytes) {}
}
