package rollbook.manifest;

import java.util.List;

/**
 * Something that a person should know of an archive.
 *
 * @param messageKey of a text in {@code messages/manifest.properties}
 * @param arguments a count where there is one, and names
 */
public record ArchiveFinding(Weight weight, String messageKey, List<String> arguments) {

    /** What it means, worst first. */
    public enum Weight {
        /** Something has other bytes than it should. */
        WRONG,
        /** Something that belongs to it is missing or malformed. */
        INCOMPLETE,
        /** Worth knowing. */
        REMARK;

        public String messageKey() {
            return "manifest.archive.weight." + name();
        }
    }

    public ArchiveFinding {
        arguments = List.copyOf(arguments);
    }
}
