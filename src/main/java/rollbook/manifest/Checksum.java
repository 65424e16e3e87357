package rollbook.manifest;

import java.util.Arrays;
import java.util.Base64;
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
    private static final byte[] DIGITS = new byte[128];

    static {
        for (int c = 0; c < DIGITS.length; c++) {
            DIGITS[c] = (byte) (HexFormat.isHexDigit(c) ? HexFormat.fromHexDigit(c) : -1);
        }
    }

    private final ChecksumAlgorithm algorithm;
    private final byte[] digest;
    private final boolean assumed;

    private Checksum(ChecksumAlgorithm algorithm, byte[] digest, boolean assumed) {
        if (digest.length != algorithm.digestBytes()) {
            throw new IllegalArgumentException(
                    algorithm.label() + " has " + algorithm.digestBytes() + " bytes, this digest has " + digest.length);
        }
        this.algorithm = algorithm;
        this.digest = digest;
        this.assumed = assumed;
    }

    /** A checksum whose algorithm is stated; {@link IllegalArgumentException} when the digest has another length. */
    public static Checksum of(ChecksumAlgorithm algorithm, byte[] digest) {
        return new Checksum(algorithm, digest.clone(), false);
    }

    /** A checksum whose algorithm was concluded; {@link IllegalArgumentException} when the digest has another length. */
    public static Checksum assumed(ChecksumAlgorithm algorithm, byte[] digest) {
        return new Checksum(algorithm, digest.clone(), true);
    }

    /** As the two above, of a digest that nobody changes hereafter. */
    static Checksum ofOwn(ChecksumAlgorithm algorithm, byte[] digest, boolean assumed) {
        return new Checksum(algorithm, digest, assumed);
    }

    /** Reads {@link #text()} back; {@link IllegalArgumentException} when the text is no digest of the algorithm. */
    public static Checksum parse(ChecksumAlgorithm algorithm, String text) {
        byte[] digest = decode(algorithm, text);
        if (digest == null) {
            throw new IllegalArgumentException("Not a digest of " + algorithm.label() + ": " + text);
        }
        return of(algorithm, digest);
    }

    /** The digest bytes of a text, or null when it is none of this algorithm. */
    static byte @Nullable [] decode(ChecksumAlgorithm algorithm, String text) {
        byte[] digest = algorithm == ChecksumAlgorithm.C4 ? C4Text.decode(text) : decode(text);
        return digest != null && digest.length == algorithm.digestBytes() ? digest : null;
    }

    /** The bytes of hexadecimal digits of any case, or of base 64 that is padded as it must be; null for other text. */
    static byte @Nullable [] decode(String text) {
        return text.endsWith("=") ? decodeBase64(text) : decodeHex(text);
    }

    /** The bytes of hexadecimal digits of any case; null for other text. */
    static byte @Nullable [] decodeHex(String text) {
        if (text.length() % 2 != 0) {
            return null;
        }
        byte[] digest = new byte[text.length() / 2];
        int all = 0;
        for (int i = 0; i < digest.length; i++) {
            int value = digit(text.charAt(2 * i)) << 4 | digit(text.charAt(2 * i + 1));
            digest[i] = (byte) value;
            all |= value;
        }
        return all < 0 ? null : digest;
    }

    /** The value of a hexadecimal digit; negative for another letter. */
    private static int digit(char c) {
        return c < DIGITS.length ? DIGITS[c] : -1;
    }

    private static byte @Nullable [] decodeBase64(String text) {
        try {
            byte[] digest = Base64.getDecoder().decode(text);
            boolean canonical = Base64.getEncoder().encodeToString(digest).equals(text);
            return canonical ? digest : null;
        } catch (IllegalArgumentException malformed) {
            return null;
        }
    }

    /** The bytes in the other order. */
    static byte[] reversed(byte[] digest) {
        byte[] reversed = new byte[digest.length];
        for (int i = 0; i < digest.length; i++) {
            reversed[i] = digest[digest.length - 1 - i];
        }
        return reversed;
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

    /** The same bytes in the other order, which some programs print digests of the XXH family in. */
    boolean reversedBytes(Checksum other) {
        int length = digest.length;
        if (length != other.digest.length) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (digest[i] != other.digest[length - 1 - i]) {
                return false;
            }
        }
        return true;
    }

    /** Whether its algorithm is of the XXH family, or not known and perhaps so. */
    boolean mayBeXxh() {
        return algorithm.isXxh()
                || assumed
                        && ChecksumAlgorithm.ofDigestBytes(digest.length).stream()
                                .anyMatch(ChecksumAlgorithm::isXxh);
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
