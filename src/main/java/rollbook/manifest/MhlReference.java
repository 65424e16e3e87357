package rollbook.manifest;

import java.text.Normalizer;

/**
 * A hash list of a folder inside the covered one that an ASC MHL hash list refers to.
 *
 * @param path of the hash list, relative to the referring one's covered folder
 * @param c4 of the hash list's bytes
 */
public record MhlReference(String path, Checksum c4) {
    public MhlReference {
        path = Normalizer.normalize(path, Normalizer.Form.NFC);
        if (c4.algorithm() != ChecksumAlgorithm.C4) {
            throw new IllegalArgumentException("A reference states a C4 ID, not " + c4.algorithm());
        }
    }
}
