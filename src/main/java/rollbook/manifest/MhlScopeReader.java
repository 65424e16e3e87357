package rollbook.manifest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.Process;

/** Reads the {@code processinfo} and {@code references} elements: how a hash list came about and what it covers. */
final class MhlScopeReader {
    private final XmlCursor xml;
    private final MhlBudget budget;
    private final MhlHashReader hashes;
    private final List<String> ignored = new ArrayList<>();
    private final List<MhlReference> references = new ArrayList<>();
    private Process process = Process.NONE;
    private @Nullable DirectoryHash root;

    MhlScopeReader(XmlCursor xml, MhlBudget budget, MhlHashReader hashes) {
        this.xml = xml;
        this.budget = budget;
        this.hashes = hashes;
    }

    Process process() {
        return process;
    }

    List<String> ignored() {
        return ignored;
    }

    MhlScope scope() {
        return new MhlScope(root, ignored, references);
    }

    void readProcess(EntrySink sink) throws IOException, ManifestException {
        while (xml.nextElement()) {
            switch (element()) {
                case "process" -> process = process(xml.text().strip());
                case "roothash" -> {
                    root = hashes.directory("roothash");
                    sink.directory(root);
                }
                case "ignore" -> readPatterns();
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

    private void readPatterns() throws IOException, ManifestException {
        while (xml.nextElement()) {
            if (!element().equals("pattern")) {
                throw unknown("ignore");
            }
            String pattern = xml.text();
            budget.spend(pattern);
            ignored.add(pattern);
        }
    }

    void readReferences() throws IOException, ManifestException {
        while (xml.nextElement()) {
            if (!element().equals("hashlistreference")) {
                throw unknown("references");
            }
            references.add(reference());
        }
    }

    private MhlReference reference() throws IOException, ManifestException {
        String path = null;
        Checksum c4 = null;
        while (xml.nextElement()) {
            switch (element()) {
                case "path" -> {
                    String text = xml.text();
                    path = ListedPath.of(text, xml.line(), xml.column());
                }
                case "c4" -> c4 = new MhlDigests(xml).read(ChecksumAlgorithm.C4);
                default -> throw unknown("hashlistreference");
            }
        }
        if (path == null || c4 == null) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, path == null ? "path" : "c4", "hashlistreference");
        }
        budget.spend(path);
        return new MhlReference(path, c4);
    }

    private String element() {
        return xml.namespace().equals(AscMhlReader.NAMESPACE) ? xml.localName() : "";
    }

    private ManifestException unknown(String parent) {
        return xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), parent);
    }
}
