package rollbook.offload;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.web.Refusal;

/**
 * One session that reads a card through a reader and writes copies.
 *
 * @param expectedBytesPerSecond the speed of the slowest part involved, or null if none of their speeds is known
 */
public record Offload(
        UUID id,
        UUID rollId,
        String rollCode,
        String cardCode,
        String readerCode,
        @Nullable String adapterCode,
        String destinations,
        @Nullable Long expectedBytesPerSecond,
        Instant startedAt,
        @Nullable Instant endedAt,
        Outcome outcome,
        @Nullable Long sizeBytes,
        String note) {

    public enum Outcome {
        RUNNING,
        FINISHED,
        ABANDONED
    }

    /** Bytes per second from start to end, or null while it runs, if it was abandoned, or if it took no time. */
    public @Nullable Long measuredBytesPerSecond() {
        if (sizeBytes == null || endedAt == null) {
            return null;
        }
        long millis = Duration.between(startedAt, endedAt).toMillis();
        return millis <= 0 ? null : Math.round(sizeBytes * 1000.0 / millis);
    }

    /** @throws Refusal if the session has ended */
    void requireRunning() {
        if (outcome != Outcome.RUNNING) {
            throw new Refusal("offload.refused.ended-already", rollCode);
        }
    }
}
