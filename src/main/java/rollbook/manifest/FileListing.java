package rollbook.manifest;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The files of one roll as one manifest lists them, by path. A path listed again is merged when its lines agree (lists
 * of several algorithms repeat every path) and kept as a contradiction when they don't. Not safe for several threads.
 */
public final class FileListing {
    private final Map<String, ManifestEntry> files = new LinkedHashMap<>();
    private final Map<String, ManifestEntry> contradictions = new LinkedHashMap<>();

    public static FileListing of(Collection<ManifestEntry> entries) {
        FileListing listing = new FileListing();
        entries.forEach(listing::add);
        return listing;
    }

    public void add(ManifestEntry entry) {
        ManifestEntry earlier = files.putIfAbsent(entry.path(), entry);
        if (earlier == null) {
            return;
        }
        if (contradicts(earlier, entry)) {
            contradictions.putIfAbsent(entry.path(), entry);
        } else {
            files.put(entry.path(), merged(earlier, entry));
        }
    }

    /** Number of different paths. */
    public int size() {
        return files.size();
    }

    /** The entries in the document's order; of contradicting ones the first. */
    public Collection<ManifestEntry> files() {
        return List.copyOf(files.values());
    }

    /** The sum of the sizes given, in bytes; {@link ArithmeticException} past the range of a long. */
    public long sizeBytes() {
        long sum = 0;
        for (ManifestEntry entry : files.values()) {
            sum = Math.addExact(sum, entry.sizeBytes() == null ? 0 : entry.sizeBytes());
        }
        return sum;
    }

    Iterable<ManifestEntry> entries() {
        return files.values();
    }

    @Nullable
    ManifestEntry get(String path) {
        return files.get(path);
    }

    /** The later entry that contradicts the first one of this path, or null. */
    @Nullable
    ManifestEntry contradiction(String path) {
        return contradictions.get(path);
    }

    boolean hasChecksums() {
        return files.values().stream().anyMatch(entry -> !entry.checksums().isEmpty());
    }

    private static boolean contradicts(ManifestEntry one, ManifestEntry other) {
        return sizesDiffer(one, other) || Agreement.of(one.checksums(), other.checksums()) == Agreement.DIFFERENT;
    }

    static boolean sizesDiffer(ManifestEntry one, ManifestEntry other) {
        return one.sizeBytes() != null
                && other.sizeBytes() != null
                && !Objects.equals(one.sizeBytes(), other.sizeBytes());
    }

    private static ManifestEntry merged(ManifestEntry earlier, ManifestEntry later) {
        List<Checksum> checksums = new ArrayList<>(earlier.checksums());
        later.checksums().stream()
                .filter(checksum -> !earlier.checksums().contains(checksum))
                .forEach(checksums::add);
        Long size = earlier.sizeBytes() == null ? later.sizeBytes() : earlier.sizeBytes();
        ManifestEntry.Action action =
                earlier.action().compareTo(later.action()) >= 0 ? earlier.action() : later.action();
        return new ManifestEntry(
                earlier.path(), size, checksums, action, earlier.line(), earlier.previousPath(), earlier.modified());
    }
}
