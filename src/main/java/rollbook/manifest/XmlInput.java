package rollbook.manifest;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;

/**
 * Feeds the XML parser and stops it when it swallows too much without reporting anything: one endless attribute or
 * comment would otherwise be gathered in memory. Remembers a fault of the source, which the parser wraps beyond
 * recognition.
 */
final class XmlInput extends FilterInputStream {
    /** Twice the longest text that is taken. The parser compares each attribute of an element with all others. */
    private static final long MAX_BYTES_PER_EVENT = 131_072;

    private long sinceEvent;
    private boolean excessive;
    private @Nullable IOException fault;

    XmlInput(InputStream in) {
        super(in);
    }

    void eventSeen() {
        sinceEvent = 0;
    }

    boolean excessive() {
        return excessive;
    }

    @Nullable
    IOException fault() {
        return fault;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int count = source(bytes, offset, length);
        sinceEvent += Math.max(0, count);
        if (sinceEvent > MAX_BYTES_PER_EVENT) {
            excessive = true;
            throw new IOException("Too much between two parts of the document");
        }
        return count;
    }

    private int source(byte[] bytes, int offset, int length) throws IOException {
        try {
            return super.read(bytes, offset, length);
        } catch (IOException e) {
            fault = e;
            throw e;
        }
    }
}
