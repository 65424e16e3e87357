package rollbook.manifest;

/** Text for XML 1.0 content and attributes. */
final class XmlText {
    private XmlText() {}

    /**
     * Escapes markup, and the white space that a parser would normalise. {@link IllegalArgumentException} for characters
     * that XML 1.0 can't hold at all.
     */
    static String escape(String text) {
        StringBuilder escaped = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\t', '\n', '\r' -> escaped.append("&#").append(c).append(';');
                default -> escaped.appendCodePoint(allowed(c));
            }
        });
        return escaped.toString();
    }

    private static int allowed(int c) {
        boolean surrogate = c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
        if (c < 0x20 || surrogate || c == 0xFFFE || c == 0xFFFF) {
            throw new IllegalArgumentException(String.format("XML can't hold the character U+%04X", c));
        }
        return c;
    }
}
