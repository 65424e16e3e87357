package rollbook.manifest;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The directory at the end of a zip archive (APPNOTE 6.3, sections 4.3.12 to 4.3.16, zip64 included). It alone decides
 * what the archive holds; its size is known before anything is taken into memory. A reader of streams would have to
 * unpack the media in between only to pass over them, and the platform's own reader needs a file and takes a directory
 * of any size.
 */
final class ZipDirectory {
    static final int MAX_ENTRIES = 100_000;
    static final int MAX_BYTES = 1 << 24;

    private static final int END = 0x06054b50;
    private static final int END_BYTES = 22;
    private static final int END_64 = 0x06064b50;
    private static final int END_64_BYTES = 56;
    private static final int LOCATOR_64 = 0x07064b50;
    private static final int LOCATOR_64_BYTES = 20;
    private static final int ENTRY = 0x02014b50;
    private static final int ENTRY_BYTES = 46;
    static final int LOCAL_BYTES = 30;
    private static final int MAX_COMMENT = 0xFFFF;
    private static final int EXTRA_64 = 1;
    private static final long SEE_64 = 0xFFFF_FFFFL;
    private static final int SEE_64_SHORT = 0xFFFF;
    private static final Charset OLD_NAMES = Charset.forName("IBM437");

    private final SeekableByteChannel archive;

    ZipDirectory(SeekableByteChannel archive) {
        this.archive = archive;
    }

    private record Place(long at, long bytes, long entries) {}

    List<ZipEntry> entries() throws IOException, ManifestException {
        Place place = place();
        ByteBuffer directory = bytes(place.at(), (int) place.bytes());
        List<ZipEntry> entries = new ArrayList<>();
        Set<String> paths = new HashSet<>();
        while (directory.hasRemaining()) {
            ZipEntry entry = entry(directory);
            if (entry.isEncrypted()) {
                throw problem(ManifestProblem.ZIP_ENCRYPTED, entry.path());
            }
            if (!paths.add(Normalizer.normalize(entry.path(), Normalizer.Form.NFC))) {
                throw problem(ManifestProblem.ZIP_TWICE, entry.path());
            }
            entries.add(entry);
        }
        if (entries.size() != place.entries()) {
            throw damaged();
        }
        refuseOverlaps(entries, place.at());
        return entries;
    }

    /** Bytes of the archive, least significant first. */
    ByteBuffer bytes(long at, int length) throws IOException, ManifestException {
        if (at < 0 || length < 0 || at > archive.size() - length) {
            throw damaged();
        }
        ByteBuffer bytes = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        archive.position(at);
        while (bytes.hasRemaining()) {
            if (archive.read(bytes) < 0) {
                throw damaged();
            }
        }
        return bytes.flip();
    }

    static String name(ByteBuffer bytes, int length) {
        byte[] name = new byte[length];
        bytes.get(name);
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(name))
                    .toString();
        } catch (CharacterCodingException e) {
            // Without the flag for UTF-8 a name is in the old code page, and some systems write UTF-8 without it.
            return new String(name, OLD_NAMES);
        }
    }

    static ManifestException damaged() {
        return problem(ManifestProblem.ZIP_DAMAGED);
    }

    static ManifestException problem(ManifestProblem problem, Object... arguments) {
        return new ManifestException(problem, 0, 0, arguments);
    }

    private Place place() throws IOException, ManifestException {
        long endAt = endAt();
        ByteBuffer end = bytes(endAt, END_BYTES);
        int disk = Short.toUnsignedInt(end.getShort(4)) | Short.toUnsignedInt(end.getShort(6));
        long entries = Short.toUnsignedInt(end.getShort(10));
        long bytes = Integer.toUnsignedLong(end.getInt(12));
        long at = Integer.toUnsignedLong(end.getInt(16));
        if (entries == SEE_64_SHORT || bytes == SEE_64 || at == SEE_64) {
            ByteBuffer locator = endAt < LOCATOR_64_BYTES ? null : bytes(endAt - LOCATOR_64_BYTES, LOCATOR_64_BYTES);
            if (locator != null && locator.getInt(0) == LOCATOR_64) {
                endAt = locator.getLong(8);
                ByteBuffer end64 = bytes(endAt, END_64_BYTES);
                if (end64.getInt(0) != END_64) {
                    throw damaged();
                }
                disk = end64.getInt(16) | end64.getInt(20);
                entries = end64.getLong(32);
                bytes = end64.getLong(40);
                at = end64.getLong(48);
            }
        }
        if (disk != 0) {
            throw problem(ManifestProblem.ZIP_SPLIT);
        }
        if (entries < 0 || bytes < 0 || at < 0 || at > endAt || bytes != endAt - at) {
            throw damaged();
        }
        if (entries > MAX_ENTRIES || bytes > MAX_BYTES) {
            throw problem(ManifestProblem.ZIP_TOO_MANY, MAX_ENTRIES);
        }
        return new Place(at, bytes, entries);
    }

    /** Where the last record is whose comment reaches exactly to the end of the archive. */
    private long endAt() throws IOException, ManifestException {
        long size = archive.size();
        int tailBytes = (int) Math.min(size, END_BYTES + MAX_COMMENT);
        ByteBuffer tail = bytes(size - tailBytes, tailBytes);
        for (int at = tailBytes - END_BYTES; at >= 0; at--) {
            if (tail.getInt(at) == END && at + END_BYTES + Short.toUnsignedInt(tail.getShort(at + 20)) == tailBytes) {
                return size - tailBytes + at;
            }
        }
        throw damaged();
    }

    private static ZipEntry entry(ByteBuffer directory) throws ManifestException {
        int start = directory.position();
        if (directory.remaining() < ENTRY_BYTES || directory.getInt(start) != ENTRY) {
            throw damaged();
        }
        int nameBytes = Short.toUnsignedInt(directory.getShort(start + 28));
        int extraBytes = Short.toUnsignedInt(directory.getShort(start + 30));
        int commentBytes = Short.toUnsignedInt(directory.getShort(start + 32));
        if (directory.remaining() < ENTRY_BYTES + nameBytes + extraBytes + commentBytes) {
            throw damaged();
        }
        directory.position(start + ENTRY_BYTES);
        String path = safe(name(directory, nameBytes));
        Sizes sizes = new Sizes(directory.slice(directory.position(), extraBytes));
        long size = sizes.value(Integer.toUnsignedLong(directory.getInt(start + 24)));
        long packed = sizes.value(Integer.toUnsignedLong(directory.getInt(start + 20)));
        long headerAt = sizes.value(Integer.toUnsignedLong(directory.getInt(start + 42)));
        directory.position(directory.position() + extraBytes + commentBytes);
        return new ZipEntry(
                path,
                Short.toUnsignedInt(directory.getShort(start + 8)),
                Short.toUnsignedInt(directory.getShort(start + 10)),
                packed,
                size,
                directory.getInt(start + 16),
                headerAt);
    }

    /** Large values stand in the zip64 extra field, in the order in which their short fields say so. */
    private static final class Sizes {
        private final ByteBuffer extra;

        Sizes(ByteBuffer extras) {
            extras.order(ByteOrder.LITTLE_ENDIAN);
            ByteBuffer found = ByteBuffer.allocate(0);
            while (extras.remaining() >= 4) {
                int kind = Short.toUnsignedInt(extras.getShort());
                int length = Math.min(Short.toUnsignedInt(extras.getShort()), extras.remaining());
                if (kind == EXTRA_64) {
                    found = extras.slice(extras.position(), length).order(ByteOrder.LITTLE_ENDIAN);
                }
                extras.position(extras.position() + length);
            }
            this.extra = found;
        }

        long value(long inShort) throws ManifestException {
            if (inShort != SEE_64) {
                return inShort;
            }
            long value = extra.remaining() < Long.BYTES ? -1 : extra.getLong();
            if (value < 0) {
                throw damaged();
            }
            return value;
        }
    }

    /** Nothing of an archive is ever written to a file, but such a name was made to deceive somebody. */
    private static String safe(String path) throws ManifestException {
        boolean folder = path.endsWith("/");
        String[] names = path.split("/", -1);
        int count = folder ? names.length - 1 : names.length;
        boolean bad = path.indexOf('\\') >= 0 || path.indexOf('\0') >= 0 || path.matches("(?s)[A-Za-z]:.*");
        for (int i = 0; i < count; i++) {
            bad |= names[i].isEmpty() || names[i].equals(".") || names[i].equals("..");
        }
        if (bad || count == 0) {
            throw problem(ManifestProblem.ZIP_PATH, path);
        }
        return path;
    }

    /** Files that share bytes are how small archives unpack to enormous ones. */
    private static void refuseOverlaps(List<ZipEntry> entries, long directoryAt) throws ManifestException {
        List<ZipEntry> inOrder = new ArrayList<>(entries);
        inOrder.sort(Comparator.comparingLong(ZipEntry::headerAt));
        long free = 0;
        for (ZipEntry entry : inOrder) {
            long room = directoryAt - LOCAL_BYTES - entry.headerAt();
            if (entry.headerAt() < free || entry.packedBytes() > room) {
                throw damaged();
            }
            free = entry.headerAt() + LOCAL_BYTES + entry.packedBytes();
        }
    }
}
