package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.web.Link;

/**
 * All that the storage page shows of a forecast.
 *
 * @param because why it was computed, in words
 * @param unchangedSince when it was computed first, if the same inputs were found again later
 * @param outdated whether a newer one is being computed
 */
record StoragePage(
        List<Leg> legs,
        List<StorageFacts.Fact> facts,
        String method,
        String because,
        List<Link> sources,
        @Nullable Instant checkedAt,
        @Nullable Instant unchangedSince,
        boolean outdated) {

    /** @param needsMedia whether the pool has no item that can be used */
    record Leg(
            UUID id,
            String name,
            String sentence,
            String flag,
            OrderFlag urgency,
            boolean needsMedia,
            BurnDownPicture large,
            BurnDownPicture small,
            List<Row> rows,
            List<StorageFacts.Fact> facts) {}

    /** @param days the shooting days of the date, in words */
    record Row(LocalDate date, boolean past, String days, BurnDown.Point point) {}
}
