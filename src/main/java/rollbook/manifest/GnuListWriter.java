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
        Checksum checksum = entry.checksums().stream()
                .filter(candidate -> candidate.algorithm() == algorithm)
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("No " + algorithm.label() + " checksum for " + entry.path()));
        String prefix = algorithm == ChecksumAlgorithm.XXH3_64 ? "XXH3_" : "";
        text.line(prefix + checksum.text() + "  ", entry.path(), "");
    }

    @Override
    public void close() throws IOException {
        text.close();
    }
}
