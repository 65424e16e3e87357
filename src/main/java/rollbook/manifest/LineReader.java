package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Lines of strict UTF-8, ended by LF or CRLF or, in a document of that kind, by NUL; each of a bounded length. */
final class LineReader {
    /** No file system in use has longer paths than a fraction of this; it keeps a document without line ends small. */
    static final int MAX_LINE_BYTES = 65_536;

    private final InputStream in;
    private final boolean nulEnded;
    private final byte[] buffer = new byte[65_536];
    private final byte[] line = new byte[MAX_LINE_BYTES];
    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    private int position;
    private int limit;
    private long lineNumber;
    private String end = "";

    LineReader(InputStream in) {
        this(in, false);
    }

    LineReader(InputStream in, boolean nulEnded) {
        this.in = in;
        this.nulEnded = nulEnded;
    }

    boolean isNulEnded() {
        return nulEnded;
    }

    /** The number of the line returned last, 1-based. */
    long lineNumber() {
        return lineNumber;
    }

    /** What ended the line returned last: LF, CRLF or NUL; empty if the document ended first. */
    String end() {
        return end;
    }

    /** The next line without its end, or null after the last one. */
    @Nullable
    String next() throws IOException, ManifestException {
        if (!fill()) {
            return null;
        }
        lineNumber++;
        byte ending = (byte) (nulEnded ? 0 : '\n');
        int last = LineBytes.indexOf(buffer, ending, position, limit);
        if (last >= 0 && last - position <= MAX_LINE_BYTES) {
            int start = position;
            position = last + 1;
            end = nulEnded ? "\0" : "\n";
            return decode(buffer, start, withoutReturn(buffer, start, last));
        }
        return acrossBuffers(ending);
    }

    private String acrossBuffers(byte ending) throws IOException, ManifestException {
        int length = 0;
        end = "";
        while (end.isEmpty() && fill()) {
            byte b = buffer[position++];
            if (b == ending) {
                end = nulEnded ? "\0" : "\n";
            } else if (length == MAX_LINE_BYTES) {
                throw new ManifestException(ManifestProblem.LINE_TOO_LONG, lineNumber, length, MAX_LINE_BYTES);
            } else {
                line[length++] = b;
            }
        }
        return decode(line, 0, end.isEmpty() ? length : withoutReturn(line, 0, length));
    }

    /** Where a line ends whose end was found. */
    private int withoutReturn(byte[] bytes, int from, int to) {
        if (nulEnded || to == from || bytes[to - 1] != '\r') {
            return to;
        }
        end = "\r\n";
        return to - 1;
    }

    private boolean fill() throws IOException {
        if (position < limit) {
            return true;
        }
        position = 0;
        limit = Math.max(0, in.read(buffer));
        return limit > 0;
    }

    private String decode(byte[] from, int start, int stop) throws ManifestException {
        if (LineBytes.areText(from, start, stop)) {
            return new String(from, start, stop - start, StandardCharsets.ISO_8859_1);
        }
        int nul = LineBytes.indexOf(from, (byte) 0, start, stop);
        if (nul >= 0) {
            throw new ManifestException(ManifestProblem.BINARY, lineNumber, nul - start + 1);
        }
        CharBuffer text = CharBuffer.allocate(stop - start);
        ByteBuffer bytes = ByteBuffer.wrap(from, start, stop - start);
        CoderResult result = decoder.reset().decode(bytes, text, true);
        if (result.isError()) {
            throw new ManifestException(ManifestProblem.NOT_UTF8, lineNumber, bytes.position() - start + 1);
        }
        return text.flip().toString();
    }
}
