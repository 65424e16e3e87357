package rollbook.manifest;

import java.io.IOException;

/** Takes each file of a manifest as it is read; the manifest is never held whole. */
@FunctionalInterface
public interface EntrySink {
    void accept(ManifestEntry entry) throws IOException;
}
