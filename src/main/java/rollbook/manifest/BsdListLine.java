package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/**
 * A tagged line: {@code MD5 (name) = digest}, or without the blanks before the bracket and the equals sign as OpenSSL
 * prints it. The name may itself hold {@code ) = }: the last one counts.
 */
final class BsdListLine {
    private static final int MAX_TAG_LENGTH = 24;

    private BsdListLine() {}

    /** Null where the line is of another form. */
    static @Nullable ListLine parse(String text, boolean escapes) {
        int start = escapes && text.startsWith("\\") ? 1 : 0;
        int tagEnd = tagEnd(text, start);
        int open = tagEnd < text.length() && text.charAt(tagEnd) == ' ' ? tagEnd + 1 : tagEnd;
        if (tagEnd - start < 2 || open >= text.length() || text.charAt(open) != '(') {
            return null;
        }
        int close = text.lastIndexOf(')');
        int equals = close + 1 < text.length() && text.charAt(close + 1) == ' ' ? close + 2 : close + 1;
        int digest = equals + 2;
        if (close <= open || !text.startsWith("= ", equals) || text.indexOf(' ', digest) >= 0) {
            return null;
        }
        String name = text.substring(open + 1, close);
        return new ListLine(
                text.substring(start, tagEnd), text.substring(digest), digest + 1, name, open + 2, start == 1);
    }

    private static int tagEnd(String text, int start) {
        int limit = Math.min(text.length(), start + MAX_TAG_LENGTH);
        int end = start;
        while (end < limit && isTag(text.charAt(end), end == start)) {
            end++;
        }
        return end;
    }

    private static boolean isTag(char c, boolean first) {
        boolean letter = c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
        return letter || !first && (c >= '0' && c <= '9' || c == '-' || c == '_' || c == '/');
    }
}
