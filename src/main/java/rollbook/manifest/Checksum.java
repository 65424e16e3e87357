package rollbook.manifest;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One digest of one file. Digests are compared as bytes, so the letter case of a document does not matter.
 *
 * <p>{@code assumed} says that the document did not state the algorithm: it was concluded from the document's name or
 * the digest's length. Two checksums are equal when algorithm and bytes are, assumed or not.
 */
public final class Checksum {
    private static final HexFormat HEX = HexFormat.of();

    private final ChecksumAlgorithm algorithm;
    private final byte[] digest;
    private final boolean assumed;

    private Checksum(ChecksumAlgorithm algorithm, byte[] digest, boolean assumed) {
        if (digest.length != algorithm.digestBytes()) {
            throw new IllegalArgumentException(
                    algorithm.label() + " has " + algorithm.digestBytes() + " bytes, this digest has " + digest.length);
        }
        this.algorithm = algorithm;
        this.digest = digest.clone();
        this.assumed = assumed;
    }

    /** A checksum whose algorithm is stated; {@link IllegalArgumentException} when the digest has another length. */
    public static Checksum of(ChecksumAlgorithm algorithm, byte[] digest) {
        return new Checksum(algorithm, digest, false);
    }

    /** A checksum whose algorithm was concluded; {@link IllegalArgumentException} when the digest has another length. */
    public static Checksum assumed(ChecksumAlgorithm algorithm, byte[] digest) {
        return new Checksum(algorithm, digest, true);
    }

    /** Reads {@link #text()} back; {@link IllegalArgumentException} when the text is no digest of the algorithm. */
    public static Checksum parse(ChecksumAlgorithm algorithm, String text) {
        byte[] digest = decode(algorithm, text);
        if (digest == null) {
            throw new IllegalArgumentException("Not a digest of " + algorithm.label() + ": " + text);
        }
        return of(algorithm, digest);
    }

    /** The digest bytes of a text, or null when it is none of this algorithm. Hexadecimal digits may have any case. */
    static byte @Nullable [] decode(ChecksumAlgorithm algorithm, String text) {
        if (algorithm == ChecksumAlgorithm.C4) {
            return C4Text.decode(text);
        }
        if (text.length() != algorithm.digestBytes() * 2) {
            return null;
        }
        return text.chars().allMatch(HexFormat::isHexDigit) ? HEX.parseHex(text) : null;
    }

    public ChecksumAlgorithm algorithm() {
        return algorithm;
    }

    public byte[] digest() {
        return digest.clone();
    }

    public boolean assumed() {
        return assumed;
    }

    /** Lower-case hexadecimal digits; a C4 ID in its own form. */
    public String text() {
        return algorithm == ChecksumAlgorithm.C4 ? C4Text.encode(digest) : HEX.formatHex(digest);
    }

    void copyDigest(byte[] to, int at) {
        System.arraycopy(digest, 0, to, at, digest.length);
    }

    /** Equal for equal digests. */
    long key() {
        return PathIndex.hash(digest, 0, digest.length);
    }

    boolean sameBytes(Checksum other) {
        return Arrays.equals(digest, other.digest);
    }

    boolean ofNoBytes() {
        return assumed ? ChecksumAlgorithm.anyHasEmptyDigest(digest) : algorithm.hasEmptyDigest(digest);
    }

    /** All digests with their algorithms, as a person reads them. */
    static String text(List<Checksum> checksums) {
        StringBuilder text = new StringBuilder();
        for (Checksum checksum : checksums) {
            text.append(text.isEmpty() ? "" : ", ").append(checksum);
        }
        return text.toString();
    }

    @Override
    public boolean equals(@Nullable Object object) {
        return object instanceof Checksum other && algorithm == other.algorithm && sameBytes(other);
    }

    @Override
    public int hashCode() {
        return 31 * algorithm.hashCode() + Arrays.hashCode(digest);
    }

    @Override
    public String toString() {
        return algorithm.label() + " " + text();
    }
}
