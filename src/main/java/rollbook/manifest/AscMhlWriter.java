package rollbook.manifest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import rollbook.manifest.ManifestEntry.Action;

/**
 * Writes an ASC MHL hash list. The order of elements is that of the schema; digests follow the alphabet, which the
 * stricter of the published schemas demands.
 */
final class AscMhlWriter implements ManifestWriter {
    private final BufferedWriter out;
    private boolean empty = true;

    AscMhlWriter(OutputStream out, MhlCreator creator) throws IOException {
        this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        writeStart(creator);
    }

    private void writeStart(MhlCreator creator) throws IOException {
        line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
        line("<hashlist xmlns=\"" + AscMhlReader.NAMESPACE + "\" version=\"2.0\">");
        line("  <creatorinfo>");
        element(
                "    ",
                "creationdate",
                "",
                creator.created().truncatedTo(ChronoUnit.SECONDS).toString());
        element("    ", "hostname", "", creator.host());
        element("    ", "tool", " version=\"" + XmlText.escape(creator.toolVersion()) + "\"", creator.tool());
        if (creator.comment() != null) {
            element("    ", "comment", "", creator.comment());
        }
        line("  </creatorinfo>");
        line("  <processinfo>");
        element(
                "    ",
                "process",
                "",
                creator.process().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        line("  </processinfo>");
        line("  <hashes>");
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        List<Checksum> checksums = sorted(entry);
        if (entry.action() == Action.NONE) {
            throw new IllegalArgumentException("An ASC MHL digest states its action: " + entry.path());
        }
        String path = XmlText.escape(entry.path());
        String size = entry.sizeBytes() == null ? "" : " size=\"" + entry.sizeBytes() + "\"";
        line("    <hash>");
        line("      <path" + size + ">" + path + "</path>");
        for (Checksum checksum : checksums) {
            String action = " action=\"" + entry.action().name().toLowerCase(Locale.ROOT) + "\"";
            element("      ", element(checksum), action, checksum.text());
        }
        line("    </hash>");
        empty = false;
    }

    /** An empty {@code hashes} element is invalid, so a list without entries can't be completed. */
    @Override
    public void close() throws IOException {
        try (out) {
            if (empty) {
                throw new IllegalStateException("An ASC MHL hash list needs at least one entry");
            }
            line("  </hashes>");
            line("</hashlist>");
        }
    }

    private static List<Checksum> sorted(ManifestEntry entry) {
        List<Checksum> sorted = entry.checksums().stream()
                .filter(checksum -> checksum.algorithm().mhlElement() != null)
                .sorted(Comparator.comparing(AscMhlWriter::element))
                .toList();
        if (sorted.isEmpty()) {
            throw new IllegalArgumentException("No checksum that ASC MHL knows for " + entry.path());
        }
        return sorted;
    }

    private static String element(Checksum checksum) {
        return Objects.requireNonNull(checksum.algorithm().mhlElement());
    }

    private void element(String indent, String name, String attributes, String text) throws IOException {
        line(indent + "<" + name + attributes + ">" + XmlText.escape(text) + "</" + name + ">");
    }

    private void line(String text) throws IOException {
        out.write(text);
        out.write('\n');
    }
}
