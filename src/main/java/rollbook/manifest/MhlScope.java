package rollbook.manifest;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an ASC MHL hash list covers beside the files it lists.
 *
 * @param root the hash of the covered folder as a whole
 * @param ignored patterns of what was left out, one line of {@code .gitignore} each
 * @param references the hash lists of folders inside that have their own
 */
public record MhlScope(@Nullable DirectoryHash root, List<String> ignored, List<MhlReference> references) {
    /** Everything in the folder, by this document alone. */
    public static final MhlScope PLAIN = new MhlScope(null, List.of(), List.of());

    public MhlScope {
        ignored = List.copyOf(ignored);
        references = List.copyOf(references);
        if (root != null && !root.isRoot()) {
            throw new IllegalArgumentException("The root hash has no path: " + root.path());
        }
    }
}
