package rollbook.manifest;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What only an ASC MHL hash list says of itself.
 *
 * @param directoryAlgorithms those of its directory hashes; empty where it has none
 * @param hashedFrom the earliest date given for a digest; null where none has one, and that of the document counts
 * @param hashedTo the latest
 * @param remarks what departs from the standard without making the document unreadable
 */
public record MhlDetails(
        @Nullable String tool,
        @Nullable String toolVersion,
        List<MhlAuthor> authors,
        @Nullable String location,
        MhlScope scope,
        Set<ChecksumAlgorithm> directoryAlgorithms,
        @Nullable Instant hashedFrom,
        @Nullable Instant hashedTo,
        List<ManifestRemark> remarks) {
    public MhlDetails {
        authors = List.copyOf(authors);
        directoryAlgorithms = Set.copyOf(directoryAlgorithms);
        remarks = List.copyOf(remarks);
    }
}
