package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.AlgorithmHint.Conclusion;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/** Reads checksum lists; each line may be GNU or BSD style, comment lines start with {@code #} or {@code ;}. */
final class ChecksumListReader {
    private static final String XXH3_PREFIX = "XXH3_";
    private static final String LITTLE_ENDIAN = "_LE";

    private final LineReader lines;
    private final AlgorithmHint hint;
    private final GnuListLine gnu = new GnuListLine();
    private final Set<ChecksumAlgorithm> algorithms = EnumSet.noneOf(ChecksumAlgorithm.class);
    private AlgorithmBasis basis = AlgorithmBasis.STATED;
    private @Nullable ManifestFormat format;
    private long entries;

    ChecksumListReader(InputStream in, String fileName) {
        this.lines = new LineReader(in);
        this.hint = new AlgorithmHint(fileName);
    }

    ManifestHeader read(EntrySink sink) throws IOException, ManifestException {
        for (String line = lines.next(); line != null; line = lines.next()) {
            String text = line.stripLeading();
            if (!text.isEmpty() && text.charAt(0) != '#' && text.charAt(0) != ';') {
                sink.accept(entry(text));
                entries++;
            }
        }
        if (format == null) {
            throw new ManifestException(ManifestProblem.NOTHING_LISTED, Math.max(1, lines.lineNumber()), 1);
        }
        return new ManifestHeader(
                format, algorithms, basis, entries, 0, null, null, ManifestHeader.Process.NONE, null, null);
    }

    private ManifestEntry entry(String text) throws ManifestException {
        long number = lines.lineNumber();
        int carriageReturn = text.indexOf('\r');
        if (carriageReturn >= 0) {
            throw new ManifestException(ManifestProblem.CARRIAGE_RETURN, number, carriageReturn + 1);
        }
        ListLine line = BsdListLine.parse(text);
        ManifestFormat lineFormat = line == null ? ManifestFormat.GNU_LIST : ManifestFormat.BSD_LIST;
        if (line == null) {
            line = gnu.parse(text, number);
        }
        format = format == null ? lineFormat : format;
        Checksum checksum = line.tag() == null ? untagged(line) : tagged(line, line.tag());
        algorithms.add(checksum.algorithm());
        String path = ListedPath.of(line.unescapedName(number), number, line.nameColumn());
        return new ManifestEntry(path, null, List.of(checksum), Action.NONE, number);
    }

    private Checksum tagged(ListLine line, String tag) throws ManifestException {
        boolean littleEndian = tag.toUpperCase(Locale.ROOT).matches("XXH.*" + LITTLE_ENDIAN);
        String name = littleEndian ? tag.substring(0, tag.length() - LITTLE_ENDIAN.length()) : tag;
        ChecksumAlgorithm algorithm = ChecksumAlgorithm.ofTag(name);
        if (algorithm == null) {
            throw refusal(ManifestProblem.ALGORITHM_UNSUPPORTED, 1, tag);
        }
        byte[] digest = digest(algorithm, line, line.digest());
        return Checksum.of(algorithm, littleEndian ? reversed(digest) : digest);
    }

    private Checksum untagged(ListLine line) throws ManifestException {
        String digest = line.digest();
        if (digest.startsWith(XXH3_PREFIX)) {
            return Checksum.of(
                    ChecksumAlgorithm.XXH3_64,
                    digest(ChecksumAlgorithm.XXH3_64, line, digest.substring(XXH3_PREFIX.length())));
        }
        if (C4Text.looksLikeC4(digest)) {
            return Checksum.of(ChecksumAlgorithm.C4, digest(ChecksumAlgorithm.C4, line, digest));
        }
        Conclusion conclusion = hint.conclude(digest.length());
        if (conclusion == null) {
            boolean digits = digest.chars().allMatch(HexFormat::isHexDigit);
            throw digits
                    ? refusal(ManifestProblem.DIGEST_LENGTH, line.digestColumn(), digest.length())
                    : refusal(ManifestProblem.NOT_A_LIST_LINE, 1, digest + " " + line.name());
        }
        basis = basis.weaker(conclusion.basis());
        return Checksum.assumed(conclusion.algorithm(), digest(conclusion.algorithm(), line, digest));
    }

    private byte[] digest(ChecksumAlgorithm algorithm, ListLine line, String text) throws ManifestException {
        byte[] digest = Checksum.decode(algorithm, text);
        if (digest == null) {
            throw refusal(ManifestProblem.DIGEST_MALFORMED, line.digestColumn(), algorithm.label(), text);
        }
        return digest;
    }

    private ManifestException refusal(ManifestProblem problem, int column, Object... arguments) {
        return new ManifestException(problem, lines.lineNumber(), column, arguments);
    }

    private static byte[] reversed(byte[] digest) {
        byte[] reversed = new byte[digest.length];
        for (int i = 0; i < digest.length; i++) {
            reversed[i] = digest[digest.length - 1 - i];
        }
        return reversed;
    }
}
