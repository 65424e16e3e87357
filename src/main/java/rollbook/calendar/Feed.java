package rollbook.calendar;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A person's address of a production's calendar, without its secret.
 *
 * @param id of this address; a new one has another
 * @param fetchedAt to the minute, null if nobody has read it yet
 */
record Feed(
        UUID id,
        UUID productionId,
        UUID personId,
        Instant madeAt,
        @Nullable Instant fetchedAt) {}
