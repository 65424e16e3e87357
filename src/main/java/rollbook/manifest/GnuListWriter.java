package rollbook.manifest;

import java.io.IOException;
import java.io.OutputStream;

/** Digest, two blanks, name. XXH3-64 digests carry a prefix that tells them from XXH64. */
final class GnuListWriter implements ManifestWriter {
    private final ListText text;
    private final ChecksumAlgorithm algorithm;

    GnuListWriter(OutputStream out, ChecksumAlgorithm algorithm) {
        this.text = new ListText(out);
        this.algorithm = algorithm;
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        text.line(digest(entry, algorithm) + "  ", entry.path(), "");
    }

    /** The entry's digest in the form that a line of the list begins with. */
    static String digest(ManifestEntry entry, ChecksumAlgorithm algorithm) {
        Checksum checksum = entry.checksums().stream()
                .filter(candidate -> candidate.algorithm() == algorithm)
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("No " + algorithm.label() + " checksum for " + entry.path()));
        return algorithm == ChecksumAlgorithm.XXH3_64 ? "XXH3_" + checksum.text() : checksum.text();
    }

    @Override
    public void close() throws IOException {
        text.close();
    }
}
