package rollbook.manifest;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.DirectoryFinding.State;

/**
 * Recomputes the directory hashes of an ASC MHL hash list from the digests of its files (ASC MHL 1.0, 6.5.2 and
 * appendix G) and compares them with the listed ones.
 *
 * <p>Content of a directory: the digests of its files and the content digests of its directories, sorted, one behind
 * the other, hashed. Structure: the same over digests of name and digest. What the list's patterns leave out and
 * histories themselves ({@code ascmhl}) take no part. C4 takes part with its 64 bytes, names in Unicode form NFC: the
 * standard leaves both open.
 *
 * <p>Needs what a first reading tells of the document, then takes a second one. Keeps two digests a file and algorithm
 * while that runs, and no names of files; past 128 MiB of digests (four million files by MD5) it gives up.
 */
public final class DirectoryHashes implements EntrySink {
    // A hostile list could name a directory with every second character, and patterns that take for ever.
    private static final int MOST_DIRECTORIES = 200_000;
    private static final int MOST_DEPTH = 256;
    private static final int MOST_PATTERN_CHARACTERS = 20_000;
    private static final long MOST_DIGEST_BYTES = 128L << 20;

    private final ChecksumAlgorithm[] algorithms;
    private final Digester[] digesters;
    private final IgnorePatterns patterns;
    private final List<MhlReference> references;
    private final List<DirectoryNode> nodes = new ArrayList<>(); // parents before children
    private final List<DirectoryHash> listed = new ArrayList<>();
    private final DirectoryNode root;
    private String latestPath = "";
    private DirectoryNode latest;
    private long digestBytes;
    private boolean tooMuch;

    /** @param details of the same document, from its first reading */
    public DirectoryHashes(MhlDetails details) {
        this(details.scope(), details.directoryAlgorithms().toArray(ChecksumAlgorithm[]::new));
    }

    /** For a document that is to be written. */
    public DirectoryHashes(MhlScope scope, ChecksumAlgorithm... algorithms) {
        this.algorithms = algorithms;
        this.digesters = Stream.of(algorithms).map(ChecksumAlgorithm::digester).toArray(Digester[]::new);
        this.patterns = new IgnorePatterns(scope.ignored());
        this.references = scope.references();
        this.tooMuch = scope.ignored().stream().mapToInt(String::length).sum() > MOST_PATTERN_CHARACTERS;
        this.root = new DirectoryNode(null, "", false, algorithms);
        this.latest = root;
        nodes.add(root);
    }

    @Override
    public void accept(ManifestEntry entry) {
        String path = entry.path();
        DirectoryNode directory = node(IgnorePatterns.directoryOf(path));
        if (tooMuch || directory.ignored || patterns.matches(path, false)) {
            return;
        }
        directory.files++;
        byte[] name = nameBytes(path);
        for (Checksum checksum : entry.checksums()) {
            int i = indexOf(checksum.algorithm());
            if (i >= 0) {
                byte[] digest = checksum.digest();
                directory.contents[i].add(digest);
                directory.structures[i].add(named(i, name, digest));
                digestBytes += 2L * digest.length;
            }
        }
        if (digestBytes > MOST_DIGEST_BYTES) {
            tooMuch = true;
            nodes.clear();
            root.clear();
        }
    }

    @Override
    public void directory(DirectoryHash directory) {
        listed.add(directory);
        if (!tooMuch) {
            node(directory.path()).listed = directory;
        }
    }

    /** A finding for each listed directory and algorithm, in the document's order; to be asked once. */
    public List<DirectoryFinding> compare() {
        compute();
        List<DirectoryFinding> findings = new ArrayList<>();
        for (DirectoryHash directory : listed) {
            for (int i = 0; i < algorithms.length; i++) {
                Checksum content = digest(directory.content(), i);
                Checksum structure = digest(directory.structure(), i);
                if (content != null || structure != null) {
                    State state = tooMuch ? State.NOT_COMPUTABLE : state(node(directory.path()), i, content, structure);
                    findings.add(new DirectoryFinding(directory.path(), algorithms[i], state, directory.line()));
                }
            }
        }
        return findings;
    }

    /**
     * The hashes of all directories in which something is listed, the covered folder's first; to be asked once. Empty
     * where there are absurdly many.
     */
    public List<DirectoryHash> computed() {
        if (tooMuch) {
            return List.of();
        }
        compute();
        List<DirectoryHash> hashes = new ArrayList<>();
        for (DirectoryNode node : nodes) {
            List<Checksum> content = new ArrayList<>();
            List<Checksum> structure = new ArrayList<>();
            for (int i = 0; i < algorithms.length; i++) {
                byte[] digest = node.content[i];
                if (digest != null) {
                    content.add(Checksum.of(algorithms[i], digest));
                    structure.add(Checksum.of(algorithms[i], Objects.requireNonNull(node.structure[i])));
                }
            }
            if (!content.isEmpty()) {
                hashes.add(new DirectoryHash(node.path(), content, structure, null, 1));
            }
        }
        return hashes;
    }

    private State state(DirectoryNode node, int i, @Nullable Checksum content, @Nullable Checksum structure) {
        byte[] computedContent = node.content[i];
        byte[] computedStructure = node.structure[i];
        if (node.ignored || node.isBare() && !equalsNothing(i, content, structure)) {
            return State.GIVEN;
        }
        if (computedContent == null || computedStructure == null) {
            return State.NOT_COMPUTABLE;
        }
        if (content != null && !Arrays.equals(content.digest(), computedContent)) {
            return State.CONTENT_DIFFERS;
        }
        return structure == null || Arrays.equals(structure.digest(), computedStructure)
                ? State.EQUAL
                : State.STRUCTURE_DIFFERS;
    }

    private boolean equalsNothing(int i, @Nullable Checksum content, @Nullable Checksum structure) {
        byte[] nothing = algorithms[i].emptyDigest();
        return content != null
                && structure != null
                && Arrays.equals(content.digest(), nothing)
                && Arrays.equals(structure.digest(), nothing);
    }

    /** From the innermost directories outwards. */
    private void compute() {
        if (tooMuch) {
            return;
        }
        references.forEach(this::leaveOpen);
        for (int n = nodes.size() - 1; n >= 0; n--) {
            DirectoryNode node = nodes.get(n);
            if (node.ignored || node.isBare() && node.listed == null && !node.open) {
                continue;
            }
            if (node.parent != null) {
                node.parent.directories++;
            }
            for (int i = 0; i < algorithms.length; i++) {
                compute(node, i);
            }
        }
    }

    private void compute(DirectoryNode node, int i) {
        if (node.isBare()) {
            DirectoryHash given = node.listed;
            Checksum content = given == null ? null : digest(given.content(), i);
            Checksum structure = given == null ? null : digest(given.structure(), i);
            node.content[i] = content == null ? null : content.digest();
            node.structure[i] = structure == null ? null : structure.digest();
        } else if (!node.open && node.contents[i].size() == node.files + node.directories) {
            node.content[i] = node.contents[i].combined(digesters[i]);
            node.structure[i] = node.structures[i].combined(digesters[i]);
        }
        byte[] content = node.content[i];
        byte[] structure = node.structure[i];
        if (node.parent != null && content != null && structure != null) {
            node.parent.contents[i].add(content);
            node.parent.structures[i].add(named(i, node.name.getBytes(StandardCharsets.UTF_8), structure));
        }
    }

    /** The files of an inner history are listed elsewhere; without a hash of its folder nothing above it is known. */
    private void leaveOpen(MhlReference reference) {
        DirectoryNode node = root;
        String inner = IgnorePatterns.directoryOf(IgnorePatterns.directoryOf(reference.path()));
        for (String name : inner.split("/")) {
            DirectoryNode child = node.children.get(name);
            if (child == null) {
                node.open = true;
                return;
            }
            node = child;
        }
    }

    private DirectoryNode node(String path) {
        if (path.equals(latestPath)) {
            return latest;
        }
        DirectoryNode node = root;
        for (int from = 0; from < path.length() && !tooMuch; ) {
            int slash = path.indexOf('/', from);
            int end = slash < 0 ? path.length() : slash;
            node = child(node, path, from, end);
            from = end + 1;
        }
        latestPath = path;
        latest = node;
        return node;
    }

    private DirectoryNode child(DirectoryNode parent, String path, int from, int end) {
        String name = path.substring(from, end);
        DirectoryNode child = parent.children.get(name);
        if (child == null) {
            boolean ignored = parent.ignored
                    || name.equals(MhlHistories.FOLDER)
                    || patterns.matches(path.substring(0, end), true);
            child = new DirectoryNode(parent, name, ignored, algorithms);
            parent.children.put(name, child);
            nodes.add(child);
            tooMuch |= nodes.size() > MOST_DIRECTORIES || child.depth > MOST_DEPTH;
        }
        return child;
    }

    private byte[] named(int i, byte[] name, byte[] digest) {
        return digesters[i].update(name).update(digest).digest();
    }

    private static byte[] nameBytes(String path) {
        return path.substring(path.lastIndexOf('/') + 1).getBytes(StandardCharsets.UTF_8);
    }

    private int indexOf(ChecksumAlgorithm algorithm) {
        for (int i = 0; i < algorithms.length; i++) {
            if (algorithms[i] == algorithm) {
                return i;
            }
        }
        return -1;
    }

    private @Nullable Checksum digest(List<Checksum> checksums, int i) {
        for (Checksum checksum : checksums) {
            if (checksum.algorithm() == algorithms[i]) {
                return checksum;
            }
        }
        return null;
    }
}
