package rollbook.manifest;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Which paths of a document lie in one of its parts: those in its folder that are in no other part's folder inside it.
 * For one thread: it remembers the folder that it was asked about last.
 */
public final class PartFilter {
    private final byte[] prefix;
    private final Set<String> innerFolders;
    private byte[] lastFolder = {};
    private boolean lastHeld = true;

    /** @param otherFolders the folders of the document's other parts */
    public PartFilter(String folder, Collection<String> otherFolders) {
        String start = folder.isEmpty() ? "" : folder + "/";
        this.prefix = PackedEntries.bytes(start);
        this.innerFolders = otherFolders.stream()
                .filter(other -> !other.isEmpty() && (other + "/").startsWith(start))
                .collect(Collectors.toUnmodifiableSet());
    }

    /** How many bytes of each path are the folder's. */
    int folderBytes() {
        return prefix.length;
    }

    boolean holds(byte[] path, int length) {
        if (length < prefix.length || !Arrays.equals(path, 0, prefix.length, prefix, 0, prefix.length)) {
            return false;
        }
        if (innerFolders.isEmpty()) {
            return true;
        }
        int end = folderEnd(path, length);
        if (!Arrays.equals(path, 0, end, lastFolder, 0, lastFolder.length)) {
            lastFolder = Arrays.copyOf(path, end);
            lastHeld = !isInner(new String(lastFolder, StandardCharsets.UTF_8));
        }
        return lastHeld;
    }

    private boolean isInner(String folder) {
        for (int end = folder.length(); end > 0; end = folder.lastIndexOf('/', end - 1)) {
            if (innerFolders.contains(folder.substring(0, end))) {
                return true;
            }
        }
        return false;
    }

    /** Where the folder of the path ends, 0 for a file that lies in none. */
    private static int folderEnd(byte[] path, int length) {
        int end = length;
        do {
            end--;
        } while (end > 0 && path[end] != '/');
        return Math.max(end, 0);
    }
}
