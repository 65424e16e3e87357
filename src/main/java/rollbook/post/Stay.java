package rollbook.post;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A time that an item was at post, by its chain of custody.
 *
 * @param custodyId the link by which it came
 * @param until when it went elsewhere; null while it is there
 * @param registered whether it has been there since it was registered, so that nobody sent it
 * @param here what post last said of it: that it is there, that it isn't, or null for nothing
 * @param saidByName who said it
 */
record Stay(
        UUID itemId,
        long custodyId,
        Instant arrivedAt,
        @Nullable Instant until,
        boolean registered,
        @Nullable Boolean here,
        @Nullable Instant saidAt,
        @Nullable String saidByName,
        @Nullable String note) {

    boolean isCurrent() {
        return until == null;
    }

    boolean includes(Instant instant) {
        return !instant.isBefore(arrivedAt) && (until == null || instant.isBefore(until));
    }

    /** Whether post says that it isn't there, and has said so since the instant, if there is one. */
    boolean isDenied(@Nullable Instant since) {
        return Boolean.FALSE.equals(here) && (since == null || saidAt != null && saidAt.isAfter(since));
    }
}
