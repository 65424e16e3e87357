package rollbook.manifest;

import java.util.HashMap;
import java.util.Map;

/**
 * Which files a bag's manifests list, as 64 bits of each path: enough to compare whole lists without their names. Two
 * paths with the same bits would hide one finding of completeness; verdicts don't come from here.
 */
final class BagPayload {
    /** More than any bag has: there are fewer algorithms. */
    static final int MAX_MANIFESTS = 31;

    private static final long FNV_START = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;

    private final Map<Long, Integer> manifests = new HashMap<>();

    /** False if that manifest lists it already. */
    boolean add(int manifest, String path) {
        int before = manifests.getOrDefault(key(path), 0);
        manifests.put(key(path), before | 1 << manifest);
        return (before & 1 << manifest) == 0;
    }

    /** Takes back what a manifest lists that turns out to be none. */
    void forget(int manifest) {
        manifests.replaceAll((path, mask) -> mask & ~(1 << manifest));
        manifests.values().removeIf(mask -> mask == 0);
    }

    boolean lists(String path) {
        return manifests.containsKey(key(path));
    }

    /** Whether each of so many manifests lists it. */
    boolean inEvery(String path, int count) {
        return manifests.getOrDefault(key(path), 0) == (1 << count) - 1;
    }

    long files() {
        return manifests.size();
    }

    /** How many files aren't in each of so many manifests. */
    long notInEvery(int count) {
        int all = (1 << count) - 1;
        return manifests.values().stream().filter(mask -> mask != all).count();
    }

    private static long key(String path) {
        long hash = FNV_START;
        for (int i = 0; i < path.length(); i++) {
            hash = (hash ^ path.charAt(i)) * FNV_PRIME;
        }
        return hash ^ hash >>> 32;
    }
}
