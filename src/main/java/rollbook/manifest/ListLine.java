package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/**
 * The parts of one line of a checksum list, the name still escaped.
 *
 * @param tag the algorithm as printed, null where the form has none
 * @param digestColumn 1-based
 * @param nameColumn 1-based
 * @param escaped whether the line started with the backslash that announces escapes in the name
 */
record ListLine(@Nullable String tag, String digest, int digestColumn, String name, int nameColumn, boolean escaped) {

    /** The name with {@code \\}, {@code \n} and {@code \r} undone; other escapes are reserved. */
    String unescapedName(long line) throws ManifestException {
        if (!escaped || name.indexOf('\\') < 0) {
            return name;
        }
        StringBuilder plain = new StringBuilder(name.length());
        for (int i = 0; i < name.length(); i++) {
            char c = name.charAt(i);
            plain.append(c == '\\' ? escape(++i, line) : c);
        }
        return plain.toString();
    }

    private char escape(int index, long line) throws ManifestException {
        char c = index < name.length() ? name.charAt(index) : ' ';
        return switch (c) {
            case '\\' -> '\\';
            case 'n' -> '\n';
            case 'r' -> '\r';
            default -> throw new ManifestException(ManifestProblem.ESCAPE_UNKNOWN, line, nameColumn + index - 1, c);
        };
    }
}
