package rollbook.manifest;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The first line of a table: which column holds what, and what separates the cells. Column names are told by their
 * letters and digits alone, so that "Size, bytes" and {@code size_bytes} are the same. Columns that are not understood
 * stay unread.
 */
record TableHeader(char separator, List<Column> columns) {
    private static final char[] SEPARATORS = {',', ';', '\t'};
    /** Where a table has several of them, the one further left in the list counts. */
    private static final List<String> PATH =
            List.of("path", "filepath", "relativepath", "pathname", "file", "filename", "name");

    private static final List<String> SIZE = List.of("size", "sizebytes", "sizeinbytes", "filesize", "bytes", "length");
    private static final Set<String> DIGEST = Set.of("checksum", "hash", "digest");
    private static final Set<String> ALGORITHM = Set.of("algorithm", "hashalgorithm", "checksumalgorithm");
    private static final Pattern OF_A_DIGEST = Pattern.compile("(?:sum|checksum|hash|digest)$");

    enum Kind {
        PATH,
        SIZE,
        /** Digests of the algorithm that names the column, or of one that the row or nobody names. */
        DIGEST,
        /** Names the algorithm of the row's digest. */
        ALGORITHM,
        UNREAD
    }

    /** @param name as the document has it */
    record Column(String name, Kind kind, ListedDigests.@Nullable Tag tag) {}

    /**
     * Null where the line is no header of a table of files: it must name a column of paths and one of digests.
     */
    static @Nullable TableHeader of(String line, long number) throws IOException, ManifestException {
        TableHeader best = null;
        for (char separator : SEPARATORS) {
            if (line.indexOf(separator) >= 0) {
                TableHeader header = of(line, separator);
                best = best == null || header != null && header.read() > best.read() ? header : best;
            }
        }
        if (best != null) {
            best.refuseRepetition(number);
        }
        return best;
    }

    private static @Nullable TableHeader of(String line, char separator) throws IOException {
        List<String> names = new ArrayList<>();
        try {
            LineReader nothingMore = new LineReader(new ByteArrayInputStream(new byte[0]));
            new TableRecords(nothingMore, separator).record(line).forEach(cell -> names.add(cell.text()));
        } catch (ManifestException notInOneLine) {
            return null;
        }
        String path = first(PATH, names);
        String size = first(SIZE, names);
        List<Column> columns =
                names.stream().map(name -> column(name, path, size)).toList();
        boolean digests = columns.stream().anyMatch(column -> column.kind() == Kind.DIGEST);
        return path != null && digests ? new TableHeader(separator, columns) : null;
    }

    private static @Nullable String first(List<String> wanted, List<String> names) {
        Set<String> there = new HashSet<>();
        names.forEach(name -> there.add(plain(name)));
        return wanted.stream().filter(there::contains).findFirst().orElse(null);
    }

    private static Column column(String name, @Nullable String path, @Nullable String size) {
        String plain = plain(name);
        if (plain.equals(path)) {
            return new Column(name, Kind.PATH, null);
        }
        if (plain.equals(size)) {
            return new Column(name, Kind.SIZE, null);
        }
        if (ALGORITHM.contains(plain)) {
            return new Column(name, Kind.ALGORITHM, null);
        }
        ListedDigests.Tag tag = tag(name);
        return new Column(name, tag != null || DIGEST.contains(plain) ? Kind.DIGEST : Kind.UNREAD, tag);
    }

    /** The algorithm that a column, or a cell of the column of algorithms, names. */
    static ListedDigests.@Nullable Tag tag(String name) {
        ListedDigests.Tag asInLists = ListedDigests.Tag.of(name.strip());
        if (asInLists != null) {
            return asInLists;
        }
        String plain = OF_A_DIGEST.matcher(plain(name)).replaceFirst("");
        boolean littleEndian = plain.startsWith("xxh") && plain.endsWith("le");
        String algorithm = littleEndian ? plain.substring(0, plain.length() - 2) : plain;
        for (ChecksumAlgorithm candidate : ChecksumAlgorithm.values()) {
            boolean byTag = candidate.tag() != null && plain(candidate.tag()).equals(algorithm);
            if (byTag || plain(candidate.label()).equals(algorithm)) {
                return new ListedDigests.Tag(candidate, littleEndian);
            }
        }
        return algorithm.equals("c4id") ? new ListedDigests.Tag(ChecksumAlgorithm.C4, false) : null;
    }

    private void refuseRepetition(long line) throws ManifestException {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        Set<ChecksumAlgorithm> algorithms = EnumSet.noneOf(ChecksumAlgorithm.class);
        for (Column column : columns) {
            boolean first = column.kind() == Kind.UNREAD
                    || (column.tag() == null
                            ? kinds.add(column.kind())
                            : algorithms.add(column.tag().algorithm()));
            if (!first) {
                throw new ManifestException(ManifestProblem.TABLE_COLUMN_TWICE, line, 1, column.name());
            }
        }
    }

    private long read() {
        return columns.stream().filter(column -> column.kind() != Kind.UNREAD).count();
    }

    private static String plain(String name) {
        StringBuilder plain = new StringBuilder();
        name.toLowerCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }
}
