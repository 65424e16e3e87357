package rollbook.manifest;

import java.io.IOException;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;

/**
 * Reads checksum lists. Each line may be GNU or BSD style; comment lines start with {@code #} or {@code ;}. In a list
 * whose lines are ended by NUL nothing is escaped, and a name may hold line ends.
 */
final class ChecksumListReader {
    /** The shortest digest that is read is longer; it keeps sixteen zero bytes from passing for a list. */
    private static final int SHORTEST_DIGEST = 16;

    private final LineReader lines;
    private final ListedDigests digests;
    private final boolean nulEnded;
    private final GnuListLine gnu = new GnuListLine();
    private final PathSeparator separator = new PathSeparator();
    private @Nullable ManifestFormat format;
    private long entries;

    /** @param lines of which one was read already, if there was one */
    ChecksumListReader(LineReader lines, DocumentHints hints) {
        this.lines = lines;
        this.nulEnded = lines.isNulEnded();
        this.digests = new ListedDigests(hints);
    }

    /** Whether a document's beginning is that of a list of lines that are ended by NUL. */
    static boolean isNulEnded(byte[] start) {
        for (int i = 0; i < start.length; i++) {
            if (start[i] == 0) {
                return i > SHORTEST_DIGEST;
            }
        }
        return false;
    }

    /** An empty line, or one that starts with a comment's sign. */
    static boolean isRemark(String text) {
        return text.isEmpty() || text.charAt(0) == '#' || text.charAt(0) == ';';
    }

    /** @param first the line that was read already, or null if there was none */
    ManifestHeader read(@Nullable String first, EntrySink sink) throws IOException, ManifestException {
        for (String line = first; line != null; line = lines.next()) {
            String text = nulEnded ? record(line) : line.stripLeading();
            if (!isRemark(text)) {
                sink.accept(entry(text));
                entries++;
            }
        }
        if (format == null) {
            throw new ManifestException(ManifestProblem.NOTHING_LISTED, Math.max(1, lines.lineNumber()), 1);
        }
        return digests.header(format, entries);
    }

    /**
     * A line of a list that is ended by NUL. One that holds a whole further line is a text list with NUL bytes in it,
     * such as a crash leaves behind, and would lose files.
     */
    private String record(String line) throws ManifestException {
        if (lines.end().isEmpty()) {
            throw refusal(ManifestProblem.CUT_OFF, line.length() + 1);
        }
        boolean remark = isRemark(line);
        if (line.isEmpty()) {
            throw refusal(ManifestProblem.BINARY, 1);
        }
        for (int end = line.indexOf('\n'); end >= 0; end = line.indexOf('\n', end + 1)) {
            if (remark || isListLine(line.substring(end + 1))) {
                throw refusal(ManifestProblem.BINARY, line.length() + 1);
            }
        }
        return line;
    }

    /** Whether a line begins with a digest, or is a tagged one. */
    static boolean isListLine(String text) {
        int end = 0;
        while (end < text.length() && HexFormat.isHexDigit(text.charAt(end))) {
            end++;
        }
        boolean digest = end >= SHORTEST_DIGEST && end < text.length() && text.charAt(end) <= ' ';
        return digest || BsdListLine.parse(text, true) != null;
    }

    private ManifestEntry entry(String text) throws ManifestException {
        int carriageReturn = nulEnded ? -1 : text.indexOf('\r');
        if (carriageReturn >= 0) {
            throw refusal(ManifestProblem.CARRIAGE_RETURN, carriageReturn + 1);
        }
        long number = lines.lineNumber();
        ListLine line = BsdListLine.parse(text, !nulEnded);
        ManifestFormat lineFormat = line == null ? ManifestFormat.GNU_LIST : ManifestFormat.BSD_LIST;
        if (line == null) {
            line = gnu.parse(text, !nulEnded, number);
        }
        format = format == null ? lineFormat : format;
        Checksum checksum = line.tag() == null ? untagged(line) : tagged(line, line.tag());
        String name = line.unescapedName(number);
        name = separator.withSlashes(name, nulEnded || line.escaped(), number, line.nameColumn());
        String path = ListedPath.of(name, number, line.nameColumn());
        return new ManifestEntry(path, null, List.of(checksum), Action.NONE, number);
    }

    private Checksum tagged(ListLine line, String text) throws ManifestException {
        ListedDigests.Tag tag = ListedDigests.Tag.of(text);
        if (tag == null) {
            throw refusal(ManifestProblem.ALGORITHM_UNSUPPORTED, 1, text);
        }
        Checksum checksum = digests.tagged(tag, line.digest());
        if (checksum == null) {
            throw malformed(line, tag.algorithm().label());
        }
        return checksum;
    }

    private Checksum untagged(ListLine line) throws ManifestException {
        Checksum checksum = digests.untagged(line.digest(), null);
        if (checksum == null) {
            throw noDigest(line);
        }
        return checksum;
    }

    private ManifestException noDigest(ListLine line) {
        String digest = line.digest();
        List<ChecksumAlgorithm> ofThisLength = ChecksumAlgorithm.ofHexDigits(digest.length());
        if (C4Text.looksLikeC4(digest)) {
            return malformed(line, ChecksumAlgorithm.C4.label());
        }
        if (digest.startsWith("XXH3_")) {
            return malformed(line, ChecksumAlgorithm.XXH3_64.label());
        }
        if (!ofThisLength.isEmpty()) {
            return malformed(line, ofThisLength.get(0).label());
        }
        return digest.chars().allMatch(HexFormat::isHexDigit)
                ? refusal(ManifestProblem.DIGEST_LENGTH, line.digestColumn(), digest.length())
                : refusal(ManifestProblem.NOT_A_LIST_LINE, 1, digest + " " + line.name());
    }

    private ManifestException malformed(ListLine line, String algorithm) {
        return refusal(ManifestProblem.DIGEST_MALFORMED, line.digestColumn(), algorithm, line.digest());
    }

    private ManifestException refusal(ManifestProblem problem, int column, Object... arguments) {
        return new ManifestException(problem, lines.lineNumber(), column, arguments);
    }
}
