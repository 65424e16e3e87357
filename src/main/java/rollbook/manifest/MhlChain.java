package rollbook.manifest;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The chain file of an ASC MHL history: which hash lists it has, in which order, and the C4 ID of each one's bytes (ASC
 * MHL 1.0, 7). What is wrong with it is for {@link MhlHistories} to say; only what can't be read at all is refused.
 */
public record MhlChain(List<Link> links) {
    public static final String FILE_NAME = "ascmhl_chain.xml";

    private static final int MOST_LINKS = 100_000;

    /**
     * One hash list of the chain, as the file has it.
     *
     * @param sequence null where it is missing or no number
     * @param path relative to the chain file; empty where it is missing
     * @param c4 null where it is missing or malformed
     */
    public record Link(
            @Nullable Integer sequence,
            String path,
            @Nullable Checksum c4) {}

    public MhlChain {
        links = List.copyOf(links);
    }

    /** @throws ManifestException when this isn't a chain file, or cut off, or no XML at all */
    public static MhlChain read(InputStream in) throws IOException, ManifestException {
        XmlCursor xml = new XmlCursor(in);
        boolean any = xml.nextElement();
        if (!any
                || !xml.namespace().equals(AscMhlReader.DIRECTORY_NAMESPACE)
                || !xml.localName().equals("ascmhldirectory")) {
            throw any
                    ? xml.problem(ManifestProblem.MHL_NOT_A_CHAIN, xml.localName())
                    : xml.problem(ManifestProblem.XML_MALFORMED);
        }
        List<Link> links = new ArrayList<>();
        while (xml.nextElement()) {
            if (!isNamed(xml, "hashlist")) {
                throw xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), "ascmhldirectory");
            }
            if (links.size() == MOST_LINKS) {
                throw xml.problem(ManifestProblem.XML_EXCESSIVE);
            }
            links.add(link(xml));
        }
        xml.nextElement(); // to the end of the document
        return new MhlChain(links);
    }

    private static Link link(XmlCursor xml) throws IOException, ManifestException {
        Integer sequence = sequence(xml.attribute("sequencenr"));
        String path = "";
        Checksum c4 = null;
        while (xml.nextElement()) {
            if (isNamed(xml, "path")) {
                path = Normalizer.normalize(xml.text(), Normalizer.Form.NFC);
            } else if (isNamed(xml, "c4")) {
                byte[] digest = Checksum.decode(ChecksumAlgorithm.C4, xml.text().strip());
                c4 = digest == null ? null : Checksum.of(ChecksumAlgorithm.C4, digest);
            } else {
                throw xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), "hashlist");
            }
        }
        return new Link(sequence, path, c4);
    }

    private static boolean isNamed(XmlCursor xml, String name) {
        return xml.localName().equals(name) && xml.namespace().equals(AscMhlReader.DIRECTORY_NAMESPACE);
    }

    private static @Nullable Integer sequence(@Nullable String text) {
        try {
            return text == null ? null : Integer.valueOf(text.strip());
        } catch (NumberFormatException e) {
            return null;
        }
    }

    /** Writes the chain and closes the output. Every link needs its number, path and C4 ID. */
    public void write(OutputStream out) throws IOException {
        if (links.isEmpty()) {
            throw new IllegalStateException("A chain has at least one hash list");
        }
        try (BufferedWriter writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8))) {
            writer.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
            writer.write("<ascmhldirectory xmlns=\"" + AscMhlReader.DIRECTORY_NAMESPACE + "\">\n");
            for (Link link : links) {
                if (link.sequence() == null || link.path().isEmpty() || link.c4() == null) {
                    throw new IllegalArgumentException("Incomplete link " + link);
                }
                writer.write("  <hashlist sequencenr=\"" + link.sequence() + "\">\n");
                writer.write("    <path>" + XmlText.escape(link.path()) + "</path>\n");
                writer.write("    <c4>" + link.c4().text() + "</c4>\n");
                writer.write("  </hashlist>\n");
            }
            writer.write("</ascmhldirectory>\n");
        }
    }
}
