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
        int length = 0;
        byte ending = (byte) (nulEnded ? 0 : '\n');
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
        if (!nulEnded && !end.isEmpty() && length > 0 && line[length - 1] == '\r') {
            end = "\r\n";
            length--;
        }
        return decode(length);
    }

    private boolean fill() throws IOException {
        if (position < limit) {
            return true;
        }
        position = 0;
        limit = Math.max(0, in.read(buffer));
        return limit > 0;
    }

    private String decode(int length) throws ManifestException {
        boolean ascii = true;
        for (int i = 0; i < length; i++) {
            if (line[i] == 0) {
                throw new ManifestException(ManifestProblem.BINARY, lineNumber, i + 1);
            }
            ascii &= line[i] > 0;
        }
        if (ascii) {
            return new String(line, 0, length, StandardCharsets.ISO_8859_1);
        }
        CharBuffer text = CharBuffer.allocate(length);
        ByteBuffer bytes = ByteBuffer.wrap(line, 0, length);
        CoderResult result = decoder.reset().decode(bytes, text, true);
        if (result.isError()) {
            throw new ManifestException(ManifestProblem.NOT_UTF8, lineNumber, bytes.position() + 1);
        }
        return text.flip().toString();
    }
}
