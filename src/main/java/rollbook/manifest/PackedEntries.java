package rollbook.manifest;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A manifest's entries in their order, each in a few bytes more than its digests: a path is written as what it does not
 * share with the one before, a size as its difference from the one before. A million frames with MD5 take some 29 MB.
 * Lines and dates are not kept. Positions count from 0. Reading by several threads is safe once nothing is added.
 */
public final class PackedEntries {
    /** Every so many entries one is written whole, so that reading may begin there. */
    private static final int STEP = 32;

    private static final int PAGE_BYTES = 1 << 18;
    private static final byte[] NOTHING = {};
    private static final int HAS_SIZE = 4;
    private static final int HAS_PREVIOUS_PATH = 8;
    private static final int CHECKSUMS_SHIFT = 4;
    /** So many checksums, or more, are counted in a number of their own. */
    private static final int MANY = 15;
    /** A path, an earlier path and lengths; digests are reserved apart. */
    private static final int MOST_LENGTH_BYTES = 64;

    private static final ChecksumAlgorithm[] ALGORITHMS = ChecksumAlgorithm.values();
    private static final ManifestEntry.Action[] ACTIONS = ManifestEntry.Action.values();

    private final List<byte[]> pages = new ArrayList<>();
    private int pageEnd;
    /** Of each full step: its page and where it begins there. */
    private long[] steps = new long[64];

    private byte[] open = new byte[4_096];
    private int openEnd;
    private byte[] lastPath = NOTHING;
    private byte[] pathBefore = NOTHING;

    private boolean ascending = true;
    private long lastSize;
    private int size;

    public int size() {
        return size;
    }

    /** Whether each path comes behind the one before it in the order of their bytes, so that none is there twice. */
    boolean isAscending() {
        return ascending;
    }

    /** What the entries take in memory, with what is reserved for further ones. */
    public long bytes() {
        long sum = open.length + (long) Long.BYTES * steps.length;
        for (byte[] page : pages) {
            sum += page.length;
        }
        return sum;
    }

    /** {@link IllegalArgumentException} for a path that has no UTF-8 form; no reader hands one out. */
    public void add(ManifestEntry entry) {
        add(entry, bytes(entry.path()));
    }

    /** @param path {@link #bytes} of the entry's path, kept and not changed hereafter */
    void add(ManifestEntry entry, byte[] path) {
        ascending &= size == 0 || Arrays.compareUnsigned(pathBefore, path) < 0;
        pathBefore = path;
        if (size % STEP == 0) {
            closeStep();
        }
        byte[] previous = entry.previousPath() == null ? null : bytes(entry.previousPath());
        reserve(path.length + (previous == null ? 0 : previous.length) + MOST_LENGTH_BYTES);
        int common = Arrays.mismatch(lastPath, path);
        common = common < 0 ? path.length : common;
        putNumber(common);
        putBytes(path, common, path.length - common);
        lastPath = path;
        Long sizeBytes = entry.sizeBytes();
        open[openEnd++] = (byte) (entry.action().ordinal()
                | (sizeBytes == null ? 0 : HAS_SIZE)
                | (previous == null ? 0 : HAS_PREVIOUS_PATH)
                | Math.min(entry.checksums().size(), MANY) << CHECKSUMS_SHIFT);
        if (sizeBytes != null) {
            long difference = sizeBytes - lastSize;
            putNumber(difference << 1 ^ difference >> 63);
            lastSize = sizeBytes;
        }
        if (previous != null) {
            putBytes(previous, 0, previous.length);
        }
        putChecksums(entry.checksums());
        size = Math.incrementExact(size);
    }

    private void putChecksums(List<Checksum> checksums) {
        if (checksums.size() >= MANY) {
            putNumber(checksums.size());
        }
        for (int i = 0; i < checksums.size(); i++) {
            Checksum checksum = checksums.get(i);
            int bytes = checksum.algorithm().digestBytes();
            reserve(bytes + MOST_LENGTH_BYTES);
            open[openEnd++] = (byte) (checksum.algorithm().ordinal() << 1 | (checksum.assumed() ? 1 : 0));
            checksum.copyDigest(open, openEnd);
            openEnd += bytes;
        }
    }

    private void closeStep() {
        if (size > 0) {
            if (pages.isEmpty() || pages.get(pages.size() - 1).length - pageEnd < openEnd) {
                pages.add(new byte[Math.max(PAGE_BYTES, openEnd)]);
                pageEnd = 0;
            }
            System.arraycopy(open, 0, pages.get(pages.size() - 1), pageEnd, openEnd);
            int step = size / STEP - 1;
            if (step == steps.length) {
                steps = Arrays.copyOf(steps, step * 2);
            }
            steps[step] = (long) (pages.size() - 1) << 32 | pageEnd;
            pageEnd += openEnd;
        }
        openEnd = 0;
        lastPath = NOTHING;
        lastSize = 0;
    }

    private void reserve(int bytes) {
        if (open.length - openEnd < bytes) {
            open = Arrays.copyOf(open, Math.max(open.length * 2, Math.addExact(openEnd, bytes)));
        }
    }

    private void putBytes(byte[] bytes, int from, int length) {
        putNumber(length);
        System.arraycopy(bytes, from, open, openEnd, length);
        openEnd += length;
    }

    private void putNumber(long number) {
        long rest = number;
        for (; rest >>> 7 != 0; rest >>>= 7) {
            open[openEnd++] = (byte) (rest | 0x80);
        }
        open[openEnd++] = (byte) rest;
    }

    /** Half a surrogate pair has no UTF-8 form; the replacement that Java would write is another file's name. */
    static byte[] bytes(String path) {
        byte[] bytes = path.getBytes(StandardCharsets.UTF_8);
        for (byte b : bytes) {
            if (b == '?') {
                if (new String(bytes, StandardCharsets.UTF_8).equals(path)) {
                    return bytes;
                }
                throw new IllegalArgumentException("A path with half a letter in it");
            }
        }
        return bytes;
    }

    /** Hands out the entries in their order. */
    public void forEach(EntrySink sink) throws IOException {
        Cursor cursor = new Cursor();
        for (int position = 0; position < size; position++) {
            cursor.moveTo(position);
            sink.accept(cursor.entry(0));
        }
    }

    Cursor cursor() {
        return new Cursor();
    }

    /** Looks at one entry at a time. Going on to the next is quick, going elsewhere takes up to a step's entries. */
    final class Cursor {
        private int position = -1;
        private int sizeSeen = -1;
        private byte[] from = open;
        private int at;

        private byte[] path = new byte[256];
        private int pathLength;
        private int flags;
        private long sizeBytes;
        private int previousAt;
        private int previousLength;
        private int checksums;
        private int digestsAt;

        void moveTo(int wanted) {
            boolean grown = sizeSeen != size;
            if (wanted == position && !grown) {
                return;
            }
            if (wanted != position + 1 || wanted % STEP == 0 || grown) {
                sizeSeen = size;
                position = wanted - wanted % STEP - 1;
                int step = wanted / STEP;
                boolean closed = step < (size - 1) / STEP;
                from = closed ? pages.get((int) (steps[step] >>> 32)) : open;
                at = closed ? (int) steps[step] : 0;
                sizeBytes = 0;
            }
            while (position < wanted) {
                read();
            }
        }

        private void read() {
            int common = (int) number();
            int length = (int) number();
            pathLength = common + length;
            if (path.length < pathLength) {
                path = Arrays.copyOf(path, pathLength * 2);
            }
            System.arraycopy(from, at, path, common, length);
            at += length;
            flags = from[at++];
            if ((flags & HAS_SIZE) != 0) {
                long folded = number();
                sizeBytes += folded >>> 1 ^ -(folded & 1);
            }
            if ((flags & HAS_PREVIOUS_PATH) != 0) {
                previousLength = (int) number();
                previousAt = at;
                at += previousLength;
            }
            checksums = flags >> CHECKSUMS_SHIFT & MANY;
            checksums = checksums == MANY ? (int) number() : checksums;
            digestsAt = at;
            for (int i = 0; i < checksums; i++) {
                at += 1 + ALGORITHMS[from[at] >> 1].digestBytes();
            }
            position++;
        }

        private long number() {
            byte b = from[at++];
            long number = b & 0x7F;
            for (int shift = 7; b < 0; shift += 7) {
                b = from[at++];
                number |= (long) (b & 0x7F) << shift;
            }
            return number;
        }

        /** Holds the path's UTF-8 bytes, {@link #pathLength()} of them; overwritten by the next move. */
        byte[] path() {
            return path;
        }

        int pathLength() {
            return pathLength;
        }

        ManifestEntry.Action action() {
            return ACTIONS[flags & 3];
        }

        boolean hasSize() {
            return (flags & HAS_SIZE) != 0;
        }

        boolean hasPreviousPath() {
            return (flags & HAS_PREVIOUS_PATH) != 0;
        }

        int checksums() {
            return checksums;
        }

        boolean sizesDiffer(Cursor other) {
            return hasSize() && other.hasSize() && sizeBytes != other.sizeBytes;
        }

        /** Whether both give the same digests of the same algorithms; false says nothing yet. */
        boolean plainlySameChecksums(Cursor other) {
            return checksums > 0
                    && checksums == other.checksums
                    && Arrays.equals(from, digestsAt, at, other.from, other.digestsAt, other.at);
        }

        /** @param skip length of a folder that path and earlier path are to be given without */
        ManifestEntry entry(int skip) {
            return new ManifestEntry(
                    new String(path, skip, pathLength - skip, StandardCharsets.UTF_8),
                    hasSize() ? sizeBytes : null,
                    checksumList(),
                    action(),
                    0,
                    previousPath(skip),
                    null);
        }

        private @Nullable String previousPath(int skip) {
            if (!hasPreviousPath()) {
                return null;
            }
            boolean inFolder =
                    previousLength > skip && Arrays.equals(from, previousAt, previousAt + skip, path, 0, skip);
            int skipped = inFolder ? skip : 0;
            return new String(from, previousAt + skipped, previousLength - skipped, StandardCharsets.UTF_8);
        }

        private List<Checksum> checksumList() {
            Checksum[] list = new Checksum[checksums];
            int start = digestsAt;
            for (int i = 0; i < checksums; i++) {
                ChecksumAlgorithm algorithm = ALGORITHMS[from[start] >> 1];
                boolean assumed = (from[start] & 1) != 0;
                int end = start + 1 + algorithm.digestBytes();
                byte[] digest = Arrays.copyOfRange(from, start + 1, end);
                list[i] = assumed ? Checksum.assumed(algorithm, digest) : Checksum.of(algorithm, digest);
                start = end;
            }
            return List.of(list);
        }
    }
}
