package rollbook.manifest;

import java.util.Set;

/**
 * What is known of a document beside its content. It helps only where the content doesn't say itself which algorithm a
 * digest is of.
 *
 * @param fileName the document's own name without folders; it may hint at the algorithm or the covered folder
 * @param saidAlgorithms what a person said that its digests are, one for each length of digests
 * @param shownAlgorithms what its empty files showed when it was read before: on the first reading, entries before the
 *     first empty file have to do without
 * @param plainPercents whether it is a manifest of a bag before version 1.0, in whose paths nothing is coded
 */
public record DocumentHints(
        String fileName,
        Set<ChecksumAlgorithm> saidAlgorithms,
        Set<ChecksumAlgorithm> shownAlgorithms,
        boolean plainPercents) {
    public DocumentHints {
        saidAlgorithms = Set.copyOf(saidAlgorithms);
        shownAlgorithms = Set.copyOf(shownAlgorithms);
    }

    /** Nothing is known but the name. */
    public static DocumentHints named(String fileName) {
        return new DocumentHints(fileName, Set.of(), Set.of(), false);
    }
}
