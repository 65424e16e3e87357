package rollbook.turnaround;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.turnaround.OffloadPart.CardWay;
import rollbook.turnaround.OffloadPart.WrittenKind;

/**
 * An offload of the show: all that was written was written together.
 *
 * @param bytes read from the card; 0 for one that broke off or still runs, which teaches nothing itself, but may have
 *     held others back
 * @param startMillis on any clock that all sessions share
 * @param endMillis when somebody said that it had ended, which may be late
 */
public record PastSession(CardWay way, List<Written> written, long bytes, long startMillis, long endMillis) {

    /** A medium by its code, and what media are as fast as it. */
    public record Written(String medium, WrittenKind kind) {}

    public PastSession {
        written = List.copyOf(written);
        if (bytes < 0) {
            throw new IllegalArgumentException("bytes below zero: " + bytes);
        }
    }

    /** Bytes over the time between start and end; empty if either is nothing. */
    Optional<DataRate> rate() {
        return bytes > 0 && endMillis > startMillis
                ? Optional.of(DataRate.of(ByteCount.of(bytes), Duration.ofMillis(endMillis - startMillis)))
                : Optional.empty();
    }

    Combination combination() {
        return new Combination(way, written.stream().map(Written::kind).collect(Collectors.toSet()));
    }

    /** Whether both used one reader or wrote to one medium. */
    boolean shares(PastSession other) {
        if (way.reader().equals(other.way.reader())) {
            return true;
        }
        for (Written one : written) {
            for (Written another : other.written) {
                if (one.medium().equals(another.medium())) {
                    return true;
                }
            }
        }
        return false;
    }
}
