package rollbook.manifest;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;
import rollbook.manifest.ManifestHeader.Process;

/**
 * Reads an ASC MHL hash list (ASC MHL 1.0, version attribute 2.0). Elements are told by name and namespace, never by
 * prefix; an unknown one is refused, because a file listed inside it would be overlooked.
 */
final class AscMhlReader {
    static final String NAMESPACE = "urn:ASC:MHL:v2.0";
    static final String DIRECTORY_NAMESPACE = "urn:ASC:MHL:DIRECTORY:v2.0";
    private static final String VERSION = "2.0";

    private final XmlCursor xml;
    private final MhlHashReader hashes;
    private final MhlCreatorReader creator;
    private final MhlScopeReader scope;
    private final ManifestRemarks remarks = new ManifestRemarks();
    private final @Nullable String rootFolder;

    AscMhlReader(InputStream in, String fileName) throws IOException, ManifestException {
        xml = new XmlCursor(in);
        MhlBudget budget = new MhlBudget(xml);
        hashes = new MhlHashReader(xml, remarks);
        creator = new MhlCreatorReader(xml, budget);
        scope = new MhlScopeReader(xml, budget, hashes);
        rootFolder = ManifestHeader.rootFolderIn(fileName);
    }

    ManifestHeader read(EntrySink sink) throws IOException, ManifestException {
        if (!xml.nextElement()) {
            throw xml.problem(ManifestProblem.XML_MALFORMED);
        }
        checkRoot();
        while (xml.nextElement()) {
            switch (element()) {
                case "creatorinfo" -> creator.read();
                case "processinfo" -> scope.readProcess(sink);
                case "hashes" -> hashes.read(sink, new IgnoredRecords(scope.ignored(), remarks));
                case "metadata" -> xml.skip();
                case "references" -> scope.readReferences();
                default -> throw xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), "hashlist");
            }
        }
        checkComplete();
        xml.nextElement(); // to the end of the document: what follows the root must be well-formed too
        return header();
    }

    private ManifestHeader header() {
        MhlScope covered = scope.scope();
        MhlDetails details = new MhlDetails(
                creator.tool(),
                creator.toolVersion(),
                creator.authors(),
                creator.location(),
                covered,
                hashes.directoryAlgorithms(),
                hashes.hashedFrom(),
                hashes.hashedTo(),
                remarks.all());
        return new ManifestHeader(
                ManifestFormat.ASC_MHL,
                hashes.algorithms(),
                AlgorithmBasis.STATED,
                hashes.entries(),
                covered.references().size(),
                creator.created(),
                creator.host(),
                scope.process(),
                creator.comment(),
                rootFolder,
                Map.of(),
                details);
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

    /** A list that only refers to others is lawful: the folder may hold nothing but folders with their own. */
    private void checkComplete() throws ManifestException {
        if (creator.isMissing()) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "creationdate", "creatorinfo");
        }
        if (scope.process() == Process.NONE) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "process", "processinfo");
        }
        if (hashes.entries() == 0 && scope.scope().references().isEmpty()) {
            throw xml.problem(ManifestProblem.NOTHING_LISTED);
        }
    }

    private String element() {
        return xml.namespace().equals(NAMESPACE) ? xml.localName() : "";
    }
}
