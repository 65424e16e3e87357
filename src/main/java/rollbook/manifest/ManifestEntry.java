package rollbook.manifest;

import java.text.Normalizer;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One file that a manifest lists.
 *
 * @param path relative to the manifest's scope, separated by {@code /}, in Unicode form NFC
 * @param sizeBytes null where the document gives no size
 * @param checksums empty where the document gives no digest that is understood
 * @param line 1-based line of the document
 * @param previousPath where the file was before it was renamed, in the same form; null where the document names none
 * @param modified when the file was last written, as the document has it; null where it doesn't say
 */
public record ManifestEntry(
        String path,
        @Nullable Long sizeBytes,
        List<Checksum> checksums,
        Action action,
        long line,
        @Nullable String previousPath,
        @Nullable Instant modified) {

    /** What the writer of an ASC MHL hash list did to get the digest (ASC MHL 1.0, 6.5.1). */
    public enum Action {
        /** Not said; checksum lists never say. */
        NONE,
        /** First digest of this file; nothing was compared. */
        ORIGINAL,
        /** The file was read again and matched an earlier digest. */
        VERIFIED,
        /** The file was read again and did not match; the digest is the newly computed one. */
        FAILED
    }

    /** What comes before it is in form NFC however it is put together (Unicode Standard Annex 15). */
    private static final char FIRST_TO_COMPOSE = '\u0300';

    public ManifestEntry {
        path = composed(path);
        previousPath = previousPath == null ? null : composed(previousPath);
        checksums = List.copyOf(checksums);
        if (sizeBytes != null && sizeBytes < 0) {
            throw new IllegalArgumentException("A file cannot have " + sizeBytes + " bytes");
        }
    }

    private static String composed(String path) {
        for (int i = 0; i < path.length(); i++) {
            if (path.charAt(i) >= FIRST_TO_COMPOSE) {
                return Normalizer.normalize(path, Normalizer.Form.NFC);
            }
        }
        return path;
    }

    /** A file of which the document tells neither an earlier path nor a date. */
    public ManifestEntry(String path, @Nullable Long sizeBytes, List<Checksum> checksums, Action action, long line) {
        this(path, sizeBytes, checksums, action, line, null, null);
    }

    /** The same file seen from a folder that it lies in. An earlier path outside of that folder stays as it is. */
    public ManifestEntry within(String folder) {
        if (folder.isEmpty()) {
            return this;
        }
        int skip = folder.length() + 1;
        String earlier = previousPath != null && previousPath.startsWith(folder + "/")
                ? previousPath.substring(skip)
                : previousPath;
        return new ManifestEntry(path.substring(skip), sizeBytes, checksums, action, line, earlier, modified);
    }

    /** Known to hold no bytes: by its size, or by the digest of nothing where no size is given. */
    boolean isEmpty() {
        if (sizeBytes != null) {
            return sizeBytes == 0;
        }
        for (Checksum checksum : checksums) {
            if (checksum.ofNoBytes()) {
                return true;
            }
        }
        return false;
    }
}
