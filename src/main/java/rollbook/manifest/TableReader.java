package rollbook.manifest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.TableHeader.Column;
import rollbook.manifest.TableHeader.Kind;
import rollbook.manifest.TableRecords.Cell;

/** Reads a table of files with a header, a file in each row; empty cells say nothing. */
final class TableReader {
    /** Digits that any size has: the largest is 9223372036854775807. */
    private static final int SIZE_DIGITS = 19;

    private final TableRecords records;
    private final List<Column> columns;
    private final ListedDigests digests;
    private final PathSeparator separator = new PathSeparator();

    /** @param lines after the header */
    TableReader(LineReader lines, TableHeader header, DocumentHints hints) {
        this.records = new TableRecords(lines, header.separator());
        this.columns = header.columns();
        this.digests = new ListedDigests(hints);
    }

    ManifestHeader read(EntrySink sink) throws IOException, ManifestException {
        long entries = 0;
        for (List<Cell> row = records.next(); row != null; row = records.next()) {
            sink.accept(entry(row));
            entries++;
        }
        if (entries == 0) {
            throw new ManifestException(ManifestProblem.NOTHING_LISTED, 1, 1);
        }
        return digests.header(ManifestFormat.TABLE, entries);
    }

    private ManifestEntry entry(List<Cell> row) throws ManifestException {
        Cell first = row.get(0);
        if (row.size() != columns.size()) {
            throw new ManifestException(
                    ManifestProblem.TABLE_CELLS, first.line(), first.column(), row.size(), columns.size());
        }
        String path = path(cell(row, Kind.PATH));
        Long size = size(row);
        return new ManifestEntry(path, size, checksums(row, size), Action.NONE, first.line());
    }

    private String path(Cell cell) throws ManifestException {
        String name = separator.withSlashes(cell.text(), false, cell.line(), cell.column());
        return ListedPath.of(name, cell.line(), cell.column());
    }

    private @Nullable Long size(List<Cell> row) throws ManifestException {
        int at = indexOf(Kind.SIZE);
        String text = at < 0 ? "" : row.get(at).text().strip();
        if (text.isEmpty()) {
            return null;
        }
        boolean digits = text.length() <= SIZE_DIGITS && text.chars().allMatch(c -> c >= '0' && c <= '9');
        try {
            if (digits) {
                return Long.parseLong(text);
            }
        } catch (NumberFormatException tooLarge) {
            // Nineteen digits may still be too many.
        }
        throw new ManifestException(
                ManifestProblem.TABLE_SIZE,
                row.get(at).line(),
                row.get(at).column(),
                columns.get(at).name(),
                text);
    }

    private List<Checksum> checksums(List<Cell> row, @Nullable Long size) throws ManifestException {
        List<Checksum> checksums = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            String text = row.get(i).text().strip();
            if (columns.get(i).kind() == Kind.DIGEST && !text.isEmpty()) {
                ListedDigests.Tag tag = columns.get(i).tag() == null
                        ? tagOf(row)
                        : columns.get(i).tag();
                Checksum checksum = tag == null ? digests.untagged(text, size) : digests.tagged(tag, text);
                if (checksum == null) {
                    throw new ManifestException(
                            ManifestProblem.TABLE_DIGEST,
                            row.get(i).line(),
                            row.get(i).column(),
                            columns.get(i).name(),
                            text);
                }
                checksums.add(checksum);
            }
        }
        return checksums;
    }

    /** What the row itself says of its digest's algorithm, or null if the table has no such column. */
    private ListedDigests.@Nullable Tag tagOf(List<Cell> row) throws ManifestException {
        int at = indexOf(Kind.ALGORITHM);
        if (at < 0) {
            return null;
        }
        ListedDigests.Tag tag = TableHeader.tag(row.get(at).text());
        if (tag == null) {
            throw new ManifestException(
                    ManifestProblem.ALGORITHM_UNSUPPORTED,
                    row.get(at).line(),
                    row.get(at).column(),
                    row.get(at).text());
        }
        return tag;
    }

    private Cell cell(List<Cell> row, Kind kind) {
        return row.get(indexOf(kind));
    }

    private int indexOf(Kind kind) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).kind() == kind) {
                return i;
            }
        }
        return -1;
    }
}
