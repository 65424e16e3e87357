package rollbook.manifest;

import java.text.Normalizer;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One file that a manifest lists.
 *
 * @param path relative to the manifest's scope, separated by {@code /}, in Unicode form NFC
 * @param sizeBytes null where the document gives no size
 * @param checksums empty where the document gives no digest that is understood
 * @param line 1-based line of the document
 */
public record ManifestEntry(String path, @Nullable Long sizeBytes, List<Checksum> checksums, Action action, long line) {

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

    public ManifestEntry {
        path = Normalizer.normalize(path, Normalizer.Form.NFC);
        checksums = List.copyOf(checksums);
        if (sizeBytes != null && sizeBytes < 0) {
            throw new IllegalArgumentException("A file cannot have " + sizeBytes + " bytes");
        }
    }

    /** The same file seen from another folder. */
    public ManifestEntry withPath(String otherPath) {
        return new ManifestEntry(otherPath, sizeBytes, checksums, action, line);
    }

    /** Known to hold no bytes: by its size, or by the digest of nothing where no size is given. */
    boolean isEmpty() {
        return sizeBytes != null ? sizeBytes == 0 : checksums.stream().anyMatch(Checksum::ofNoBytes);
    }
}
