package rollbook.manifest;

import java.nio.ByteBuffer;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Tells whether two documents are one reading of one medium, written down twice: what a document says of its files and
 * of the reading, without who wrote it, when, where and with what.
 *
 * <p>In it are each file's path, size, date, digests and action, and of an ASC MHL document the process, the comment
 * and from when to when it was hashed. Not in it are that document's host, date, tool, authors and place, nor the comment lines, the
 * line ends and the order of a list: all of these differ when a document is copied and touched up. It is a sum of 64-bit
 * hashes: fast, the same in any order, and should two documents ever meet by chance, only a verdict gets worse.
 */
public final class BodyFingerprint {
    private static final long START = 0x9E3779B97F4A7C15L;
    private static final long STEP = 0x100000001B3L;
    private static final long ABSENT = -1;
    private static final Map<ManifestEntry.Action, Long> ACTIONS = named(ManifestEntry.Action.class);
    private static final Map<ChecksumAlgorithm, Long> ALGORITHMS = named(ChecksumAlgorithm.class);

    private static <E extends Enum<E>> Map<E, Long> named(Class<E> type) {
        Map<E, Long> named = new EnumMap<>(type);
        for (E one : type.getEnumConstants()) {
            named.put(one, mix(START, one.name()));
        }
        return named;
    }

    private long sum;

    public void add(ManifestEntry entry) {
        long hash = mix(START, entry.path());
        hash = mix(hash, entry.sizeBytes() == null ? ABSENT : entry.sizeBytes());
        hash = mix(hash, entry.modified());
        hash = mix(hash, ACTIONS.get(entry.action()));
        for (Checksum checksum : entry.checksums()) {
            // A sum again: in which order a file's digests are written says nothing.
            hash += mix(ALGORITHMS.get(checksum.algorithm()), checksum.digest());
        }
        sum += spread(hash);
    }

    /** @param header of the document, once it has been read to its end */
    public long of(ManifestHeader header) {
        long hash = mix(sum, header.process().name());
        hash = mix(hash, header.comment() == null ? "" : header.comment().strip());
        MhlDetails mhl = header.mhl();
        return mhl == null ? hash : mix(mix(hash, mhl.hashedFrom()), mhl.hashedTo());
    }

    private static long mix(long hash, String text) {
        long mixed = hash;
        int i = 0;
        for (; i + 4 <= text.length(); i += 4) {
            long four = text.charAt(i)
                    | (long) text.charAt(i + 1) << 16
                    | (long) text.charAt(i + 2) << 32
                    | (long) text.charAt(i + 3) << 48;
            mixed = stepped(mixed ^ four);
        }
        for (; i < text.length(); i++) {
            mixed = stepped(mixed ^ text.charAt(i));
        }
        return spread(mixed ^ text.length());
    }

    private static long mix(long hash, byte[] bytes) {
        long mixed = hash;
        ByteBuffer words = ByteBuffer.wrap(bytes);
        while (words.remaining() >= Long.BYTES) {
            mixed = stepped(mixed ^ words.getLong());
        }
        while (words.hasRemaining()) {
            mixed = stepped(mixed ^ words.get() & 0xFF);
        }
        return spread(mixed);
    }

    private static long stepped(long value) {
        long stepped = value * STEP;
        return stepped ^ stepped >>> 32;
    }

    private static long mix(long hash, @Nullable Instant instant) {
        return instant == null ? mix(hash, ABSENT) : mix(mix(hash, instant.getEpochSecond()), instant.getNano());
    }

    private static long mix(long hash, long value) {
        return spread(hash * STEP ^ value);
    }

    /** Every bit of the value moves about half of the result's bits (the finishing steps of MurmurHash3, public domain). */
    private static long spread(long value) {
        long spread = value;
        spread = (spread ^ spread >>> 33) * 0xFF51AFD7ED558CCDL;
        spread = (spread ^ spread >>> 33) * 0xC4CEB9FE1A85EC53L;
        return spread ^ spread >>> 33;
    }
}
