package rollbook.manifest;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;

/**
 * Puts the generations of an ASC MHL history together into one list (ASC MHL 1.0, 5.6.7): failed digests are dropped,
 * of several of one algorithm the earliest stays, size and date come from the newest record, and a renamed file takes
 * its digests along. Directory hashes have no place in it, and nothing is proven by it that the generations don't
 * prove.
 */
public final class Flattening {
    private Flattening() {}

    /** What has been gathered of one file. */
    private static final class File {
        final List<Checksum> checksums = new ArrayList<>();
        Action action = Action.VERIFIED;

        @Nullable
        Long sizeBytes;

        @Nullable
        Instant modified;

        @Nullable
        String previousPath;

        void add(ManifestEntry entry) {
            previousPath = entry.previousPath() == null ? previousPath : entry.previousPath();
            if (entry.action() == Action.FAILED) {
                return;
            }
            sizeBytes = entry.sizeBytes();
            modified = entry.modified();
            for (Checksum checksum : entry.checksums()) {
                if (checksums.stream().noneMatch(earlier -> earlier.algorithm() == checksum.algorithm())) {
                    checksums.add(checksum);
                    action = entry.action() == Action.VERIFIED ? action : Action.ORIGINAL;
                }
            }
        }
    }

    /**
     * @param generations oldest first; paths of inner histories seen from the same folder as the outer one's
     * @return files with a digest at least, in the order in which they appeared; lines are those of the list itself
     */
    public static List<ManifestEntry> flatten(List<? extends Collection<ManifestEntry>> generations) {
        Map<String, File> files = new LinkedHashMap<>();
        for (Collection<ManifestEntry> generation : generations) {
            Map<String, File> renamed = renamed(files, generation);
            files.putAll(renamed);
            for (ManifestEntry entry : generation) {
                files.computeIfAbsent(entry.path(), path -> new File()).add(entry);
            }
        }
        List<ManifestEntry> entries = new ArrayList<>();
        files.forEach((path, file) -> {
            if (!file.checksums.isEmpty()) {
                entries.add(new ManifestEntry(
                        path,
                        file.sizeBytes,
                        file.checksums,
                        file.action,
                        entries.size() + 1L,
                        file.previousPath,
                        file.modified));
            }
        });
        return entries;
    }

    /** Takes renamed files out, all at once, since two files may have changed names with each other. */
    private static Map<String, File> renamed(Map<String, File> files, Collection<ManifestEntry> generation) {
        Map<String, File> renamed = new LinkedHashMap<>();
        for (ManifestEntry entry : generation) {
            File file = entry.previousPath() == null ? null : files.remove(entry.previousPath());
            if (file != null) {
                renamed.put(entry.path(), file);
            }
        }
        return renamed;
    }
}
