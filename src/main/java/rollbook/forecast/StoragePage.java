package rollbook.forecast;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.web.Link;

/**
 * All that the storage page shows of a forecast.
 *
 * @param cover null when no day is to come any more
 * @param plan the cheapest orders for all pools together, if any are needed
 * @param learned what the show has taught, in sentences
 * @param because why it was computed, in words
 * @param unchangedSince when it was computed first, if the same inputs were found again later
 * @param outdated whether a newer one is being computed
 * @param failure why there is no newer one; null if nothing failed
 */
record StoragePage(
        @Nullable CoverPicture cover,
        List<Leg> legs,
        OrderWords.@Nullable Plan plan,
        List<String> learned,
        String method,
        String because,
        List<Link> sources,
        @Nullable Instant checkedAt,
        @Nullable Instant unchangedSince,
        boolean outdated,
        @Nullable Failure failure) {

    /** @param needsMedia whether the pool has no item that can be used */
    record Leg(
            UUID id,
            String name,
            String sentence,
            String tag,
            OrderFlag need,
            boolean needsMedia,
            @Nullable FlagPart flag,
            List<StorageFacts.Fact> why,
            List<OrderWords.Waiting> waiting,
            List<OrderLine> orders,
            BurnDownPicture large,
            BurnDownPicture small,
            List<Row> rows,
            List<StorageFacts.Fact> facts) {}

    /**
     * An open flag.
     *
     * @param says how it stands
     * @param canAcknowledge whether nobody has yet
     * @param canReopen whether there is something to take back
     * @param lastAct the number of the last act that the page shows
     * @param history what became of it, oldest first
     */
    record FlagPart(
            UUID id, String says, boolean canAcknowledge, boolean canReopen, int lastAct, List<String> history) {}

    /** Media on order. */
    record OrderLine(UUID id, String text) {}

    /**
     * A date. Bytes are null where there is nothing to say.
     *
     * @param days its shooting days, in words
     * @param leftLow nine of ten courses of the show leave more
     * @param leftHigh nine of ten leave less
     */
    record Row(
            String date,
            String days,
            @Nullable Long planned,
            @Nullable Long recorded,
            @Nullable Long expected,
            @Nullable Long leaving,
            @Nullable Long returned,
            @Nullable Long left,
            @Nullable Long leftLow,
            @Nullable Long leftHigh,
            String runOutChance) {}
}
