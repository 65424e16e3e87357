package rollbook.manifest;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A directory while its hash is recomputed; arrays have a place for each algorithm. */
final class DirectoryNode {
    final @Nullable DirectoryNode parent;
    final String name;
    final int depth;
    final boolean ignored;
    final Map<String, DirectoryNode> children = new HashMap<>(4);
    final DigestBag[] contents;
    final DigestBag[] structures;
    final byte[] @Nullable [] content;
    final byte[] @Nullable [] structure;
    long files;
    long directories; // that take part, once they have been computed
    boolean open; // something below is listed elsewhere

    @Nullable
    DirectoryHash listed;

    DirectoryNode(@Nullable DirectoryNode parent, String name, boolean ignored, ChecksumAlgorithm[] algorithms) {
        this.parent = parent;
        this.name = name;
        this.depth = parent == null ? 0 : parent.depth + 1;
        this.ignored = ignored;
        this.contents = bags(algorithms);
        this.structures = bags(algorithms);
        this.content = new byte[algorithms.length][];
        this.structure = new byte[algorithms.length][];
    }

    String path() {
        return parent == null || parent.parent == null ? name : parent.path() + "/" + name;
    }

    /** Whether the document lists nothing that takes part below. */
    boolean isBare() {
        return files == 0 && directories == 0;
    }

    void clear() {
        children.clear();
        Arrays.fill(contents, null);
        Arrays.fill(structures, null);
    }

    private static DigestBag[] bags(ChecksumAlgorithm[] algorithms) {
        return Stream.of(algorithms)
                .map(algorithm -> new DigestBag(algorithm.digestBytes()))
                .toArray(DigestBag[]::new);
    }
}
