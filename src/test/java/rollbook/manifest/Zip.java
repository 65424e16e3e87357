package rollbook.manifest;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Makes archives: good ones by the platform's writer, which has nothing in common with our reader, and bad ones. */
final class Zip {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final ZipOutputStream out = new ZipOutputStream(bytes, StandardCharsets.UTF_8);

    Zip file(String path, byte[] content) {
        try {
            out.putNextEntry(new ZipEntry(path));
            out.write(content);
            out.closeEntry();
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Zip file(String path, String content) {
        return file(path, content.getBytes(StandardCharsets.UTF_8));
    }

    Zip folder(String path) {
        return file(path, "");
    }

    Zip stored(String path, byte[] content) {
        ZipEntry entry = new ZipEntry(path);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(content.length);
        CRC32 crc = new CRC32();
        crc.update(content);
        entry.setCrc(crc.getValue());
        try {
            out.putNextEntry(entry);
            out.write(content);
            out.closeEntry();
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    byte[] bytes() {
        try {
            out.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    ManifestArchive open() throws IOException, ManifestException {
        return open(bytes());
    }

    static ManifestArchive open(byte[] archive) throws IOException, ManifestException {
        return ManifestArchive.open(new Channel(archive));
    }

    /** Where the directory's entry of the nth file begins. */
    static int directoryEntry(byte[] archive, int number) {
        ByteBuffer buffer = ByteBuffer.wrap(archive).order(ByteOrder.LITTLE_ENDIAN);
        int at = buffer.getInt(archive.length - 22 + 16);
        for (int i = 0; i < number; i++) {
            at += 46 + buffer.getShort(at + 28) + buffer.getShort(at + 30) + buffer.getShort(at + 32);
        }
        return at;
    }

    static ByteBuffer littleEndian(byte[] archive) {
        return ByteBuffer.wrap(archive).order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Bytes in memory. */
    static final class Channel implements SeekableByteChannel {
        private final byte[] content;
        private long position;

        Channel(byte[] content) {
            this.content = content;
        }

        @Override
        public int read(ByteBuffer target) {
            if (position >= content.length) {
                return -1;
            }
            // In small pieces, so that a reader that takes one call for all is found out.
            int count = Math.min(Math.min(target.remaining(), 1_000), content.length - (int) position);
            target.put(content, (int) position, count);
            position += count;
            return count;
        }

        @Override
        public long position() {
            return position;
        }

        @Override
        public SeekableByteChannel position(long newPosition) {
            position = newPosition;
            return this;
        }

        @Override
        public long size() {
            return content.length;
        }

        @Override
        public int write(ByteBuffer source) {
            throw new UnsupportedOperationException();
        }

        @Override
        public SeekableByteChannel truncate(long size) {
            throw new UnsupportedOperationException();
        }

        @Override
        public boolean isOpen() {
            return true;
        }

        @Override
        public void close() {
            // nothing to close
        }
    }
}
