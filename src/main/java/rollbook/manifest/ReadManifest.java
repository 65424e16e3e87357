package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a manifest that was read to its end says.
 *
 * @param summaries what was seen of each part, by the part's folder
 * @param body what it says of its files, as a {@link BodyFingerprint}
 * @param entries all of them in a few bytes each, or null if they would take more than was allowed
 */
public record ReadManifest(
        ManifestHeader header,
        RollSplit split,
        Map<String, RollSummary> summaries,
        long body,
        @Nullable PackedEntries entries) {

    /**
     * What the production knows that a document may speak of.
     *
     * @param earliest files can't have been written before, or null if nobody can tell
     * @param latest nor after
     */
    public record Known(
            Collection<String> rollCodes,
            @Nullable Instant earliest,
            @Nullable Instant latest) {}

    /**
     * @param mostBytes the entries may take in memory
     * @param also is handed every entry too
     * @throws ManifestException when the document is malformed, unsafe or of another kind
     */
    public static ReadManifest read(InputStream in, DocumentHints hints, Known known, long mostBytes, EntrySink also)
            throws IOException, ManifestException {
        RollSurvey survey =
                new RollSurvey(known.rollCodes(), hints.fileName(), ManifestHeader.rootFolderIn(hints.fileName()));
        RollChecks checks = new RollChecks(known.earliest(), known.latest());
        BodyFingerprint body = new BodyFingerprint();
        Keeper keeper = new Keeper(mostBytes);
        ManifestHeader header = new ManifestReader().read(in, hints, entry -> {
            survey.add(entry);
            checks.accept(entry);
            body.add(entry);
            keeper.accept(entry);
            also.accept(entry);
        });
        RollSplit split = survey.split();
        return new ReadManifest(header, split, checks.summaries(split), body.of(header), keeper.entries);
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
