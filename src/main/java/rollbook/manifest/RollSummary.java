package rollbook.manifest;

import java.util.List;

/**
 * What one part of a document tells of a roll without being compared with anything.
 *
 * @param clips in the order of their names
 */
public record RollSummary(List<ClipSummary> clips, List<RollWarning> warnings) {
    public RollSummary {
        clips = List.copyOf(clips);
        warnings = List.copyOf(warnings);
    }
}
