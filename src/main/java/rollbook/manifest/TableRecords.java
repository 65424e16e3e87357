package rollbook.manifest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Takes a table apart into records and cells (RFC 4180, with any separator). A cell in quotation marks may hold the
 * separator, line ends and doubled quotation marks; blanks are part of a cell.
 *
 * <p>Not by the library that the module {@code inventory} uses for its small lists: it neither bounds the length of a
 * record, which a quotation mark left open makes as long as the document, nor tells the place of a cell.
 */
final class TableRecords {
    private final LineReader lines;
    private final char separator;

    TableRecords(LineReader lines, char separator) {
        this.lines = lines;
        this.separator = separator;
    }

    /** @param line 1-based, like {@code column}: where the cell begins */
    record Cell(String text, long line, int column) {}

    /** The next record that isn't an empty line, or null after the last one. */
    @Nullable
    List<Cell> next() throws IOException, ManifestException {
        String line = lines.next();
        while (line != null && line.isEmpty()) {
            line = lines.next();
        }
        return line == null ? null : record(line);
    }

    /** @param first the record's first line, which was read last */
    List<Cell> record(String first) throws IOException, ManifestException {
        Cursor cursor = new Cursor(first);
        List<Cell> cells = new ArrayList<>();
        do {
            cells.add(cursor.isAt('"') ? quoted(cursor) : plain(cursor));
        } while (cursor.skip(separator));
        return cells;
    }

    private Cell plain(Cursor cursor) throws ManifestException {
        int start = cursor.at;
        int end = cursor.line.indexOf(separator, start);
        cursor.at = end < 0 ? cursor.line.length() : end;
        String text = cursor.line.substring(start, cursor.at);
        int carriageReturn = text.indexOf('\r');
        if (carriageReturn >= 0) {
            throw refusal(ManifestProblem.CARRIAGE_RETURN, lines.lineNumber(), start + carriageReturn);
        }
        return new Cell(text, lines.lineNumber(), start + 1);
    }

    private Cell quoted(Cursor cursor) throws IOException, ManifestException {
        long line = lines.lineNumber();
        int column = cursor.at;
        StringBuilder text = new StringBuilder();
        cursor.at++;
        while (true) {
            int quote = cursor.line.indexOf('"', cursor.at);
            if (quote < 0) {
                text.append(cursor.line, cursor.at, cursor.line.length()).append(lines.end());
                String next = lines.next();
                if (next == null) {
                    throw refusal(ManifestProblem.TABLE_QUOTES, line, column);
                }
                cursor.goOn(next);
                continue;
            }
            text.append(cursor.line, cursor.at, quote);
            cursor.at = quote + 1;
            if (!cursor.skip('"')) {
                break;
            }
            text.append('"');
        }
        if (!cursor.isAtEnd() && !cursor.isAt(separator)) {
            throw refusal(ManifestProblem.TABLE_QUOTES, lines.lineNumber(), cursor.at);
        }
        return new Cell(text.toString(), line, column + 1);
    }

    private static ManifestException refusal(ManifestProblem problem, long line, int index) {
        return new ManifestException(problem, line, index + 1);
    }

    /** A place in a record; it keeps the record's length within that of a line. */
    private final class Cursor {
        private String line;
        private int at;
        private int length;

        Cursor(String line) {
            this.line = line;
        }

        boolean isAtEnd() {
            return at >= line.length();
        }

        boolean isAt(char c) {
            return at < line.length() && line.charAt(at) == c;
        }

        boolean skip(char c) {
            boolean there = isAt(c);
            at += there ? 1 : 0;
            return there;
        }

        void goOn(String next) throws ManifestException {
            length += line.length() + 1;
            if (length + next.length() > LineReader.MAX_LINE_BYTES) {
                throw new ManifestException(
                        ManifestProblem.LINE_TOO_LONG, lines.lineNumber(), 1, LineReader.MAX_LINE_BYTES);
            }
            line = next;
            at = 0;
        }
    }
}
