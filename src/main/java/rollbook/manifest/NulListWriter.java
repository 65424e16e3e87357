package rollbook.manifest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;

/** A GNU style list whose lines are ended by NUL, with every name as it is. */
final class NulListWriter implements ManifestWriter {
    private final BufferedWriter out;
    private final ChecksumAlgorithm algorithm;

    NulListWriter(OutputStream out, ChecksumAlgorithm algorithm) {
        this.out = ListText.utf8(out);
        this.algorithm = algorithm;
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        out.write(GnuListWriter.digest(entry, algorithm) + "  " + entry.path() + '\0');
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
