package rollbook.manifest;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;

/** Reads the {@code hashes} element of an ASC MHL hash list; directory hashes are passed over. */
final class MhlHashReader {
    private final XmlCursor xml;
    private final Set<ChecksumAlgorithm> algorithms = EnumSet.noneOf(ChecksumAlgorithm.class);
    private long entries;

    MhlHashReader(XmlCursor xml) {
        this.xml = xml;
    }

    Set<ChecksumAlgorithm> algorithms() {
        return algorithms;
    }

    long entries() {
        return entries;
    }

    void read(EntrySink sink) throws IOException, ManifestException {
        while (xml.nextElement()) {
            switch (element()) {
                case "hash" -> {
                    sink.accept(entry());
                    entries++;
                }
                case "directoryhash" -> xml.skip();
                default -> throw unknown("hashes");
            }
        }
    }

    private ManifestEntry entry() throws IOException, ManifestException {
        long line = xml.line();
        String path = null;
        Long size = null;
        Action action = Action.NONE;
        boolean hashed = false;
        List<Checksum> checksums = new ArrayList<>(1);
        while (xml.nextElement()) {
            switch (element()) {
                case "path" -> {
                    if (path != null) {
                        throw unknown("hash");
                    }
                    size = size(xml.attribute("size"));
                    path = ListedPath.of(xml.text(), xml.line(), xml.column());
                }
                case "previousPath", "metadata" -> xml.skip();
                default -> {
                    hashed = true;
                    action = weightier(action, action(xml.attribute("action")));
                    addChecksum(checksums);
                }
            }
        }
        if (path == null) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "path", "hash");
        }
        if (!hashed) {
            throw xml.problem(ManifestProblem.MHL_NO_DIGEST, path);
        }
        return new ManifestEntry(path, size, checksums, action, line);
    }

    private void addChecksum(List<Checksum> checksums) throws IOException, ManifestException {
        String element = element();
        ChecksumAlgorithm algorithm = ChecksumAlgorithm.ofMhlElement(element);
        if (algorithm == null && !element.equals("xxh32")) {
            throw unknown("hash");
        }
        String text = xml.text().strip();
        if (algorithm != null) { // one published schema lets xxh32 through; too short to prove anything
            byte[] digest = Checksum.decode(algorithm, text);
            if (digest == null) {
                throw xml.problem(ManifestProblem.DIGEST_MALFORMED, algorithm.label(), text);
            }
            checksums.add(Checksum.of(algorithm, digest));
            algorithms.add(algorithm);
        }
    }

    private @Nullable Long size(@Nullable String text) throws ManifestException {
        if (text == null) {
            return null;
        }
        try {
            long size = Long.parseLong(text.strip());
            if (size >= 0) {
                return size;
            }
        } catch (NumberFormatException notWhole) {
            // refused below, as a negative size is
        }
        throw xml.problem(ManifestProblem.MHL_VALUE, "size", text);
    }

    private Action action(@Nullable String text) throws ManifestException {
        if (text == null) {
            return Action.NONE;
        }
        return switch (text) {
            case "original" -> Action.ORIGINAL;
            case "verified" -> Action.VERIFIED;
            case "failed" -> Action.FAILED;
            default -> throw xml.problem(ManifestProblem.MHL_VALUE, "action", text);
        };
    }

    /** Each digest has its own action; a single failed one speaks for the file, then a verified one. */
    private static Action weightier(Action one, Action other) {
        return one.compareTo(other) >= 0 ? one : other;
    }

    private String element() {
        return xml.namespace().equals(AscMhlReader.NAMESPACE) ? xml.localName() : "";
    }

    private ManifestException unknown(String parent) {
        return xml.problem(ManifestProblem.MHL_UNKNOWN_ELEMENT, xml.localName(), parent);
    }
}
