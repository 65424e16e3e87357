package rollbook.manifest;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One pattern of what a history leaves out: a line as {@code .gitignore} files have it, without comments. */
final class IgnorePattern {
    private final boolean negated;
    private final boolean directoriesOnly;
    private final boolean anchored;
    private final List<@Nullable NameGlob> names; // a null stands for any number of folders

    private IgnorePattern(boolean negated, boolean directoriesOnly, boolean anchored, List<@Nullable NameGlob> names) {
        this.negated = negated;
        this.directoriesOnly = directoriesOnly;
        this.anchored = anchored;
        this.names = names;
    }

    /** Null for a line that matches nothing. */
    static @Nullable IgnorePattern of(String line) {
        String text = Normalizer.normalize(withoutTrailingBlanks(line), Normalizer.Form.NFC);
        boolean negated = text.startsWith("!");
        text = negated ? text.substring(1) : text;
        boolean directoriesOnly = text.endsWith("/");
        text = directoriesOnly ? text.substring(0, text.length() - 1) : text;
        boolean anchored = text.contains("/");
        List<@Nullable NameGlob> names = new ArrayList<>();
        for (String name : (text.startsWith("/") ? text.substring(1) : text).split("/", -1)) {
            NameGlob glob = anchored && name.equals("**") ? null : NameGlob.of(name);
            if (name.isEmpty() || glob == null && !name.equals("**")) {
                return null;
            }
            names.add(glob);
        }
        return new IgnorePattern(negated, directoriesOnly, anchored, names);
    }

    boolean isNegated() {
        return negated;
    }

    /**
     * @param path of a file or directory in the scope
     * @param name the last of the path
     */
    boolean matches(String path, String name, boolean directory) {
        if (directoriesOnly && !directory) {
            return false;
        }
        if (!anchored) {
            NameGlob glob = names.get(0);
            return glob != null && glob.matches(name);
        }
        return matches(path.split("/", -1));
    }

    /** Like a star over names: one way back, to the latest null. A null at the end needs a name at least. */
    private boolean matches(String[] path) {
        boolean openEnd = names.get(names.size() - 1) == null;
        int limit = openEnd ? path.length - 1 : path.length;
        int part = 0;
        int at = 0;
        int starPart = -1;
        int starAt = 0;
        while (at < limit) {
            NameGlob glob = part < names.size() ? names.get(part) : null;
            if (glob != null && glob.matches(path[at])) {
                part++;
                at++;
            } else if (glob == null && part < names.size()) {
                starPart = part++;
                starAt = at;
            } else if (starPart >= 0) {
                part = starPart + 1;
                at = ++starAt;
            } else {
                return false;
            }
        }
        while (part < names.size() && names.get(part) == null) {
            part++;
        }
        return part == names.size();
    }

    private static String withoutTrailingBlanks(String line) {
        int end = line.length();
        while (end > 0 && line.charAt(end - 1) == ' ' && !escaped(line, end - 1)) {
            end--;
        }
        return line.substring(0, end);
    }

    private static boolean escaped(String line, int at) {
        int backslashes = 0;
        while (at - backslashes > 0 && line.charAt(at - backslashes - 1) == '\\') {
            backslashes++;
        }
        return backslashes % 2 == 1;
    }
}
