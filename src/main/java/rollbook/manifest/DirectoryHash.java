package rollbook.manifest;

import java.text.Normalizer;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an ASC MHL hash list says of a directory as a whole (ASC MHL 1.0, 6.5.2).
 *
 * @param path of the directory, or empty for the covered folder itself (the root hash)
 * @param content over the digests of what the directory holds; renaming leaves it as it is
 * @param structure over names too
 * @param line 1-based line of the document
 */
public record DirectoryHash(
        String path,
        List<Checksum> content,
        List<Checksum> structure,
        @Nullable String previousPath,
        long line) {
    public DirectoryHash {
        path = Normalizer.normalize(path, Normalizer.Form.NFC);
        previousPath = previousPath == null ? null : Normalizer.normalize(previousPath, Normalizer.Form.NFC);
        content = List.copyOf(content);
        structure = List.copyOf(structure);
    }

    public boolean isRoot() {
        return path.isEmpty();
    }
}
