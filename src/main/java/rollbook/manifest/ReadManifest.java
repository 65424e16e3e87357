package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.util.Collection;
import org.jspecify.annotations.Nullable;

/**
 * What a manifest that was read to its end says.
 *
 * @param entries all of them in a few bytes each, or null if they would take more than was allowed
 */
public record ReadManifest(
        ManifestHeader header, RollSplit split, @Nullable PackedEntries entries) {

    /**
     * @param rollCodes the production's
     * @param mostBytes the entries may take in memory
     * @param also is handed every entry too
     * @throws ManifestException when the document is malformed, unsafe or of another kind
     */
    public static ReadManifest read(
            InputStream in, DocumentHints hints, Collection<String> rollCodes, long mostBytes, EntrySink also)
            throws IOException, ManifestException {
        RollSurvey survey = new RollSurvey(rollCodes, hints.fileName(), ManifestHeader.rootFolderIn(hints.fileName()));
        Keeper keeper = new Keeper(mostBytes);
        ManifestHeader header = new ManifestReader().read(in, hints, entry -> {
            survey.add(entry);
            keeper.accept(entry);
            also.accept(entry);
        });
        return new ReadManifest(header, survey.split(), keeper.entries);
    }

    private static final class Keeper implements EntrySink {
        private static final int LOOK_EVERY = 1 << 12;

        private final long mostBytes;
        private @Nullable PackedEntries entries = new PackedEntries();

        Keeper(long mostBytes) {
            this.mostBytes = mostBytes;
        }

        @Override
        public void accept(ManifestEntry entry) {
            if (entries != null) {
                entries.add(entry);
                if (entries.size() % LOOK_EVERY == 0 && entries.bytes() > mostBytes) {
                    entries = null;
                }
            }
        }
    }
}
