package rollbook.manifest;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;

/** Reads the {@code hashes} element of an ASC MHL hash list, and the root hash. */
final class MhlHashReader {
    private final XmlCursor xml;
    private final MhlDigests digests;
    private final ManifestRemarks remarks;
    private final Set<ChecksumAlgorithm> algorithms = EnumSet.noneOf(ChecksumAlgorithm.class);
    private final Set<ChecksumAlgorithm> directoryAlgorithms = EnumSet.noneOf(ChecksumAlgorithm.class);
    private long entries;
    private @Nullable Instant hashedFrom;
    private @Nullable Instant hashedTo;

    MhlHashReader(XmlCursor xml, ManifestRemarks remarks) {
        this.xml = xml;
        this.digests = new MhlDigests(xml);
        this.remarks = remarks;
    }

    Set<ChecksumAlgorithm> algorithms() {
        return algorithms;
    }

    Set<ChecksumAlgorithm> directoryAlgorithms() {
        return directoryAlgorithms;
    }

    long entries() {
        return entries;
    }

    @Nullable
    Instant hashedFrom() {
        return hashedFrom;
    }

    @Nullable
    Instant hashedTo() {
        return hashedTo;
    }

    void read(EntrySink sink, IgnoredRecords ignored) throws IOException, ManifestException {
        while (xml.nextElement()) {
            switch (element()) {
                case "hash" -> {
                    ManifestEntry entry = entry();
                    ignored.look(entry);
                    sink.accept(entry);
                    entries++;
                }
                case "directoryhash" -> sink.directory(directory("directoryhash"));
                default -> throw unknown("hashes");
            }
        }
    }

    private ManifestEntry entry() throws IOException, ManifestException {
        long line = xml.line();
        String path = null;
        String previousPath = null;
        Long size = null;
        Instant modified = null;
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
                    modified = date(xml.attribute("lastmodificationdate"), line);
                    path = path();
                }
                case "previousPath" -> previousPath = path();
                case "metadata" -> xml.skip();
                default -> {
                    hashed = true;
                    action = weightier(action, readDigest(checksums, line));
                }
            }
        }
        if (path == null) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "path", "hash");
        }
        if (!hashed) {
            throw xml.problem(ManifestProblem.MHL_NO_DIGEST, path);
        }
        return new ManifestEntry(path, size, checksums, action, line, previousPath, modified);
    }

    private Action readDigest(List<Checksum> checksums, long line) throws IOException, ManifestException {
        ChecksumAlgorithm algorithm = digests.algorithm("hash");
        Action action = action(xml.attribute("action"));
        Instant hashed = date(xml.attribute("hashdate"), line);
        if (hashed != null) {
            hashedFrom = hashedFrom == null || hashed.isBefore(hashedFrom) ? hashed : hashedFrom;
            hashedTo = hashedTo == null || hashed.isAfter(hashedTo) ? hashed : hashedTo;
        }
        if (algorithm == null) { // one published schema lets XXH32 through; too short to prove anything
            remarks.add(ManifestRemark.Kind.TOO_SHORT, line, xml.localName());
            xml.skip();
            return action;
        }
        if (action == Action.NONE) {
            remarks.add(ManifestRemark.Kind.ACTION_MISSING, line, algorithm.label());
        }
        digests.add(checksums, digests.read(algorithm));
        algorithms.add(algorithm);
        return action;
    }

    /** The current element's hash of a directory: {@code directoryhash}, or {@code roothash}, which has no path. */
    DirectoryHash directory(String parent) throws IOException, ManifestException {
        long line = xml.line();
        boolean root = parent.equals("roothash");
        String path = null;
        String previousPath = null;
        List<Checksum> content = null;
        List<Checksum> structure = null;
        while (xml.nextElement()) {
            String element = element();
            if (root && !element.equals("content") && !element.equals("structure")) {
                throw unknown(parent);
            }
            switch (element) {
                case "path" -> path = path();
                case "previousPath" -> previousPath = path();
                case "metadata" -> xml.skip();
                case "content" -> content = digests.readAll();
                case "structure" -> structure = digests.readAll();
                default -> throw unknown(parent);
            }
        }
        if (!root && path == null) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, "path", parent);
        }
        if (content == null || structure == null) {
            throw xml.problem(ManifestProblem.MHL_MISSING_ELEMENT, content == null ? "content" : "structure", parent);
        }
        DirectoryHash directory = new DirectoryHash(path == null ? "" : path, content, structure, previousPath, line);
        if (!algorithmsOf(content).equals(algorithmsOf(structure))) {
            remarks.add(ManifestRemark.Kind.DIRECTORY_SETS_DIFFER, line, directory.path());
        }
        directoryAlgorithms.addAll(algorithmsOf(content));
        directoryAlgorithms.addAll(algorithmsOf(structure));
        return directory;
    }

    private static Set<ChecksumAlgorithm> algorithmsOf(List<Checksum> checksums) {
        Set<ChecksumAlgorithm> algorithms = EnumSet.noneOf(ChecksumAlgorithm.class);
        checksums.forEach(checksum -> algorithms.add(checksum.algorithm()));
        return algorithms;
    }

    private String path() throws IOException, ManifestException {
        String text = xml.text();
        return ListedPath.of(text, xml.line(), xml.column());
    }

    /** Dates of files and digests prove nothing, so a bad one is left out and remarked. */
    private @Nullable Instant date(@Nullable String text, long line) {
        if (text == null) {
            return null;
        }
        try {
            return XmlDate.instant(text);
        } catch (DateTimeException e) {
            remarks.add(ManifestRemark.Kind.DATE_UNREADABLE, line, text);
            return null;
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
