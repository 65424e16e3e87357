package rollbook.forecast;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;

/**
 * The newest forecast in short.
 *
 * @param sentence one or two sentences that say it, the worst leg first
 * @param checkedAt when it was last found to hold
 * @param today the date it was made for, in the production's zone
 * @param legs the worst first
 */
public record StorageOutlook(String sentence, Instant checkedAt, LocalDate today, LocalDate endOfShow, List<Leg> legs) {

    /**
     * How one leg's pool fares.
     *
     * @param sentence says the rest of it in words
     * @param runOutOn the first date on which the pool has less room than it needs; null if it lasts
     * @param runOutDay the shooting day whose bytes don't fit; null if it lasts or nothing is shot on that date
     * @param orderBy the last working day to order on, before today if it is late; null without an order
     * @param items to order, in whole packs; zero without an order
     * @param cost of all items; null without an order
     */
    public record Leg(
            UUID id,
            String name,
            String sentence,
            OrderFlag flag,
            @Nullable LocalDate runOutOn,
            @Nullable DayRef runOutDay,
            @Nullable LocalDate orderBy,
            long items,
            long packs,
            @Nullable BigDecimal cost,
            @Nullable Currency currency) {}
}
