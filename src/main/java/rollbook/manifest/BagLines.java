package rollbook.manifest;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Ends every line with LF: a bag's text files may end them with LF, CR or both (RFC 8493, 2.3). */
final class BagLines extends FilterInputStream {
    private boolean afterReturn;

    BagLines(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int kept = 0;
        while (kept == 0) {
            int read = super.read(bytes, offset, length);
            if (read <= 0) {
                return read;
            }
            for (int i = offset; i < offset + read; i++) {
                byte b = bytes[i];
                boolean secondOfTwo = afterReturn && b == '\n';
                afterReturn = b == '\r';
                if (!secondOfTwo) {
                    bytes[offset + kept++] = b == '\r' ? (byte) '\n' : b;
                }
            }
        }
        return kept;
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
