package rollbook.manifest;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A checksum algorithm that a manifest may use.
 *
 * <p>MD5, SHA-1 and the XXH family detect accidents, not intent. XXH digests are in their canonical form: seed 0, most
 * significant byte first. A C4 ID is the SHA-512 digest written in base 58 (SMPTE ST 2114).
 */
public enum ChecksumAlgorithm {
    MD5("MD5", "MD5", "md5", "d41d8cd98f00b204e9800998ecf8427e"),
    SHA1("SHA-1", "SHA1", "sha1", "da39a3ee5e6b4b0d3255bfef95601890afd80709"),
    SHA256("SHA-256", "SHA256", null, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
    SHA512("SHA-512", "SHA512", null, Empty.SHA512),
    XXH64("XXH64", "XXH64", "xxh64", "ef46db3751d8e999"),
    XXH3_64("XXH3-64", "XXH3", "xxh3", "2d06800538d394c2"),
    XXH128("XXH128", "XXH128", "xxh128", "99aa06d3014798d86001c324468d497f"),
    C4("C4", null, "c4", Empty.SHA512);

    private static final ChecksumAlgorithm[] ALL = values();
    /** By the length of their digests; asked about once for each line of a list. */
    private static final List<List<ChecksumAlgorithm>> BY_DIGEST_BYTES = IntStream.rangeClosed(0, SHA512.digestBytes())
            .mapToObj(bytes -> Arrays.stream(ALL)
                    .filter(algorithm -> algorithm != C4 && algorithm.digestBytes() == bytes)
                    .toList())
            .toList();

    private final String label;
    private final @Nullable String tag;
    private final @Nullable String mhlElement;
    private final byte[] emptyDigest;

    ChecksumAlgorithm(String label, @Nullable String tag, @Nullable String mhlElement, String emptyDigest) {
        this.label = label;
        this.tag = tag;
        this.mhlElement = mhlElement;
        this.emptyDigest = HexFormat.of().parseHex(emptyDigest);
    }

    /** The algorithm's usual spelling, the same in every language. */
    public String label() {
        return label;
    }

    /** Length of a digest in bytes. */
    public int digestBytes() {
        return emptyDigest.length;
    }

    /** The tag of a BSD style list line, or null where no tool prints one. */
    public @Nullable String tag() {
        return tag;
    }

    /** The element name in an ASC MHL 2 hash list, or null where the standard has none. */
    public @Nullable String mhlElement() {
        return mhlElement;
    }

    /** Whether it is the digest of no bytes at all: it gives an empty file away in a list without sizes. */
    boolean hasEmptyDigest(byte[] digest) {
        return Arrays.equals(digest, emptyDigest);
    }

    static boolean anyHasEmptyDigest(byte[] digest) {
        for (ChecksumAlgorithm algorithm : ALL) {
            if (algorithm.hasEmptyDigest(digest)) {
                return true;
            }
        }
        return false;
    }

    /** Computes digests of this algorithm. */
    public Digester digester() {
        return Digester.of(this);
    }

    /** The digest of these bytes. */
    public Checksum checksumOf(byte[] bytes) {
        return Checksum.of(this, digester().update(bytes).digest());
    }

    /** The digest of no bytes at all, not to be changed: it gives an empty file away in a list without sizes. */
    byte[] emptyDigest() {
        return emptyDigest;
    }

    /** Those that digests of this many hexadecimal digits may be of, the usual one first. A C4 ID is no such digest. */
    public static List<ChecksumAlgorithm> ofHexDigits(int digits) {
        return digits % 2 == 0 ? ofDigestBytes(digits / 2) : List.of();
    }

    static List<ChecksumAlgorithm> ofDigestBytes(int bytes) {
        return bytes < BY_DIGEST_BYTES.size() ? BY_DIGEST_BYTES.get(bytes) : List.of();
    }

    /** Whether its digests may be printed with the least significant byte first. */
    boolean isXxh() {
        return this == XXH64 || this == XXH3_64 || this == XXH128;
    }

    /** The algorithm of a list line's tag in any case, or null. OpenSSL 3 writes {@code SHA2-256} for SHA-256. */
    static @Nullable ChecksumAlgorithm ofTag(String tag) {
        String wanted = tag.toUpperCase(Locale.ROOT).replace("SHA2-", "SHA");
        for (ChecksumAlgorithm algorithm : values()) {
            if (wanted.equals(algorithm.tag)) {
                return algorithm;
            }
        }
        return null;
    }

    /** The algorithm of an ASC MHL element name, which is case-sensitive, or null. */
    static @Nullable ChecksumAlgorithm ofMhlElement(String element) {
        for (ChecksumAlgorithm algorithm : values()) {
            if (element.equals(algorithm.mhlElement)) {
                return algorithm;
            }
        }
        return null;
    }

    private static final class Empty {
        static final String SHA512 = "cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce"
                + "47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e";
    }
}
