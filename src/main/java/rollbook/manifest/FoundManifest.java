package rollbook.manifest;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A hash list that was handed in as part of a history, and what of it concerns the history.
 *
 * @param path as it was handed in
 * @param c4 of its bytes
 */
record FoundManifest(
        String path,
        Checksum c4,
        boolean readable,
        @Nullable Instant created,
        List<String> ignored,
        List<MhlReference> references) {

    static FoundManifest unreadable(String path, Checksum c4) {
        return new FoundManifest(path, c4, false, null, List.of(), List.of());
    }

    static FoundManifest of(String path, Checksum c4, ManifestHeader header) {
        MhlDetails details = header.mhl();
        return details == null
                ? unreadable(path, c4)
                : new FoundManifest(
                        path,
                        c4,
                        true,
                        header.created(),
                        details.scope().ignored(),
                        details.scope().references());
    }

    /** What it takes to keep this, roughly. */
    long characters() {
        long characters = path.length();
        for (String pattern : ignored) {
            characters += pattern.length();
        }
        for (MhlReference reference : references) {
            characters += reference.path().length() + 100;
        }
        return characters;
    }
}
