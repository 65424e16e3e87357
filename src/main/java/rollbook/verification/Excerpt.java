package rollbook.verification;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestProblem;
import rollbook.manifest.ManifestReader;

/**
 * A few lines around the place where a document could not be understood, cut to what can be shown. Letters that can't
 * be shown are replaced one for one.
 *
 * @param firstLine the number of the first of these lines, 1-based
 * @param badLine which of them is the bad one, from 0
 * @param caret where in that line, from 0; at its end if the place lies behind it
 */
record Excerpt(List<String> lines, long firstLine, int badLine, int caret) {
    private static final int LINES_AROUND = 2;
    /** Letters, or bytes, that are shown on each side of the bad place. */
    static final int REACH = 60;

    private static final int REPLACEMENT = 0xFFFD;
    private static final String CUT = "…";

    public boolean isBad(int line) {
        return line == badLine;
    }

    public String beforeBad() {
        return lines.get(badLine).substring(0, caret);
    }

    /** The letter at the bad place; a blank at the line's end. */
    public String bad() {
        String line = lines.get(badLine);
        return caret < line.length() ? line.substring(caret, line.offsetByCodePoints(caret, 1)) : " ";
    }

    public String afterBad() {
        String line = lines.get(badLine);
        return caret < line.length() ? line.substring(line.offsetByCodePoints(caret, 1)) : "";
    }

    /** Blanks up to the bad place and a caret below it. */
    public String pointer() {
        return " ".repeat(caret) + "^";
    }

    /** Reads as far as the lines go and no further. Memory doesn't grow with the document, nor with a line. */
    static Excerpt around(InputStream document, ManifestProblem problem, long line, int column) throws IOException {
        Source source = new Source(document);
        long first = Math.max(1, line - LINES_AROUND);
        source.skipLines(first - 1);
        List<String> lines = new ArrayList<>();
        int caret = 0;
        for (long number = first; number <= line + LINES_AROUND; number++) {
            Window window = source.line(number == line ? column : 1, source.xml || inBytes(problem));
            if (window == null && number != line) {
                break;
            }
            window = window == null ? new Window("", "") : window;
            caret = number == line ? window.before().length() : caret;
            lines.add(window.before() + window.after());
        }
        return new Excerpt(List.copyOf(lines), first, (int) (line - first), caret);
    }

    /** Columns are counted in bytes where the reader stops before it has decoded the line, else in UTF-16 units. */
    private static boolean inBytes(ManifestProblem problem) {
        return switch (problem) {
            case BINARY, NOT_UTF8, UTF16, LINE_TOO_LONG -> true;
            default -> false;
        };
    }

    private record Window(String before, String after) {}

    private static final class Source {
        private final BufferedInputStream in;
        private final boolean nulEnded;
        private final boolean xml;

        Source(InputStream document) throws IOException {
            in = new BufferedInputStream(document, 65_536);
            nulEnded = ManifestReader.isNulEnded(in);
            skipByteOrderMark();
            xml = startsWithAngleBracket();
        }

        private void skipByteOrderMark() throws IOException {
            in.mark(3);
            byte[] start = in.readNBytes(3);
            boolean marked = start.length == 3 && start[0] == (byte) 0xEF && start[1] == (byte) 0xBB;
            if (!marked || start[2] != (byte) 0xBF) {
                in.reset();
            }
        }

        private boolean startsWithAngleBracket() throws IOException {
            in.mark(4_096);
            String start = new String(in.readNBytes(4_096), StandardCharsets.ISO_8859_1);
            in.reset();
            return start.stripLeading().startsWith("<");
        }

        void skipLines(long number) throws IOException {
            for (long skipped = 0; skipped < number; ) {
                int b = in.read();
                if (b < 0) {
                    return;
                }
                skipped += endsLine(b) ? 1 : 0;
            }
        }

        /**
         * The letters around a column of the next line, or null behind the last one. A checksum list's columns are
         * counted from its first letter that isn't blank.
         */
        @Nullable
        Window line(int column, boolean inBytes) throws IOException {
            ByteArrayOutputStream before = new ByteArrayOutputStream();
            ByteArrayOutputStream after = new ByteArrayOutputStream();
            long at = 0;
            boolean any = false;
            for (int b = in.read(); b >= 0; b = in.read()) {
                any = true;
                if (endsLine(b)) {
                    break;
                }
                boolean continued = (b & 0xC0) == 0x80;
                boolean indent = !inBytes && !nulEnded && at == 0 && (b == ' ' || b == '\t');
                at += inBytes ? 1 : continued || indent ? 0 : b >= 0xF0 ? 2 : 1;
                boolean cutLetter = before.size() == 0 && continued && at > 1;
                if (at >= column - REACH && at < column && !cutLetter) {
                    before.write(b);
                } else if (at >= column && at <= (long) column + REACH) {
                    after.write(b);
                }
            }
            String start = (column - REACH > 1 ? CUT : "") + shown(before).replace('\r', (char) REPLACEMENT);
            String end = at > (long) column + REACH
                    ? shown(after).replace('\r', (char) REPLACEMENT) + CUT
                    : withoutReturn(shown(after));
            return any ? new Window(start, end) : null;
        }

        /** XML counts a lone carriage return as the end of a line, checksum lists don't; some end theirs with NUL. */
        private boolean endsLine(int b) throws IOException {
            if (nulEnded) {
                return b == 0;
            }
            if (b == '\r' && xml) {
                in.mark(1);
                if (in.read() != '\n') {
                    in.reset();
                }
                return true;
            }
            return b == '\n';
        }

        private static String shown(ByteArrayOutputStream bytes) {
            StringBuilder text = new StringBuilder();
            bytes.toString(StandardCharsets.UTF_8)
                    .codePoints()
                    .map(letter -> letter == '\t' ? ' ' : letter)
                    .forEach(letter -> text.appendCodePoint(
                            letter == '\r' || DocumentName.printable(letter) ? letter : REPLACEMENT));
            return text.toString();
        }
    }

    /** The return of CRLF belongs to the line's end; any other is one of its letters. */
    private static String withoutReturn(String text) {
        String line = text.endsWith("\r") ? text.substring(0, text.length() - 1) : text;
        return line.replace('\r', (char) REPLACEMENT);
    }
}
