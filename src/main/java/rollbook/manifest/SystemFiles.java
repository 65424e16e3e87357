package rollbook.manifest;

import java.util.Locale;
import java.util.Set;

/**
 * Files that operating systems leave on a medium, and hidden ones: they come and go by themselves and are none of a
 * camera's (common practice, no source).
 */
final class SystemFiles {
    private static final Set<String> NAMES =
            Set.of("thumbs.db", "desktop.ini", "system volume information", "$recycle.bin");

    private SystemFiles() {}

    /** Whether the file or a folder that it lies in is one. */
    static boolean isOne(String path) {
        int start = 0;
        for (int end = path.indexOf('/'); end >= 0; end = path.indexOf('/', start)) {
            if (isName(path.substring(start, end))) {
                return true;
            }
            start = end + 1;
        }
        return isName(path.substring(start));
    }

    private static boolean isName(String name) {
        return name.startsWith(".") || NAMES.contains(name.toLowerCase(Locale.ROOT));
    }
}
