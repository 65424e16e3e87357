package rollbook.manifest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** A manifest of a bag's payload as version 1.0 has it (RFC 8493, 2.1.3). */
final class BagManifestWriter implements ManifestWriter {
    private final BufferedWriter out;
    private final ChecksumAlgorithm algorithm;

    BagManifestWriter(OutputStream out, ChecksumAlgorithm algorithm) {
        // A lone surrogate has no UTF-8 form; replacing it by a question mark would name another file.
        this.out = new BufferedWriter(new OutputStreamWriter(
                out, StandardCharsets.UTF_8.newEncoder().onMalformedInput(CodingErrorAction.REPORT)));
        this.algorithm = algorithm;
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        Checksum checksum = entry.checksums().stream()
                .filter(candidate -> candidate.algorithm() == algorithm)
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("No " + algorithm.label() + " checksum for " + entry.path()));
        out.write(checksum.text());
        out.write("  ");
        out.write(BagPath.PAYLOAD);
        out.write(BagPath.encoded(entry.path()));
        out.write('\n');
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
