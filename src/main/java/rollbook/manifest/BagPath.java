package rollbook.manifest;

/**
 * Paths in a bag's text files. From version 1.0 on exactly LF, CR and the percent sign are written as codes, and nothing
 * else is one; before, a percent sign is just that (RFC 8493, 2.1.3).
 */
final class BagPath {
    /** The folder of what the bag is there for; all else in it describes that. */
    static final String PAYLOAD = "data/";

    private BagPath() {}

    static String decoded(String path) {
        if (path.indexOf('%') < 0) {
            return path;
        }
        StringBuilder decoded = new StringBuilder(path.length());
        for (int i = 0; i < path.length(); i++) {
            int coded = coded(path, i);
            decoded.append(coded < 0 ? path.charAt(i) : (char) coded);
            i += coded < 0 ? 0 : 2;
        }
        return decoded.toString();
    }

    static String encoded(String path) {
        return path.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D");
    }

    /** Whether a percent sign stands in it that is no code: version 1.0 would have coded it. */
    static boolean hasBarePercent(String path) {
        for (int at = path.indexOf('%'); at >= 0; at = path.indexOf('%', at + 1)) {
            if (coded(path, at) < 0) {
                return true;
            }
        }
        return false;
    }

    private static int coded(String path, int at) {
        if (path.charAt(at) != '%' || at + 2 >= path.length()) {
            return -1;
        }
        char first = path.charAt(at + 1);
        char second = Character.toUpperCase(path.charAt(at + 2));
        if (first == '0') {
            return second == 'A' ? '\n' : second == 'D' ? '\r' : -1;
        }
        return first == '2' && second == '5' ? '%' : -1;
    }
}
