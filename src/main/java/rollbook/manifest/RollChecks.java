package rollbook.manifest;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Looks at the files of a document as they are read: what clips there are, and what a person should look at. Files that
 * differ in one number only are kept as ranges of numbers, so that a million frames take little room; names that can't
 * be kept so are limited, and those past the limit are counted. Not safe for several threads.
 */
public final class RollChecks implements EntrySink {
    /** No file system in use has longer paths. */
    private static final int LONGEST_PATH = 4_096;

    /** Many lists are in no order, and most of their files belong to few groups; a power of two. */
    private static final int RECENT = 1 << 14;

    private static final int MOST_GROUPS = 200_000;
    private static final long MOST_CHARACTERS = 16_000_000;

    private final @Nullable Instant earliest;
    private final @Nullable Instant latest;
    private final Map<String, FileGroup> groups = new LinkedHashMap<>();
    private final @Nullable FileGroup[] recent = new FileGroup[RECENT];
    private @Nullable FileGroup last;
    private long characters;
    private long notLookedAt;

    /**
     * @param earliest files can't have been written before, or null if nobody can tell
     * @param latest nor after
     */
    public RollChecks(@Nullable Instant earliest, @Nullable Instant latest) {
        this.earliest = earliest;
        this.latest = latest;
    }

    @Override
    public void accept(ManifestEntry entry) {
        String path = entry.path();
        FileGroup group = last;
        int number = group == null ? -1 : group.numberOf(path);
        if (number < 0) {
            group = group(path);
            if (group == null) {
                notLookedAt++;
                return;
            }
            last = group;
            number = group.numberOf(path);
        }
        group.add(entry, number);
        Instant modified = entry.modified();
        if (modified != null) {
            if (earliest != null && modified.isBefore(earliest)) {
                group.addEarly(number);
            }
            if (latest != null && modified.isAfter(latest)) {
                group.addLate(number);
            }
        }
    }

    private @Nullable FileGroup group(String path) {
        if (path.length() > LONGEST_PATH) {
            return null;
        }
        int slot = FileGroup.headHash(path) & (RECENT - 1);
        FileGroup seen = recent[slot];
        if (seen != null && seen.numberOf(path) >= 0) {
            return seen;
        }
        FileGroup group = listed(path);
        recent[slot] = group == null ? seen : group;
        return group;
    }

    private @Nullable FileGroup listed(String path) {
        FileGroup fresh = FileGroup.of(path);
        FileGroup known = groups.get(fresh.key());
        if (known != null) {
            return known;
        }
        if (groups.size() == MOST_GROUPS || characters + fresh.characters() > MOST_CHARACTERS) {
            return null;
        }
        characters += fresh.characters();
        groups.put(fresh.key(), fresh);
        return fresh;
    }

    /** What was seen of each part of the document, by the part's folder. */
    public Map<String, RollSummary> summaries(RollSplit split) {
        Map<String, List<FileGroup>> byFolder = new HashMap<>();
        for (FileGroup group : groups.values()) {
            String folder = split.place(group.anyPath()).folder();
            byFolder.computeIfAbsent(folder, any -> new ArrayList<>()).add(group);
        }
        Map<String, RollSummary> summaries = new HashMap<>();
        for (RollPart part : split.parts()) {
            List<FileGroup> ofPart = byFolder.getOrDefault(part.folder(), List.of());
            summaries.put(part.folder(), new PartLook(part.folder(), ofPart, notLookedAt).summary());
        }
        return summaries;
    }
}
