package rollbook.manifest;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that a person should know of an archive.
 *
 * @param messageKey of a text in {@code messages/manifest.properties}
 * @param count of the things it was found of; null where the message takes none
 * @param names for the message, after the count
 */
public record ArchiveFinding(
        Weight weight, String messageKey, @Nullable Long count, List<String> names) {

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
        names = List.copyOf(names);
    }

    /** What the message takes. */
    public List<Object> arguments() {
        List<Object> arguments = new ArrayList<>();
        if (count != null) {
            arguments.add(count);
        }
        arguments.addAll(names);
        return arguments;
    }
}
