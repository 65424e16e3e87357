package rollbook.report;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A person's signature below a day's report.
 *
 * @param sha256 of the facts that were signed, in lower-case hexadecimal
 * @param content these facts, as their CSV file
 * @param withdrawnReason null unless it was taken back
 */
record SignOff(
        UUID id,
        UUID dayId,
        String sha256,
        Instant signedAt,
        UUID signedBy,
        String signedByName,
        String remark,
        String content,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnReason) {

    boolean stands() {
        return withdrawnAt == null;
    }
}
