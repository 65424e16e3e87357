package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/**
 * One hash list of a history.
 *
 * @param path of the hash list, as it was handed in or as the chain and the history's folder give it
 * @param sequence its number in the chain, else the one in its name; null where neither has one
 */
public record MhlGeneration(String path, @Nullable Integer sequence, State state) {

    /** Whether the history vouches for the hash list; mildest first. */
    public enum State {
        /** Its bytes are those that the chain recorded. */
        GOOD,
        /** It lies in the history's folder, but the chain doesn't know it. */
        NOT_IN_CHAIN,
        /** The chain names it, but it wasn't handed in. */
        MISSING,
        /** Its bytes aren't those that the chain, or a history above, recorded. */
        C4_DIFFERS,
        /** It can't be read as a hash list. */
        UNREADABLE;

        public String messageKey() {
            return "manifest.history.state." + name();
        }
    }

    MhlGeneration with(State worse) {
        return new MhlGeneration(path, sequence, worse);
    }
}
