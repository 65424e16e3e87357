package rollbook.manifest;

import java.io.IOException;

/** Takes each file of a manifest as it is read; the manifest is never held whole. */
@FunctionalInterface
public interface EntrySink {
    void accept(ManifestEntry entry) throws IOException;

    /** Takes the hash of a directory, or of the covered folder itself. They prove nothing that files don't. */
    default void directory(DirectoryHash directory) throws IOException {
        // most receivers ask for files alone
    }
}
