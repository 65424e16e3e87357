package rollbook.manifest;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a document lists of one clip.
 *
 * @param clip its name in upper case, as in A014C003
 * @param folder where most of its files lie, relative to the roll's folder
 * @param files how many files, its sidecars included
 * @param sizeBytes their sum; null where a size isn't given
 * @param sequences frames as files, the longest first; a clip may have several
 */
public record ClipSummary(
        String clip, String folder, long files, @Nullable Long sizeBytes, List<FrameSequence> sequences) {
    public ClipSummary {
        sequences = List.copyOf(sequences);
    }

    /** The clip that a file's name speaks of, or null. */
    public static @Nullable String nameIn(String fileName) {
        ClipName clip = ClipName.in(fileName);
        return clip == null ? null : clip.text();
    }

    /** Frames that its sequences leave out. */
    public long missingFrames() {
        return sequences.stream().mapToLong(FrameSequence::missing).sum();
    }
}
