package rollbook.manifest;

import java.time.Instant;
import java.util.Set;
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
        FILE_NAME,
        DIGEST_LENGTH;

        AlgorithmBasis weaker(AlgorithmBasis other) {
            return compareTo(other) < 0 ? other : this;
        }
    }

    /** The covered folder that the name of an ASC MHL document gives (ASC MHL 1.0, 6.3), or null if it gives none. */
    public static @Nullable String rootFolderIn(String fileName) {
        MhlName name = MhlName.of(fileName);
        return name == null ? null : name.folder();
    }

    public ManifestHeader {
        algorithms = Set.copyOf(algorithms);
    }

    /** Of a document that isn't ASC MHL. */
    public ManifestHeader(
            ManifestFormat format,
            Set<ChecksumAlgorithm> algorithms,
            AlgorithmBasis basis,
            long entries,
            int references,
            @Nullable Instant created,
            @Nullable String host,
            Process process,
            @Nullable String comment,
            @Nullable String rootFolder) {
        this(format, algorithms, basis, entries, references, created, host, process, comment, rootFolder, null);
    }
}
