package rollbook.manifest;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/**
 * Concludes the algorithm of a digest that comes without one: first from the document's name ({@code card.md5},
 * {@code md5sums}), then from the digest's length. 32 digits may be MD5 or XXH128, 16 may be XXH64 or XXH3-64: MD5 and
 * XXH64 are taken, and every conclusion is marked as assumed.
 */
final class AlgorithmHint {
    private static final Pattern NAMED =
            Pattern.compile("(?<![a-z0-9])(md5|sha-?1|sha-?256|sha-?512|xxh64|xxh3|xxh128)(?:sums?)?(?![a-z0-9])");

    private final Set<ChecksumAlgorithm> named = EnumSet.noneOf(ChecksumAlgorithm.class);

    AlgorithmHint(String fileName) {
        Matcher matcher = NAMED.matcher(fileName.toLowerCase(Locale.ROOT));
        while (matcher.find()) {
            ChecksumAlgorithm algorithm =
                    ChecksumAlgorithm.ofTag(matcher.group(1).replace("-", ""));
            if (algorithm != null) {
                named.add(algorithm);
            }
        }
    }

    record Conclusion(ChecksumAlgorithm algorithm, AlgorithmBasis basis) {}

    /** Null where no supported algorithm has digests of this length. */
    @Nullable
    Conclusion conclude(int hexDigits) {
        ChecksumAlgorithm fromName = null;
        int matches = 0;
        for (ChecksumAlgorithm algorithm : named) {
            if (algorithm.digestBytes() * 2 == hexDigits) {
                fromName = algorithm;
                matches++;
            }
        }
        if (fromName != null && matches == 1) {
            return new Conclusion(fromName, AlgorithmBasis.FILE_NAME);
        }
        ChecksumAlgorithm usual = switch (hexDigits) {
            case 16 -> ChecksumAlgorithm.XXH64;
            case 32 -> ChecksumAlgorithm.MD5;
            case 40 -> ChecksumAlgorithm.SHA1;
            case 64 -> ChecksumAlgorithm.SHA256;
            case 128 -> ChecksumAlgorithm.SHA512;
            default -> null;
        };
        return usual == null ? null : new Conclusion(usual, AlgorithmBasis.DIGEST_LENGTH);
    }
}
