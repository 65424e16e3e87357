package rollbook.manifest;

import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Finds files of the reference that a copy holds under another path. Each extra file of the copy stands for one file of
 * the reference at most, so that two equal files are not proven by one.
 */
final class MovedFiles {
    /** Equal digests with unequal sizes don't occur by accident; the bound keeps a hostile list from taking hours. */
    private static final int MAX_CANDIDATES = 16;

    private final Map<ByteBuffer, Deque<ManifestEntry>> extrasByDigest = new HashMap<>();
    private final Set<String> taken = new HashSet<>();

    MovedFiles(Collection<ManifestEntry> extras) {
        for (ManifestEntry extra : extras) {
            for (Checksum checksum : extra.checksums()) {
                extrasByDigest
                        .computeIfAbsent(ByteBuffer.wrap(checksum.digest()), digest -> new ArrayDeque<>())
                        .add(extra);
            }
        }
    }

    /** The extra file that holds these bytes, or null; it is not given out again. */
    @Nullable
    ManifestEntry take(ManifestEntry missing) {
        for (Checksum checksum : missing.checksums()) {
            Deque<ManifestEntry> candidates = extrasByDigest.get(ByteBuffer.wrap(checksum.digest()));
            ManifestEntry found = candidates == null ? null : firstEqual(missing, candidates);
            if (found != null) {
                taken.add(found.path());
                return found;
            }
        }
        return null;
    }

    boolean isTaken(ManifestEntry extra) {
        return taken.contains(extra.path());
    }

    private @Nullable ManifestEntry firstEqual(ManifestEntry missing, Deque<ManifestEntry> candidates) {
        int looked = 0;
        for (Iterator<ManifestEntry> i = candidates.iterator(); i.hasNext() && looked < MAX_CANDIDATES; ) {
            ManifestEntry candidate = i.next();
            if (taken.contains(candidate.path())) {
                i.remove();
            } else if (!FileListing.sizesDiffer(missing, candidate)
                    && Agreement.of(missing.checksums(), candidate.checksums()) == Agreement.SAME) {
                i.remove();
                return candidate;
            } else {
                looked++;
            }
        }
        return null;
    }
}
