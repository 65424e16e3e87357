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
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;

/**
 * Writes an ASC MHL hash list. The order of elements is that of the schema; digests follow the alphabet, which the
 * stricter of the published schemas demands.
 */
final class AscMhlWriter implements ManifestWriter {
    private final BufferedWriter out;
    private final MhlScope scope;
    private boolean empty = true;

    AscMhlWriter(OutputStream out, MhlCreator creator, MhlScope scope) throws IOException {
        this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        this.scope = scope;
        line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
        line("<hashlist xmlns=\"" + AscMhlReader.NAMESPACE + "\" version=\"2.0\">");
        writeCreator(creator);
        writeProcess(creator);
        line("  <hashes>");
    }

    private void writeCreator(MhlCreator creator) throws IOException {
        line("  <creatorinfo>");
        String created = creator.created().truncatedTo(ChronoUnit.SECONDS).toString();
        element("    ", "creationdate", "", created);
        element("    ", "hostname", "", creator.host());
        element("    ", "tool", attribute("version", creator.toolVersion()), creator.tool());
        for (MhlAuthor author : creator.authors()) {
            String attributes = attribute("email", author.email())
                    + attribute("phone", author.phone())
                    + attribute("role", author.role());
            element("    ", "author", attributes, author.name());
        }
        if (creator.location() != null) {
            element("    ", "location", "", creator.location());
        }
        if (creator.comment() != null) {
            element("    ", "comment", "", creator.comment());
        }
        line("  </creatorinfo>");
    }

    private void writeProcess(MhlCreator creator) throws IOException {
        line("  <processinfo>");
        element(
                "    ",
                "process",
                "",
                creator.process().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        DirectoryHash root = scope.root();
        if (root != null) {
            line("    <roothash>");
            writePair("      ", root);
            line("    </roothash>");
        }
        if (!scope.ignored().isEmpty()) {
            line("    <ignore>");
            for (String pattern : scope.ignored()) {
                element("      ", "pattern", "", pattern);
            }
            line("    </ignore>");
        }
        line("  </processinfo>");
    }

    @Override
    public void write(ManifestEntry entry) throws IOException {
        List<Checksum> checksums = sorted(entry.checksums(), entry.path());
        if (entry.action() == Action.NONE) {
            throw new IllegalArgumentException("An ASC MHL digest states its action: " + entry.path());
        }
        String attributes = attribute("size", entry.sizeBytes()) + attribute("lastmodificationdate", entry.modified());
        String path = element("path", attributes, entry.path());
        String previousPath = entry.previousPath() == null ? null : element("previousPath", "", entry.previousPath());
        String action = attribute("action", entry.action().name().toLowerCase(Locale.ROOT));
        line("    <hash>");
        line("      " + path);
        for (Checksum checksum : checksums) {
            element("      ", name(checksum), action, checksum.text());
        }
        if (previousPath != null) {
            line("      " + previousPath);
        }
        line("    </hash>");
        empty = false;
    }

    @Override
    public void write(DirectoryHash directory) throws IOException {
        if (directory.isRoot()) {
            throw new IllegalArgumentException("The root hash belongs to the scope");
        }
        line("    <directoryhash>");
        element("      ", "path", "", directory.path());
        writePair("      ", directory);
        if (directory.previousPath() != null) {
            element("      ", "previousPath", "", directory.previousPath());
        }
        line("    </directoryhash>");
        empty = false;
    }

    private void writePair(String indent, DirectoryHash directory) throws IOException {
        List<Checksum> content = sorted(directory.content(), directory.path());
        List<Checksum> structure = sorted(directory.structure(), directory.path());
        if (!content.stream()
                .map(Checksum::algorithm)
                .toList()
                .equals(structure.stream().map(Checksum::algorithm).toList())) {
            throw new IllegalArgumentException("Content and structure need the same algorithms: " + directory.path());
        }
        writeDigests(indent, "content", content);
        writeDigests(indent, "structure", structure);
    }

    private void writeDigests(String indent, String name, List<Checksum> checksums) throws IOException {
        line(indent + "<" + name + ">");
        for (Checksum checksum : checksums) {
            element(indent + "  ", name(checksum), "", checksum.text());
        }
        line(indent + "</" + name + ">");
    }

    /** An empty {@code hashes} element is invalid, so a list without entries can't be completed. */
    @Override
    public void close() throws IOException {
        try (out) {
            if (empty) {
                throw new IllegalStateException("An ASC MHL hash list needs at least one entry");
            }
            line("  </hashes>");
            writeReferences();
            line("</hashlist>");
        }
    }

    private void writeReferences() throws IOException {
        if (scope.references().isEmpty()) {
            return;
        }
        line("  <references>");
        for (MhlReference reference : scope.references()) {
            line("    <hashlistreference>");
            element("      ", "path", "", reference.path());
            element("      ", "c4", "", reference.c4().text());
            line("    </hashlistreference>");
        }
        line("  </references>");
    }

    private static List<Checksum> sorted(List<Checksum> checksums, String path) {
        List<Checksum> sorted = checksums.stream()
                .filter(checksum -> checksum.algorithm().mhlElement() != null)
                .sorted(Comparator.comparing(AscMhlWriter::name))
                .toList();
        if (sorted.isEmpty()) {
            throw new IllegalArgumentException("No checksum that ASC MHL knows for " + path);
        }
        return sorted;
    }

    private static String name(Checksum checksum) {
        return Objects.requireNonNull(checksum.algorithm().mhlElement());
    }

    private static String attribute(String name, @Nullable Object value) {
        return value == null ? "" : " " + name + "=\"" + XmlText.escape(value.toString()) + "\"";
    }

    private static String element(String name, String attributes, String text) {
        return "<" + name + attributes + ">" + XmlText.escape(text) + "</" + name + ">";
    }

    private void element(String indent, String name, String attributes, String text) throws IOException {
        line(indent + element(name, attributes, text));
    }

    private void line(String text) throws IOException {
        out.write(text);
        out.write('\n');
    }
}
