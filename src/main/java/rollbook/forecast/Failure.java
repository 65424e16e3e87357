package rollbook.forecast;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.core.NestedExceptionUtils;

/**
 * A forecast that can't be computed.
 *
 * @param what went wrong, as the program says it
 */
record Failure(Instant since, String what, Instant nextTryAt) {
    private static final int LONGEST = 300;

    /** The innermost cause in a line. */
    static String of(@Nullable Throwable thrown) {
        if (thrown == null) {
            return "interrupted";
        }
        Throwable cause = NestedExceptionUtils.getMostSpecificCause(thrown);
        String text = "%s: %s"
                .formatted(
                        cause.getClass().getSimpleName(),
                        Objects.requireNonNullElse(cause.getMessage(), "").replaceAll("\\s+", " "));
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 1) + "…";
    }
}
