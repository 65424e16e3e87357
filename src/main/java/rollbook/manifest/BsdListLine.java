package rollbook.manifest;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A tagged line: {@code MD5 (name) = digest}, or without the blanks before the bracket and the equals sign as OpenSSL
 * prints it. The name may itself hold {@code ) = }: the last one counts.
 */
final class BsdListLine {
    private static final Pattern START = Pattern.compile("\\\\?([A-Za-z][A-Za-z0-9-]{1,19}(?:_LE)?) ?\\(");
    private static final Pattern END = Pattern.compile("\\) ?= ([^ )]*)$");

    private BsdListLine() {}

    /** Null where the line is of another form. */
    static @Nullable ListLine parse(String text) {
        Matcher start = START.matcher(text);
        if (!start.lookingAt()) {
            return null;
        }
        int close = text.lastIndexOf(')');
        Matcher end = END.matcher(text);
        if (close < start.end() || !end.find(close)) {
            return null;
        }
        String name = text.substring(start.end(), close);
        return new ListLine(
                start.group(1), end.group(1), end.start(1) + 1, name, start.end() + 1, text.charAt(0) == '\\');
    }
}
