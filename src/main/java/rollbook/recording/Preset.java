package rollbook.recording;

/**
 * A recording format that a published standard fixes, to start from.
 *
 * @param key stable name for forms and links, such as {@code vc3-1235}
 * @param standard the document that the figures come from
 */
public record Preset(String key, String standard, RecordingFormat format) {}
