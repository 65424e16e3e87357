package rollbook.audit;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Which acts somebody looks for.
 *
 * @param text found in the subject's code or the person's name; empty for all
 * @param subjectKind empty for all
 * @param from not before, or null
 * @param before earlier than, or null
 */
public record ActFilter(
        String text,
        String subjectKind,
        @Nullable Instant from,
        @Nullable Instant before) {
    public static final ActFilter ALL = new ActFilter("", "", null, null);

    /** What the record may be sorted by. */
    public enum Column {
        WHEN("id"),
        WHO("lower(person_name)"),
        WHAT("action");

        final String sql;

        Column(String sql) {
            this.sql = sql;
        }
    }
}
