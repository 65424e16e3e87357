package rollbook.format;

import java.util.UUID;
import rollbook.recording.RecordingFormat;

/** A recording format of a production, under a name that no other format of it has. */
public record NamedFormat(UUID id, String name, RecordingFormat format) {}
