package rollbook.manifest;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The name of a hash list in a history: number, folder, date and time (ASC MHL 1.0, 6.3). The folder may hold
 * underscores, and early documents lack the Z.
 */
record MhlName(int number, String folder) {
    private static final Pattern NAME =
            Pattern.compile("(\\d{4,9})_(.+)_\\d{4}-\\d{2}-\\d{2}_\\d{6}Z?\\.mhl", Pattern.CASE_INSENSITIVE);

    static @Nullable MhlName of(String fileName) {
        Matcher name = NAME.matcher(fileName);
        return name.matches() ? new MhlName(Integer.parseInt(name.group(1)), name.group(2)) : null;
    }
}
