package rollbook.manifest;

import java.time.Instant;
import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a manifest says of itself, complete once it has been read to its end.
 *
 * @param algorithms those that were met
 * @param basis the weakest ground on which an algorithm was concluded
 * @param entries files listed, repeated ones counted again
 * @param references further hash lists that an ASC MHL document refers to; their files are not in this one
 * @param created null for checksum lists, and for a date without a zone
 * @param rootFolder the covered folder, from the name of an ASC MHL document
 * @param concluded of the algorithms those that the document doesn't state, each with the ground on which it was
 *     concluded
 * @param mhl what only an ASC MHL document says; null for others
 */
public record ManifestHeader(
        ManifestFormat format,
        Set<ChecksumAlgorithm> algorithms,
        AlgorithmBasis basis,
        long entries,
        int references,
        @Nullable Instant created,
        @Nullable String host,
        Process process,
        @Nullable String comment,
        @Nullable String rootFolder,
        Map<ChecksumAlgorithm, AlgorithmBasis> concluded,
        @Nullable MhlDetails mhl) {

    /** How an ASC MHL document came about (ASC MHL 1.0, 6.4.6). */
    public enum Process {
        /** Not said; checksum lists never say. */
        NONE,
        /** Written while copying; the digests are the source's. */
        TRANSFER,
        /** Computed afterwards from the files where they lie. */
        IN_PLACE,
        /** Put together from other manifests; nothing was computed. */
        FLATTEN
    }

    /** On what ground the algorithm of a digest is known, strongest first. */
    public enum AlgorithmBasis {
        STATED,
        /** A person said it of the document. */
        SAID,
        FILE_NAME,
        /** The digest of an empty file is that of no bytes in one of the algorithms in question. */
        EMPTY_FILE,
        DIGEST_LENGTH;

        /** The weakest of some grounds; with none at all, everything is stated. */
        static AlgorithmBasis weakest(Collection<AlgorithmBasis> grounds) {
            return grounds.isEmpty() ? STATED : Collections.max(grounds);
        }
    }

    /** The covered folder that the name of an ASC MHL document gives (ASC MHL 1.0, 6.3), or null if it gives none. */
    public static @Nullable String rootFolderIn(String fileName) {
        MhlName name = MhlName.of(fileName);
        return name == null ? null : name.folder();
    }

    public ManifestHeader {
        algorithms = Set.copyOf(algorithms);
        concluded = Map.copyOf(concluded);
    }

    /** The algorithms on this ground. */
    public Set<ChecksumAlgorithm> concludedFrom(AlgorithmBasis ground) {
        return concluded.entrySet().stream()
                .filter(conclusion -> conclusion.getValue() == ground)
                .map(Map.Entry::getKey)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** The lengths, in hexadecimal digits, of digests of which nobody can tell without help which algorithm made them. */
    public Set<Integer> ambiguousDigits() {
        return concludedFrom(AlgorithmBasis.DIGEST_LENGTH).stream()
                .map(algorithm -> algorithm.digestBytes() * 2)
                .filter(digits -> ChecksumAlgorithm.ofHexDigits(digits).size() > 1)
                .collect(Collectors.toUnmodifiableSet());
    }
}
