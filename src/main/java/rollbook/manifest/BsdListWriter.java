package rollbook.manifest;

import java.io.IOException;
import java.io.OutputStream;

/** Algorithm, name in brackets, equals sign, digest. */
final class BsdListWriter implements ManifestWriter {
    private final ListText text;

    BsdListWriter(OutputStream out) {
        this.text = new ListText(out);
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        if (entry.checksums().isEmpty()) {
            throw new IllegalArgumentException("No checksum for " + entry.path());
        }
        for (Checksum checksum : entry.checksums()) {
            String tag = checksum.algorithm().tag();
            if (tag == null) {
                throw new IllegalArgumentException(checksum.algorithm().label() + " has no tag in a list");
            }
            text.line(tag + " (", entry.path(), ") = " + checksum.text());
        }
    }

    @Override
    public void close() throws IOException {
        text.close();
    }
}
