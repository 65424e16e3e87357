package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;
import rollbook.manifest.ManifestHeader.Process;

/**
 * Reads an ASC MHL hash list (ASC MHL 1.0, version attribute 2.0). Elements are told by name and namespace, never by
 * prefix; an unknown one is refused, because a file listed inside it would be overlooked.
 */
final class AscMhlReader {
    static final String NAMESPACE = "urn:ASC:MHL:v2.0";
    private static final String DIRECTORY_NAMESPACE = "urn:ASC:MHL:DIRECTORY:v2.0";
    private static final String VERSION = "2.0";

    private final XmlCursor xml;
    private final MhlHashReader hashes;
    private final MhlCreatorReader creator;
    private final @Nullable String rootFolder;
    private Process process = Process.NONE;
    private int references;

    AscMhlReader(InputStream in, String fileName) throws IOException, ManifestException {
        xml = new XmlCursor(in);
        hashes = new MhlHashReader(xml);
        creator = new MhlCreatorReader(xml);
        rootFolder = ManifestHeader.rootFolderIn(fileName);
    }

    ManifestHeader read(EntrySink sink) throws IOException, ManifestException {
        if (!xml.nextElement()) {
            throw xml.problem(ManifestProblem.XML_MALFORMED);
        }
        checkRoot();
        while (xml.nextElement()) {
            switch (element("hashlist")) {
                case "creatorinfo" -> creator.read();
                case "processinfo" -> readProcess();
                case "hashes" -> hashes.read(sink);
                case "metadata" -> xml.skip();
                case "references" -> readReferences();
                default -> throw unknown("hashlist");
            }
        }
        checkComplete();
        xml.nextElement(); // to the end of the document: what follows the root must be well-formed too
        return new ManifestHeader(
                ManifestFormat.ASC_MHL,
                hashes.algorithms(),
                AlgorithmBasis.STATED,
                hashes.entries(),
                references,
                creator.created(),
                creator.host(),
                process,
                creator.comment(),
                rootFolder);
    }

    private void checkRoot() throws ManifestException {
        String root = xml.localName();
        String version = xml.attribute("version");
        if (xml.namespace().equals(DIRECTORY_NAMESPACE)) {
            throw xml.problem(ManifestProblem.MHL_CHAIN_FILE);
        }
        if (!root.equals("hashlist")) {
            throw xml.problem(ManifestProblem.MHL_NOT_A_HASH_LIST, root);
        }
        if (xml.namespace().isEmpty() || version != null && version.startsWith("1.")) {
            throw xml.problem(ManifestProblem.MHL_OLD_FORMAT);
        }
        if (!xml.namespace().equals(NAMESPACE) || !VERSION.equals(version)) {
            throw xml.problem(ManifestProblem.MHL_VERSION, version == null ? "" : version, xml.namespace());
        }
    }

    private void readProcess() throws IOException, ManifestException {
        while (xml.nextElement()) {
            switch (element("processinfo")) {
                case "process" -> process = process(xml.text().strip());
                case "roothash", "ignore" -> xml.skip();
                default -> throw unknown("processinfo");
            }
        }
    }

    private Process process(String value) throws ManifestException {
        return switch (value) {
            case "transfer" -> Process.TRANSFER;
            case "in-place" -> Process.IN_PLACE;
            case "flatten" -> Process.FLATTEN;
            default -> throw xml.problem(ManifestProblem.MHL_VALUE, "process", value);
        };
    }

    private void readReferences() throws IOException, ManifestException {
        while (xml.nextElement()) {
            if (!element("references").equals("hashlistreference")) {
                throw unknown("references");
            }
            xml.skip();
            references++;
        }
    }

    private void checkComplete() throws ManifestException {
        if (creator.isMissing()) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "creationdate", "creatorinfo");
        }
        if (process == Process.NONE) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "process", "processinfo");
        }
        if (hashes.entries() == 0) {
            throw xml.problem(references > 0 ? ManifestProblem.MHL_REFERENCES_ONLY : ManifestProblem.NOTHING_LISTED);
        }
    }

    /** The name of the current element, which must belong to the standard's namespace. */
    private String element(String parent) throws ManifestException {
        if (!xml.namespace().equals(NAMESPACE)) {
            throw unknown(parent);
        }
        return xml.localName();
    }

    private ManifestException unknown(String parent) {
        return xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), parent);
    }
}
