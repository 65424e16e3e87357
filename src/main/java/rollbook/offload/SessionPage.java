package rollbook.offload;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A session with all that is expected of it.
 *
 * @param expectedBytes what the card holds of the roll, known or estimated; null if neither
 * @param expectedEnd null if the rate or the bytes are unknown, or the session has ended
 * @param difference of the measured rate from the expected one, as a share of it
 * @param warnings about destinations with too little room
 */
record SessionPage(
        Offload offload,
        Roll roll,
        List<SessionPart> parts,
        ExpectedRate expectedRate,
        @Nullable Long expectedBytes,
        @Nullable Instant expectedEnd,
        @Nullable Double difference,
        List<String> warnings) {

    public boolean running() {
        return offload.outcome() == Offload.Outcome.RUNNING;
    }

    public boolean finished() {
        return offload.outcome() == Offload.Outcome.FINISHED;
    }
}
