package rollbook.manifest;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Brings a listed path into its most direct form and refuses one that leads out of the manifest's folder. */
final class ListedPath {
    private static final Pattern PARENT = Pattern.compile("(?:.*[\\\\/])?\\.\\.(?:[\\\\/].*)?", Pattern.DOTALL);

    private ListedPath() {}

    static String of(String listed, long line, int column) throws ManifestException {
        if (listed.startsWith("/") || listed.startsWith("\\\\")) {
            throw new ManifestException(ManifestProblem.PATH_ABSOLUTE, line, column, listed);
        }
        if (startsWithDrive(listed)) {
            throw new ManifestException(ManifestProblem.PATH_DRIVE, line, column, listed);
        }
        if (listed.contains("..") && PARENT.matcher(listed).matches()) {
            throw new ManifestException(ManifestProblem.PATH_PARENT, line, column, listed);
        }
        String path = isDirect(listed) ? listed : direct(listed);
        if (path.isEmpty() || path.indexOf('\0') >= 0) {
            throw new ManifestException(ManifestProblem.PATH_EMPTY, line, column);
        }
        return path;
    }

    private static boolean startsWithDrive(String path) {
        if (path.length() < 3 || path.charAt(1) != ':') {
            return false;
        }
        char drive = path.charAt(0);
        boolean letter = drive >= 'A' && drive <= 'Z' || drive >= 'a' && drive <= 'z';
        return letter && (path.charAt(2) == '\\' || path.charAt(2) == '/');
    }

    private static boolean isDirect(String path) {
        return !path.startsWith("./")
                && !path.contains("/./")
                && !path.contains("//")
                && !path.endsWith("/")
                && !path.endsWith("/.")
                && !path.equals(".");
    }

    private static String direct(String path) {
        List<String> names = new ArrayList<>();
        for (String name : path.split("/")) {
            if (!name.isEmpty() && !name.equals(".")) {
                names.add(name);
            }
        }
        return String.join("/", names);
    }
}
