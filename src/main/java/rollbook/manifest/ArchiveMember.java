package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/**
 * A manifest that an archive holds, or should.
 *
 * @param path in the archive; of a missing one where it should be
 * @param generation its number in an ASC MHL history; null where it has none
 * @param state whether what names it in the archive agrees
 * @param bag the folder of the bag whose manifest it is; all those of one bag speak together. Null for others
 * @param plainPercents whether that bag is of a version before 1.0, which codes nothing in paths
 */
public record ArchiveMember(
        String path,
        @Nullable Integer generation,
        State state,
        @Nullable String bag,
        boolean plainPercents) {

    public enum State {
        /** What names it agrees with its bytes, or nothing needs to name it. */
        GOOD,
        /** The chain or tag manifest that should name it doesn't, or isn't there, or can't be read. */
        NOT_LISTED,
        /** Its bytes are others than the chain, a history above or a tag manifest says. */
        DIFFERS,
        /** It can't be read as a manifest. */
        UNREADABLE,
        /** The chain names it and it isn't there. */
        MISSING;

        public String messageKey() {
            return "manifest.archive.state." + name();
        }
    }

    static ArchiveMember alone(String path) {
        return new ArchiveMember(path, null, State.GOOD, null, false);
    }

    public boolean isThere() {
        return state != State.MISSING;
    }
}
