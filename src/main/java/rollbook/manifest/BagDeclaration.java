package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What {@code bagit.txt} says: the version of the bag and how its other text files are coded (RFC 8493, 2.1.1).
 *
 * @param wellFormed whether it is exactly the two lines that the standard asks for
 */
record BagDeclaration(int major, int minor, String encoding, boolean wellFormed) {
    private static final int MAX_BYTES = 4_096;
    private static final Pattern STRICT =
            Pattern.compile("BagIt-Version: \\d{1,4}\\.\\d{1,4}\\n" + "Tag-File-Character-Encoding: [^\\s:]+\\n?");
    private static final Pattern LOOSE = Pattern.compile(
            "\\s*BagIt-Version\\s*:\\s*(\\d{1,4})\\.(\\d{1,4})\\s+Tag-File-Character-Encoding\\s*:\\s*(\\S+)\\s*",
            Pattern.CASE_INSENSITIVE);

    /** The version that is written. */
    static final BagDeclaration CURRENT = new BagDeclaration(1, 0, "UTF-8", true);

    /** Null where no version and encoding can be made out. */
    static @Nullable BagDeclaration read(InputStream in) throws IOException {
        byte[] start = new BagLines(in).readNBytes(MAX_BYTES);
        String text = new String(start, StandardCharsets.UTF_8);
        Matcher found = LOOSE.matcher(text.startsWith("\uFEFF") ? text.substring(1) : text);
        return found.matches()
                ? new BagDeclaration(
                        Integer.parseInt(found.group(1)),
                        Integer.parseInt(found.group(2)),
                        found.group(3),
                        STRICT.matcher(text).matches())
                : null;
    }

    void write(OutputStream out) throws IOException {
        String text = "BagIt-Version: " + version() + "\nTag-File-Character-Encoding: " + encoding + "\n";
        out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    String version() {
        return major + "." + minor;
    }

    /** Whether paths have codes for LF, CR and the percent sign. */
    boolean codesPaths() {
        return major >= 1;
    }

    boolean known() {
        return major == 0 && minor >= 93 && minor <= 97 || major == 1 && minor == 0;
    }

    boolean readable() {
        return encoding.equalsIgnoreCase("UTF-8") || encoding.equalsIgnoreCase("US-ASCII");
    }
}
