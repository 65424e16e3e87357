package rollbook.manifest;

import java.util.ArrayList;
import java.util.List;

/**
 * What a history leaves out (ASC MHL 1.0, 5.6.1.2 and appendix C). The last pattern that matches decides; below an
 * ignored directory everything is, whatever later patterns say. Letter case counts.
 */
public final class IgnorePatterns {
    private final List<IgnorePattern> patterns = new ArrayList<>();

    public IgnorePatterns(List<String> lines) {
        for (String line : lines) {
            IgnorePattern pattern = IgnorePattern.of(line);
            if (pattern != null) {
                patterns.add(pattern);
            }
        }
    }

    /** Whether a file of this path, in form NFC, is left out, by itself or with a directory above it. */
    public boolean ignoreFile(String path) {
        return ignoreDirectory(directoryOf(path)) || matches(path, false);
    }

    public boolean ignoreDirectory(String path) {
        if (patterns.isEmpty()) {
            return false;
        }
        for (int slash = path.indexOf('/'); slash >= 0; slash = path.indexOf('/', slash + 1)) {
            if (matches(path.substring(0, slash), true)) {
                return true;
            }
        }
        return !path.isEmpty() && matches(path, true);
    }

    /** Whether the file or directory itself is left out; those above it are not looked at. */
    boolean matches(String path, boolean directory) {
        String name = path.substring(path.lastIndexOf('/') + 1);
        for (int i = patterns.size() - 1; i >= 0; i--) {
            if (patterns.get(i).matches(path, name, directory)) {
                return !patterns.get(i).isNegated();
            }
        }
        return false;
    }

    static String directoryOf(String path) {
        return path.substring(0, Math.max(0, path.lastIndexOf('/')));
    }
}
