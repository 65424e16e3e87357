package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/** Finds the folder of a path that stands for a roll. */
final class RollPaths {
    private final RollCodes codes;
    private final @Nullable String rootRoll;

    /** @param rootRoll the roll that the document as a whole covers; folders called by it are part of its content */
    RollPaths(RollCodes codes, @Nullable String rootRoll) {
        this.codes = codes;
        this.rootRoll = rootRoll;
    }

    record Match(String folder, String rollCode) {}

    /**
     * A folder called exactly by a code counts before one that only starts with it. Of several rolls the innermost counts
     * (a drive's folder may be called after its first roll), of several folders of that roll the outermost.
     */
    @Nullable
    Match match(String path) {
        Match exact = null;
        Match loose = null;
        int start = 0;
        for (int end = path.indexOf('/'); end >= 0; end = path.indexOf('/', start)) {
            String name = path.substring(start, end);
            String code = codes.ofFolder(name);
            if (code != null && !code.equals(rootRoll)) {
                Match here = new Match(path.substring(0, end), code);
                loose = inner(loose, here);
                exact = codes.isExact(name) ? inner(exact, here) : exact;
            }
            start = end + 1;
        }
        return exact != null ? exact : loose;
    }

    /** The first folder, or an empty string for a file in the root. */
    static String topFolder(String path) {
        int slash = path.indexOf('/');
        return slash < 0 ? "" : path.substring(0, slash);
    }

    private static Match inner(@Nullable Match outer, Match inner) {
        return outer != null && outer.rollCode().equals(inner.rollCode()) ? outer : inner;
    }
}
