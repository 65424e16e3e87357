package rollbook.manifest;

import java.util.List;

/**
 * Something about a roll's files that a person should look at; it proves nothing by itself.
 *
 * @param count how many times
 * @param examples the first of them: paths, or clip names as a range
 */
public record RollWarning(Kind kind, long count, List<String> examples) {

    /** What was noticed. */
    public enum Kind {
        /** Clip numbers are left out. */
        CLIP_GAP,
        /** Files without a single byte. */
        EMPTY_FILE,
        /** Paths that differ in letter case only; they may land on a file system that can't tell them apart. */
        NAME_COLLISION;

        public String messageKey() {
            return "manifest.warning." + name();
        }
    }

    public RollWarning {
        examples = List.copyOf(examples);
    }
}
