package rollbook.manifest;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/** Turns the digests of one list or table into checksums, and keeps which algorithms were met and on what ground. */
final class ListedDigests {
    private static final String XXH3_PREFIX = "XXH3_";

    private final AlgorithmHint hint;
    private final Set<ChecksumAlgorithm> stated = EnumSet.noneOf(ChecksumAlgorithm.class);

    ListedDigests(DocumentHints hints) {
        this(hints, AlgorithmBasis.FILE_NAME);
    }

    /** @param name what the document's name is worth where it names an algorithm */
    ListedDigests(DocumentHints hints, AlgorithmBasis name) {
        this.hint = new AlgorithmHint(hints, name);
    }

    /** An algorithm as a document names it, and whether its digests are printed least significant byte first. */
    record Tag(ChecksumAlgorithm algorithm, boolean littleEndian) {
        private static final String LITTLE_ENDIAN = "_LE";

        /** Null where no supported algorithm is called so. */
        static @Nullable Tag of(String text) {
            String upper = text.toUpperCase(Locale.ROOT);
            boolean littleEndian = upper.startsWith("XXH") && upper.endsWith(LITTLE_ENDIAN);
            ChecksumAlgorithm algorithm = ChecksumAlgorithm.ofTag(
                    littleEndian ? upper.substring(0, upper.length() - LITTLE_ENDIAN.length()) : upper);
            return algorithm == null ? null : new Tag(algorithm, littleEndian);
        }
    }

    /** A digest whose algorithm is named beside it; null where the text is none of it. */
    @Nullable
    Checksum tagged(Tag tag, String text) {
        byte[] digest = Checksum.decode(tag.algorithm(), text);
        if (digest == null) {
            return null;
        }
        stated.add(tag.algorithm());
        return Checksum.of(tag.algorithm(), tag.littleEndian() ? Checksum.reversed(digest) : digest);
    }

    /** A digest that stands alone, of which the text may still tell the algorithm; null where it is none. */
    @Nullable
    Checksum untagged(String text, @Nullable Long sizeBytes) {
        if (text.startsWith(XXH3_PREFIX)) {
            return tagged(new Tag(ChecksumAlgorithm.XXH3_64, false), text.substring(XXH3_PREFIX.length()));
        }
        if (C4Text.looksLikeC4(text)) {
            return tagged(new Tag(ChecksumAlgorithm.C4, false), text);
        }
        byte[] digest = Checksum.decode(text);
        return digest == null ? null : untagged(digest, sizeBytes);
    }

    /** Null where no supported algorithm has digests of this length. */
    @Nullable
    Checksum untagged(byte[] digest, @Nullable Long sizeBytes) {
        return hint.conclude(digest, sizeBytes);
    }

    /** The header of a document that says nothing of itself beyond its files. */
    ManifestHeader header(ManifestFormat format, long entries) {
        Map<ChecksumAlgorithm, AlgorithmBasis> conclusions = hint.conclusions();
        Set<ChecksumAlgorithm> algorithms = EnumSet.copyOf(stated);
        algorithms.addAll(conclusions.keySet());
        conclusions.values().removeIf(AlgorithmBasis.STATED::equals);
        return new ManifestHeader(
                format,
                algorithms,
                AlgorithmBasis.weakest(conclusions.values()),
                entries,
                0,
                null,
                null,
                ManifestHeader.Process.NONE,
                null,
                null,
                conclusions,
                null);
    }
}
