package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;

/** The unpacked bytes of one file of an archive; they must be as many, and have the CRC, as the directory says. */
final class ZipContent extends InputStream {
    private final InputStream unpacked;
    private final ZipEntry entry;
    private final CRC32 crc = new CRC32();
    private long count;

    ZipContent(InputStream unpacked, ZipEntry entry) {
        this.unpacked = unpacked;
        this.entry = entry;
    }

    /** That the archive is damaged, found in the middle of reading. */
    static final class Fault extends IOException {
        private static final long serialVersionUID = 1;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
        int read;
        try {
            read = unpacked.read(bytes, offset, length);
        } catch (java.util.zip.ZipException | java.io.EOFException e) {
            throw new Fault();
        }
        if (read > 0) {
            crc.update(bytes, offset, read);
            count += read;
        }
        boolean ended = read < 0;
        boolean right = count == entry.sizeBytes() && (int) crc.getValue() == entry.crc32();
        if (count > entry.sizeBytes() || ended && !right) {
            throw new Fault();
        }
        return read;
    }
}
