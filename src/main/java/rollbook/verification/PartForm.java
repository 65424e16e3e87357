package rollbook.verification;

import java.util.Collections;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a person writes of a part, and what is wrong with it.
 *
 * @param subject the name of a {@link Subject}, or empty
 * @param roll the roll's code
 * @param medium the item's code
 * @param replaces the assignment that it corrects, or null
 * @param newestSeen the part's newest assignment that the person saw, or null
 * @param problems message keys by field
 */
record PartForm(
        UUID partId,
        String subject,
        String roll,
        String medium,
        String note,
        @Nullable Long replaces,
        @Nullable Long newestSeen,
        Map<String, String> problems) {

    /** Tells the forms of one page apart. */
    public String key() {
        return partId + (replaces == null ? "" : "-" + replaces);
    }

    public boolean isWrong() {
        return !problems.isEmpty();
    }

    PartForm with(Map<String, String> found) {
        return new PartForm(
                partId, subject, roll, medium, note, replaces, newestSeen, Collections.unmodifiableMap(found));
    }
}
