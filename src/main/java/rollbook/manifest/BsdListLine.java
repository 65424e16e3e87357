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
        // Most lines of other forms have no bracket at all, and looking for one is quicker than looking at a tag.
        int open = text.indexOf('(', start);
        int tagEnd = open > start && text.charAt(open - 1) == ' ' ? open - 1 : open;
        if (tagEnd - start < 2 || !isTag(text, start, tagEnd)) {
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

    private static boolean isTag(String text, int start, int end) {
        boolean tag = end - start <= MAX_TAG_LENGTH;
        for (int i = start; tag && i < end; i++) {
            tag = isTag(text.charAt(i), i == start);
        }
        return tag;
    }

    private static boolean isTag(char c, boolean first) {
        boolean letter = c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
        return letter || !first && (c >= '0' && c <= '9' || c == '-' || c == '_' || c == '/');
    }
}
