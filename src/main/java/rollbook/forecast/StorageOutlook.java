package rollbook.forecast;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The newest forecast in short.
 *
 * @param sentence one or two sentences that say it, the worst leg first
 * @param computedAt when it came out like this
 * @param checkedAt when it was last found to hold
 * @param today the date it was made for, in the production's zone
 * @param legs the worst first
 * @param cover how many shooting days each covers; null when none is to come any more
 */
public record StorageOutlook(
        String sentence,
        Instant computedAt,
        Instant checkedAt,
        LocalDate today,
        LocalDate endOfShow,
        List<Leg> legs,
        @Nullable CoverPicture cover) {

    /**
     * How one leg's pool fares.
     *
     * @param sentence says the rest of it in words
     * @param waitsForSomebody whether a flag is up that nobody has put off, or something is wrong that an
     *     order can't mend
     * @param runOutOn the first date by which the pool has run out with a chance of a tenth at least; null if it lasts
     *     with more than nine tenths
     * @param orderBy the last day to order on; null without an order
     * @param items to order, in whole packs; zero without an order
     * @param cost of the order; null without one
     */
    public record Leg(
            UUID id,
            String name,
            String sentence,
            OrderFlag flag,
            boolean waitsForSomebody,
            double chanceOfRunningOut,
            @Nullable LocalDate runOutOn,
            @Nullable LocalDate orderBy,
            long items,
            long packs,
            @Nullable BigDecimal cost,
            @Nullable Currency currency) {}
}
