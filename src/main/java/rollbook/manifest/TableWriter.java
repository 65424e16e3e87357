package rollbook.manifest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A table of path, size and one column for each algorithm, as CSV (RFC 4180).
 *
 * <p>A path that a spreadsheet program would run as a formula gets {@code ./} in front, as does one that holds a
 * {@code \} that is a letter: it names the same file everywhere, is no formula, and says what separates folders.
 */
final class TableWriter implements ManifestWriter {
    private static final String BEGINS_FORMULA = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private final BufferedWriter out;
    private final Set<ChecksumAlgorithm> algorithms;

    TableWriter(OutputStream out, Set<ChecksumAlgorithm> algorithms) throws IOException {
        this.out = ListText.utf8(out);
        this.algorithms = EnumSet.copyOf(algorithms);
        List<String> names = new ArrayList<>(List.of("path", "size"));
        this.algorithms.forEach(algorithm -> names.add(algorithm.label()));
        record(names);
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        List<String> cells = new ArrayList<>();
        cells.add(path(entry.path()));
        cells.add(entry.sizeBytes() == null ? "" : entry.sizeBytes().toString());
        boolean any = false;
        for (ChecksumAlgorithm algorithm : algorithms) {
            String text = entry.checksums().stream()
                    .filter(checksum -> checksum.algorithm() == algorithm)
                    .map(Checksum::text)
                    .findFirst()
                    .orElse("");
            any |= !text.isEmpty();
            cells.add(text);
        }
        if (!any) {
            throw new IllegalArgumentException("No checksum for " + entry.path());
        }
        record(cells);
    }

    private static String path(String path) {
        boolean unclear = BEGINS_FORMULA.indexOf(path.charAt(0)) >= 0 || path.indexOf('\\') >= 0;
        return unclear ? "./" + path : path;
    }

    private void record(List<String> cells) throws IOException {
        out.write(cells.stream().map(TableWriter::quoted).collect(Collectors.joining(",", "", "\r\n")));
    }

    private static String quoted(String cell) {
        boolean needed = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n' || c == ' ');
        return needed ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
