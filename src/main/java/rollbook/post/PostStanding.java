package rollbook.post;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What has come to post of all that was shot, and what waits for somebody there.
 *
 * @param placeName the place that is post; null while nobody chose one, and then nothing else is known
 * @param rolls pulled from a camera so far
 * @param received rolls of which post has confirmed that a copy came, or has read one
 * @param proven rolls of which a copy was read at post and is proven
 * @param amiss media that are lost, aren't there, are late or hold a bad copy; worst first
 * @param underWay media on their way in time
 * @param toConfirm media that set says are at post, of which nobody there has said so
 * @param toCheck media at post with rolls that nobody has read there
 * @param toRelease media at post that may be cleared, are cleared, or are erased and may go back
 */
public record PostStanding(
        @Nullable String placeName,
        int rolls,
        int received,
        int proven,
        List<Medium> amiss,
        List<Medium> underWay,
        List<Medium> toConfirm,
        List<Medium> toCheck,
        List<Medium> toRelease) {

    /**
     * @param rolls how many rolls on it this is about
     * @param says a sentence
     */
    public record Medium(UUID itemId, String itemCode, int rolls, String says) {}
}
