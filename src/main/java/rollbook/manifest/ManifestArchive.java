package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;

/**
 * A zip archive of manifests. What it says of itself is not trusted: names that lead elsewhere, names given twice,
 * encryption and overlapping files are refused, and what is unpacked is bounded before the first byte. Files that nobody
 * asks for, such as media, are never unpacked.
 */
public final class ManifestArchive {
    /** Of all files that are unpacked together: what one upload may have. */
    public static final long MAX_UNPACKED_BYTES = 4L << 30;
    /** Lists of digests shrink to a half or a tenth. */
    public static final int MAX_RATIO = 200;

    private static final long RATIO_COUNTS_FROM = 1 << 20;
    private static final int LOCAL = 0x04034b50;

    private final SeekableByteChannel channel;
    private final ZipDirectory directory;
    private final Map<String, ZipEntry> files = new LinkedHashMap<>();
    private final Set<String> admitted = new HashSet<>();
    private final long mostBytes;
    private long unpackedBytes;

    private ManifestArchive(SeekableByteChannel channel, long mostBytes) throws IOException, ManifestException {
        this.channel = channel;
        this.mostBytes = mostBytes;
        this.directory = new ZipDirectory(channel);
        for (ZipEntry entry : directory.entries()) {
            if (!entry.isFolder()) {
                files.put(entry.path(), entry);
            }
        }
    }

    /** Whether a document that begins so is a zip archive. */
    public static boolean beginsLikeOne(byte[] start) {
        boolean marked = start.length >= 4 && start[0] == 'P' && start[1] == 'K';
        return marked && (start[2] == 3 && start[3] == 4 || start[2] == 5 && start[3] == 6);
    }

    public static ManifestArchive open(SeekableByteChannel channel) throws IOException, ManifestException {
        return open(channel, MAX_UNPACKED_BYTES);
    }

    static ManifestArchive open(SeekableByteChannel channel, long mostBytes) throws IOException, ManifestException {
        return new ManifestArchive(channel, mostBytes);
    }

    /** Takes the bytes of a file. */
    @FunctionalInterface
    public interface Reading<T> {
        T read(InputStream in) throws IOException, ManifestException;
    }

    /** The files in it, in the order of its directory. */
    public Collection<String> paths() {
        return Collections.unmodifiableSet(files.keySet());
    }

    public long sizeBytes(String path) {
        return entry(path).sizeBytes();
    }

    /** Unpacks a file; that it is whole is checked to its end, however much of it is taken. */
    public <T> T read(String path, Reading<T> reading) throws IOException, ManifestException {
        ZipEntry entry = entry(path);
        try (InputStream content = new ZipContent(unpacked(entry), entry)) {
            return readWhole(content, reading);
        } catch (ZipContent.Fault e) {
            throw ZipDirectory.problem(ManifestProblem.ZIP_FILE_DAMAGED, path);
        }
    }

    /** Damage of the archive is told before faults that may come of it. */
    private static <T> T readWhole(InputStream content, Reading<T> reading) throws IOException, ManifestException {
        try {
            T result = reading.read(content);
            content.transferTo(OutputStream.nullOutputStream());
            return result;
        } catch (ManifestException e) {
            content.transferTo(OutputStream.nullOutputStream());
            throw e;
        }
    }

    /** Bounds what a file unpacks to, and all files together, however often each is read. */
    private void admit(ZipEntry entry) throws ManifestException {
        boolean counts = entry.sizeBytes() > RATIO_COUNTS_FROM;
        if (counts && entry.sizeBytes() / MAX_RATIO > entry.packedBytes()) {
            throw ZipDirectory.problem(ManifestProblem.ZIP_RATIO, entry.path(), MAX_RATIO);
        }
        if (admitted.add(entry.path())) {
            if (entry.sizeBytes() > mostBytes - unpackedBytes) {
                throw ZipDirectory.problem(ManifestProblem.ZIP_TOO_LARGE, MAX_UNPACKED_BYTES >> 30);
            }
            unpackedBytes += entry.sizeBytes();
        }
    }

    private ZipEntry entry(String path) {
        ZipEntry entry = files.get(path);
        if (entry == null) {
            throw new IllegalArgumentException("No such file in the archive: " + path);
        }
        return entry;
    }

    private InputStream unpacked(ZipEntry entry) throws IOException, ManifestException {
        admit(entry);
        ByteBuffer header = directory.bytes(entry.headerAt(), ZipDirectory.LOCAL_BYTES);
        int nameBytes = Short.toUnsignedInt(header.getShort(26));
        int extraBytes = Short.toUnsignedInt(header.getShort(28));
        long nameAt = entry.headerAt() + ZipDirectory.LOCAL_BYTES;
        String name = ZipDirectory.name(directory.bytes(nameAt, nameBytes), nameBytes);
        int method = Short.toUnsignedInt(header.getShort(8));
        if (header.getInt(0) != LOCAL || method != entry.method() || !name.equals(entry.path())) {
            throw ZipDirectory.problem(ManifestProblem.ZIP_FILE_DAMAGED, entry.path());
        }
        InputStream packed = new Section(channel, nameAt + nameBytes + extraBytes, entry.packedBytes());
        return switch (method) {
            case ZipEntry.STORED -> packed;
            case ZipEntry.DEFLATED -> new Inflating(packed);
            default -> throw ZipDirectory.problem(ManifestProblem.ZIP_METHOD, entry.path());
        };
    }

    private static final class Inflating extends InflaterInputStream {
        Inflating(InputStream packed) {
            super(packed, new Inflater(true), 8_192);
        }

        @Override
        public void close() throws IOException {
            inf.end();
            super.close();
        }
    }

    private static final class Section extends InputStream {
        private final SeekableByteChannel channel;
        private long at;
        private long left;

        Section(SeekableByteChannel channel, long at, long bytes) {
            this.channel = channel;
            this.at = at;
            this.left = bytes;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            if (left == 0) {
                return -1;
            }
            channel.position(at);
            int read = channel.read(ByteBuffer.wrap(bytes, offset, (int) Math.min(length, left)));
            if (read > 0) {
                at += read;
                left -= read;
            }
            return read;
        }
    }
}
