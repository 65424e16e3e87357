package rollbook.manifest;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.Process;

/**
 * What an ASC MHL hash list must say of its making.
 *
 * @param tool the writing program and its version
 */
public record MhlCreator(
        Instant created,
        String host,
        String tool,
        String toolVersion,
        @Nullable String comment,
        Process process) {
    public MhlCreator {
        if (process == Process.NONE) {
            throw new IllegalArgumentException("An ASC MHL hash list states its process");
        }
    }
}
