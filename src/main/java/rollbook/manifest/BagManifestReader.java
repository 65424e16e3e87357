package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/**
 * Reads {@code manifest-md5.txt} and its like from a bag (RFC 8493, 2.1.3): digest, blanks or tabs, path. The entries'
 * paths are relative to the payload folder, or to the bag where the manifest is one of tag files.
 */
final class BagManifestReader {
    private static final Pattern NAMED =
            Pattern.compile("(?i)(?:^|.*[^a-z])(?:tag)?manifest-[a-z0-9]+(?:[^a-z0-9].*)?");
    private static final Pattern LINE =
            Pattern.compile("[0-9A-Fa-f]{16,128}([ \\t]+)(\\*?)(?:\\./)?data/.+", Pattern.DOTALL);

    private final LineReader lines;
    private final ListedDigests digests;
    private final boolean coded;
    private final boolean ofPayload;
    private long entries;
    private long asterisks;
    private long barePercents;

    private BagManifestReader(InputStream in, DocumentHints hints, boolean coded, boolean ofPayload) {
        // The name of a bag's manifest is where the standard has the algorithm stated.
        boolean properlyNamed = NAMED.matcher(hints.fileName()).matches();
        this.lines = new LineReader(new BagLines(in));
        this.digests = new ListedDigests(hints, properlyNamed ? AlgorithmBasis.STATED : AlgorithmBasis.FILE_NAME);
        this.coded = coded;
        this.ofPayload = ofPayload;
    }

    /** @param coded whether the bag's version writes LF, CR and percent signs as codes; true where it isn't known */
    static BagManifestReader ofPayload(InputStream in, DocumentHints hints, boolean coded) {
        return new BagManifestReader(in, hints, coded, true);
    }

    static BagManifestReader ofTagFiles(InputStream in, DocumentHints hints, boolean coded) {
        return new BagManifestReader(in, hints, coded, false);
    }

    /**
     * Whether a document that begins so is a bag's manifest: every path lies under {@code data/}, and besides the name
     * says so, the lines are none of a GNU list, or no more of the document follows.
     */
    static boolean fits(byte[] start, boolean complete, String fileName) {
        String text = new String(start, StandardCharsets.ISO_8859_1);
        int end = complete ? text.length() : Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
        boolean any = false;
        boolean foreign = false;
        for (String line : text.substring(0, Math.max(0, end)).split("[\\r\\n]+")) {
            Matcher matcher = LINE.matcher(line);
            if (!line.isEmpty() && !matcher.matches()) {
                return false;
            }
            any |= !line.isEmpty();
            foreign |= !line.isEmpty() && !gnuSeparator(matcher.group(1), matcher.group(2));
        }
        return any && (foreign || complete || NAMED.matcher(fileName).matches());
    }

    private static boolean gnuSeparator(String blanks, String asterisk) {
        return blanks.equals(" ") || blanks.equals("  ") && asterisk.isEmpty();
    }

    /** Lines whose path has the asterisk of checksum tools in front; a strict reader takes it for part of the name. */
    long asterisks() {
        return asterisks;
    }

    /** Paths with a percent sign that is no code, in a version that codes them. */
    long barePercents() {
        return barePercents;
    }

    ManifestHeader read(EntrySink sink) throws IOException, ManifestException {
        for (String line = lines.next(); line != null; line = lines.next()) {
            if (!line.isBlank()) {
                sink.accept(entry(line));
                entries++;
            }
        }
        if (entries == 0) {
            throw new ManifestException(ManifestProblem.NOTHING_LISTED, Math.max(1, lines.lineNumber()), 1);
        }
        return digests.header(ManifestFormat.BAGIT, entries);
    }

    private ManifestEntry entry(String line) throws ManifestException {
        long number = lines.lineNumber();
        int digits = 0;
        while (digits < line.length() && !isBlank(line.charAt(digits))) {
            digits++;
        }
        int start = digits;
        while (start < line.length() && isBlank(line.charAt(start))) {
            start++;
        }
        if (digits == 0 || start == line.length()) {
            throw new ManifestException(ManifestProblem.BAG_LINE, number, 1, line);
        }
        if (line.charAt(start) == '*') {
            asterisks++;
            start++;
        }
        Checksum checksum = checksum(line.substring(0, digits), number);
        return new ManifestEntry(
                path(line.substring(start), number, start + 1), null, List.of(checksum), Action.NONE, number);
    }

    private Checksum checksum(String digits, long line) throws ManifestException {
        byte[] digest = Checksum.decodeHex(digits);
        Checksum checksum = digest == null ? null : digests.untagged(digest, null);
        if (checksum != null) {
            return checksum;
        }
        List<ChecksumAlgorithm> ofThisLength = ChecksumAlgorithm.ofHexDigits(digits.length());
        throw ofThisLength.isEmpty()
                ? new ManifestException(ManifestProblem.DIGEST_LENGTH, line, 1, digits.length())
                : new ManifestException(
                        ManifestProblem.DIGEST_MALFORMED,
                        line,
                        1,
                        ofThisLength.get(0).label(),
                        digits);
    }

    private String path(String listed, long line, int column) throws ManifestException {
        barePercents += coded && BagPath.hasBarePercent(listed) ? 1 : 0;
        String path = ListedPath.of(coded ? BagPath.decoded(listed) : listed, line, column);
        if (path.startsWith(BagPath.PAYLOAD) != ofPayload) {
            throw new ManifestException(
                    ofPayload ? ManifestProblem.BAG_OUTSIDE : ManifestProblem.BAG_INSIDE, line, column, path);
        }
        return ofPayload ? path.substring(BagPath.PAYLOAD.length()) : path;
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t';
    }
}
