package rollbook.manifest;

import java.util.List;

/**
 * Something wrong or remarkable about an ASC MHL history.
 *
 * @param subject the hash list, reference or folder that it is about
 * @param arguments for the message, the subject first
 */
public record HistoryProblem(Kind kind, String subject, List<String> arguments) {

    /** The texts are in {@code messages/manifest.properties}. */
    public enum Kind {
        /** There is no chain file, so nothing vouches for the hash lists. */
        CHAIN_MISSING,
        CHAIN_UNREADABLE,
        /** A hash list of the chain without its number, path or C4 ID, or with a path out of the folder. */
        LINK_INCOMPLETE,
        /** The same hash list stands in the chain twice. */
        LINK_REPEATED,
        /** Numbers don't start at 1 and grow by 1 (ASC MHL 1.0, 7.4). */
        SEQUENCE_BROKEN,
        /** The number in the hash list's name isn't the one in the chain. */
        NUMBER_DIFFERS,
        /** The name isn't number, folder, date and time (6.3). */
        NAME_UNUSUAL,
        /** The folder in the name isn't the one that the history lies in, or that of the hash list before. */
        FOLDER_DIFFERS,
        /** Made before the hash list that it follows. */
        DATE_BACKWARDS,
        /** A pattern of the hash list before is gone; the list of what is left out may only grow. */
        PATTERN_DROPPED,
        /** A history above recorded other bytes for this hash list. */
        REFERENCE_C4_DIFFERS,
        /** The inner history was sent without the hash list that a history above refers to. */
        REFERENCE_MISSING,
        /** The inner history wasn't sent, so the reference couldn't be checked and its files are not covered. */
        REFERENCE_ELSEWHERE;

        public String messageKey() {
            return "manifest.history.problem." + name();
        }
    }

    public HistoryProblem {
        arguments = List.copyOf(arguments);
    }

    static HistoryProblem of(Kind kind, String subject, String... more) {
        List<String> arguments = new java.util.ArrayList<>(List.of(subject));
        arguments.addAll(List.of(more));
        return new HistoryProblem(kind, subject, arguments);
    }
}
