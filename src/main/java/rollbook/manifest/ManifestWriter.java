package rollbook.manifest;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Set;

/**
 * Writes a manifest as a stream; {@link #close()} completes the document and closes the output.
 *
 * <p>{@link IllegalArgumentException} when an entry can't be written in the format: no digest of a suitable algorithm,
 * or in XML a name with control characters.
 */
public interface ManifestWriter extends Closeable {
    void write(ManifestEntry entry) throws IOException;

    /** Writes the hash of a directory; formats that know none leave it out. */
    default void write(DirectoryHash directory) throws IOException {
        // only ASC MHL has them
    }

    /** A GNU style list of one algorithm; other checksums of an entry are left out. */
    static ManifestWriter gnuList(OutputStream out, ChecksumAlgorithm algorithm) {
        return new GnuListWriter(out, algorithm);
    }

    /** The same with every line ended by NUL, for names that hold line ends; nothing is escaped. */
    static ManifestWriter nulEndedList(OutputStream out, ChecksumAlgorithm algorithm) {
        return new NulListWriter(out, algorithm);
    }

    /** A CSV table with one column for each of the algorithms; other checksums of an entry are left out. */
    static ManifestWriter table(OutputStream out, Set<ChecksumAlgorithm> algorithms) throws IOException {
        return new TableWriter(out, algorithms);
    }

    /** A BSD style list with one line per checksum; there is no tag for C4. */
    static ManifestWriter bsdList(OutputStream out) {
        return new BsdListWriter(out);
    }

    /** A manifest of a bag's payload, whose paths are relative to the folder {@code data}. */
    static ManifestWriter bagManifest(OutputStream out, ChecksumAlgorithm algorithm) {
        return new BagManifestWriter(out, algorithm);
    }

    /** An ASC MHL hash list; its algorithms are C4, MD5, SHA-1, XXH128, XXH3-64 and XXH64. */
    static ManifestWriter ascMhl(OutputStream out, MhlCreator creator) throws IOException {
        return ascMhl(out, creator, MhlScope.PLAIN);
    }

    /** The same with root hash, ignore patterns and references. Write directory hashes between the files. */
    static ManifestWriter ascMhl(OutputStream out, MhlCreator creator, MhlScope scope) throws IOException {
        return new AscMhlWriter(out, creator, scope);
    }
}
