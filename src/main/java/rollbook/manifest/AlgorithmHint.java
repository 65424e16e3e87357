package rollbook.manifest;

import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/**
 * Concludes the algorithm of the digests that come without one, for each length of digests once. The strongest ground
 * that there is decides: what a person said, then the document's name ({@code card.md5}, {@code md5sums}), then an empty
 * file, whose digest is that of no bytes in one algorithm only, then the length alone. 32 digits may be MD5 or XXH128,
 * 16 may be XXH64 or XXH3-64: with nothing else to go by, MD5 and XXH64 are taken.
 *
 * <p>An empty file helps from its line on; see {@link DocumentHints#shownAlgorithms()}.
 */
final class AlgorithmHint {
    private static final Pattern NAMED =
            Pattern.compile("(?<![a-z0-9])(md5|sha-?1|sha-?256|sha-?512|xxh64|xxh3|xxh128)(?:sums?)?(?![a-z0-9])");

    private final DocumentHints hints;
    private final AlgorithmBasis name;
    private final Set<ChecksumAlgorithm> named = EnumSet.noneOf(ChecksumAlgorithm.class);
    private final Set<ChecksumAlgorithm> shown = EnumSet.noneOf(ChecksumAlgorithm.class);
    private final @Nullable Conclusion[] byLength = new Conclusion[ChecksumAlgorithm.SHA512.digestBytes() + 1];

    /** @param name what the document's name is worth where it names an algorithm */
    AlgorithmHint(DocumentHints hints, AlgorithmBasis name) {
        this.hints = hints;
        this.name = name;
        shown.addAll(hints.shownAlgorithms());
        Matcher matcher = NAMED.matcher(hints.fileName().toLowerCase(Locale.ROOT));
        while (matcher.find()) {
            ChecksumAlgorithm algorithm =
                    ChecksumAlgorithm.ofTag(matcher.group(1).replace("-", ""));
            if (algorithm != null) {
                named.add(algorithm);
            }
        }
    }

    record Conclusion(ChecksumAlgorithm algorithm, AlgorithmBasis basis) {}

    /**
     * The checksum, or null where no supported algorithm has digests of this length. What a person said counts as
     * stated, as does a name where the standard has it state the algorithm; everything else is marked as assumed.
     *
     * @param digest not to be changed hereafter
     * @param sizeBytes the file's size, if the document gives it
     */
    @Nullable
    Checksum conclude(byte[] digest, @Nullable Long sizeBytes) {
        List<ChecksumAlgorithm> candidates = ChecksumAlgorithm.ofDigestBytes(digest.length);
        if (candidates.isEmpty()) {
            return null;
        }
        if (candidates.size() > 1 && (sizeBytes == null || sizeBytes == 0)) {
            lookForEmptyFile(candidates, digest);
        }
        Conclusion conclusion = byLength[digest.length];
        if (conclusion == null) {
            conclusion = conclude(candidates);
            byLength[digest.length] = conclusion;
        }
        boolean assumed = conclusion.basis().compareTo(AlgorithmBasis.SAID) > 0;
        return Checksum.ofOwn(conclusion.algorithm(), digest, assumed);
    }

    /** Each algorithm that was concluded, and on what ground; complete once every digest was asked about. */
    Map<ChecksumAlgorithm, AlgorithmBasis> conclusions() {
        Map<ChecksumAlgorithm, AlgorithmBasis> conclusions = new EnumMap<>(ChecksumAlgorithm.class);
        for (Conclusion conclusion : byLength) {
            if (conclusion != null) {
                conclusions.put(conclusion.algorithm(), conclusion.basis());
            }
        }
        return conclusions;
    }

    private void lookForEmptyFile(List<ChecksumAlgorithm> candidates, byte[] digest) {
        for (ChecksumAlgorithm candidate : candidates) {
            if (Arrays.equals(digest, candidate.emptyDigest()) && shown.add(candidate)) {
                byLength[digest.length] = null;
            }
        }
    }

    private Conclusion conclude(List<ChecksumAlgorithm> candidates) {
        Conclusion said = only(candidates, hints.saidAlgorithms(), AlgorithmBasis.SAID);
        if (said != null) {
            return said;
        }
        Conclusion fromName = only(candidates, named, name);
        if (fromName != null) {
            return fromName;
        }
        Conclusion fromEmptyFile = only(candidates, shown, AlgorithmBasis.EMPTY_FILE);
        return fromEmptyFile == null ? new Conclusion(candidates.get(0), AlgorithmBasis.DIGEST_LENGTH) : fromEmptyFile;
    }

    private static @Nullable Conclusion only(
            List<ChecksumAlgorithm> candidates, Collection<ChecksumAlgorithm> known, AlgorithmBasis basis) {
        List<ChecksumAlgorithm> fitting =
                candidates.stream().filter(known::contains).toList();
        return fitting.size() == 1 ? new Conclusion(fitting.get(0), basis) : null;
    }
}
