package rollbook.manifest;

/**
 * What separates the folders in the paths of a list: {@code /}, or in lists that were made on some systems {@code \},
 * which elsewhere is a letter like any other. The first path that holds either of them decides for the document. So two
 * different names never become one path: where {@code \} separates, a path with {@code /} is refused, and where
 * {@code /} does, {@code \} stays a letter.
 */
final class PathSeparator {
    private enum Kind {
        UNKNOWN,
        SLASH,
        BACKSLASH
    }

    private Kind kind = Kind.UNKNOWN;

    /**
     * The name with {@code /} for what separates its folders.
     *
     * @param escaped whether the document marks what is a letter, so that a {@code \\} that is left is one
     */
    String withSlashes(String name, boolean escaped, long line, int column) throws ManifestException {
        if (name.indexOf('/') >= 0) {
            if (kind == Kind.BACKSLASH) {
                throw new ManifestException(ManifestProblem.PATH_SEPARATORS, line, column, name);
            }
            kind = Kind.SLASH;
            return name;
        }
        if (escaped || kind == Kind.SLASH || name.indexOf('\\') < 0) {
            return name;
        }
        if (kind == Kind.UNKNOWN && !isRelative(name)) {
            return name;
        }
        if (name.charAt(0) == '\\') {
            throw new ManifestException(ManifestProblem.PATH_ABSOLUTE, line, column, name);
        }
        kind = Kind.BACKSLASH;
        return name.replace('\\', '/');
    }

    private static boolean isRelative(String name) {
        return name.charAt(0) != '\\' && !name.endsWith("\\") && !name.contains("\\\\");
    }
}
