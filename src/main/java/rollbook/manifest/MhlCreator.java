package rollbook.manifest;

import java.time.Instant;
import java.util.List;
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
        List<MhlAuthor> authors,
        @Nullable String location,
        @Nullable String comment,
        Process process) {
    public MhlCreator {
        authors = List.copyOf(authors);
        if (process == Process.NONE) {
            throw new IllegalArgumentException("An ASC MHL hash list states its process");
        }
    }

    /** Without author and location. */
    public MhlCreator(
            Instant created, String host, String tool, String toolVersion, @Nullable String comment, Process process) {
        this(created, host, tool, toolVersion, List.of(), null, comment, process);
    }
}
