package rollbook.verification;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;

/**
 * What is known of a copy.
 *
 * @param proven on a good medium, and its encoding too if it is encoded
 * @param bad on a good medium, and known to differ or to lack files
 * @param checkedAt how old the document is that speaks for it, as it says or by its arrival; null if none does
 */
public record CopyStanding(
        Verdict verdict,
        boolean proven,
        boolean bad,
        @Nullable Instant checkedAt) {
    public static final CopyStanding UNKNOWN = new CopyStanding(Verdict.UNKNOWN, false, false, null);
}
