package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published digests, computed where the Java platform can, and read from and written to text in every form.
 *
 * <p>MD5: RFC 1321, A.5. SHA: FIPS 180-4, its examples being "abc", the one of 56 letters and a million letters a, as
 * quoted elsewhere; the others of these inputs were computed with GNU coreutils. C4: the public C4 ID documents; those
 * of india and abc were computed. XXH: the self-test table published with the algorithm ({@code xsum_sanity_check.c}).
 */
class DigestVectorTests {

    @ParameterizedTest
    @CsvSource({
        "MD5, '', d41d8cd98f00b204e9800998ecf8427e",
        "MD5, a, 0cc175b9c0f1b6a831c399e269772661",
        "MD5, abc, 900150983cd24fb0d6963f7d28e17f72",
        "MD5, message digest, f96b697d7cb7938d525a2f31aaf161d0",
        "MD5, abcdefghijklmnopqrstuvwxyz, c3fcd3d76192e4007dfb496cca67e13b",
        "MD5, ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789, d174ab98d277d9f5a5611c2c9f419d9f",
        "MD5, 12345678901234567890123456789012345678901234567890123456789012345678901234567890,"
                + " 57edf4a22be3c955ac49da2e2107b67a",
        "SHA1, '', da39a3ee5e6b4b0d3255bfef95601890afd80709",
        "SHA1, abc, a9993e364706816aba3e25717850c26c9cd0d89d",
        "SHA1, abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq, 84983e441c3bd26ebaae4aa1f95129e5e54670f1",
        "SHA256, '', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "SHA256, abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "SHA256, abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq,"
                + " 248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        "SHA512, '', cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce"
                + "47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e",
        "SHA512, abc, ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a"
                + "2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f",
        "C4, '', c459dsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT",
        "C4, alfa, c43zYcLni5LF9rR4Lg4B8h3Jp8SBwjcnyyeh4bc6gTPHndKuKdjUWx1kJPYhZxYt3zV6tQXpDs2shPsPYjgG81wZM1",
        "C4, bravo, c42jd8KUQG9DKppN1qt5aWS3PAmdPmNutXyVTb8H123FcuU3shPxpUXsVdcouSALZ4PaDvMYzQSMYCWkb6rop9zhDa",
        "C4, charlie, c44erLietE8C1iKmQ3y4ENqA9g82Exdkoxox3KEHops2ux5MTsuMjfbFRvUPsPdi9Pxc3C2MRvLxWT8eFw5XKbRQGw",
        "C4, delta, c42Sv2Wi2Qo8AKbJKnUP6YTSdz8pt9aDaf2Ltx44HF1UDdXANM8Ltk6qEzpncvmVbw6FZxgBumw9Eo2jtGyaQ5gDSC",
        "C4, echo, c41bviGCyTM2stoMYVTVKgBkfC6SitoLRFinp77BcmN9awdaeC9cxPy4zyFQBhmTvRzChawbECK1KBRnw3KnagA5be",
        "C4, foxtrot, c427CsZdfUAHyQBS3hxDFrL9NqgKeRuKkuSkxuYTm26XG7AKAWCjViDuMhHaMmQBkvuHnsxojetbQU1DdxHjzyQw8r",
        "C4, golf, c41yLiwAPdsjiBAAw8AFwQGG3cAWnNbDio21NtHE8yD1Fh5irRE4FsccZvm1WdJ4FNHtR1kt5kev7wERsgYomaQbfs",
        "C4, hotel, c44nNyaFuVbt5MCfo2PYWHpwMkBpYTbt14C6TuoLCYH5RLvAFLngER3nqHfXC2GuttcoDxGBi3pY1j3pUF2W3rZD8N",
        "C4, india, c41nJ6CvPN7m7UkUA3oS2yjXYNSZ7WayxEQXWPae6wFkWwW8WChQWTu61bSeuCERu78BDK1LUEny1qHZnye3oU7DtY",
        "C4, abc, c45S4rnaTNWonxss1u8LzsaJdEph1AJhWUF4sh2waXKMsutyfAxg4ybUeuXVWS9HdNcEypmeXn8FZGonD4w1rj9DZp",
    })
    void thePlatformComputesThePublishedDigest(ChecksumAlgorithm algorithm, String input, String published)
            throws Exception {
        byte[] digest = platform(algorithm).digest(input.getBytes(StandardCharsets.US_ASCII));

        assertThat(Checksum.of(algorithm, digest).text()).isEqualTo(published);
        everyFormOfTheText(algorithm, published, digest);
    }

    @ParameterizedTest
    @CsvSource({
        "MD5, 7707d6ae4e027c70eea2a935c2296f21",
        "SHA1, 34aa973cd4c4daa4f61eeb2bdbad27316534016f",
        "SHA256, cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
    })
    void thePlatformComputesTheDigestOfAMillionLetters(ChecksumAlgorithm algorithm, String published) throws Exception {
        byte[] input = new byte[1_000_000];
        Arrays.fill(input, (byte) 'a');

        assertThat(Checksum.of(algorithm, platform(algorithm).digest(input)).text())
                .isEqualTo(published);
    }

    @ParameterizedTest
    @CsvSource({
        "XXH64, ef46db3751d8e999",
        "XXH64, e934a84adb052768",
        "XXH64, 9136a0dca57457ee",
        "XXH64, 8282dcc4994e35c8",
        "XXH64, b641ae8cb691c174",
        "XXH3_64, 2d06800538d394c2",
        "XXH3_64, c44bdff4074eecdb",
        "XXH3_64, 27b56a84cd2d7325",
        "XXH3_64, cb37aeb9e5d361ed",
        "XXH128, 99aa06d3014798d86001c324468d497f",
        "XXH128, a6cd5e9392000f6ac44bdff4074eecdb",
        "XXH128, 082afe0b8162d12a3e7039bdda43cfc6",
        "XXH128, e89c0f6ff369b427cb37aeb9e5d361ed",
    })
    void readsAndWritesPublishedXxhDigests(ChecksumAlgorithm algorithm, String published) throws Exception {
        byte[] digest = HexFormat.of().parseHex(published);

        everyFormOfTheText(algorithm, published, digest);
        String littleEndian = HexFormat.of().formatHex(Checksum.reversed(digest));
        assertThat(Manifests.read(algorithm.tag() + "_LE (a) = " + littleEndian)
                        .only()
                        .checksums())
                .containsExactly(Checksum.of(algorithm, digest));
    }

    /** As in the xxHash documents: the digest of "abc", and the same with the least significant byte first. */
    @Test
    void theWholeOfAnXxh128DigestIsReversed() throws Exception {
        assertThat(Manifests.read("XXH128_LE (a) = 50392f89945faf7885613a73b65ab006")
                        .only()
                        .checksums())
                .containsExactly(Checksum.parse(ChecksumAlgorithm.XXH128, "06b05ab6733a618578af5f94892f3950"));
    }

    private static void everyFormOfTheText(ChecksumAlgorithm algorithm, String published, byte[] digest)
            throws Exception {
        Checksum checksum = Checksum.of(algorithm, digest);

        assertThat(checksum.text()).isEqualTo(published);
        assertThat(Checksum.parse(algorithm, published)).isEqualTo(checksum);
        if (algorithm == ChecksumAlgorithm.C4) {
            assertThat(Manifests.read(published + "  a").only().checksums()).containsExactly(checksum);
            assertThat(Checksum.decode(algorithm, published.toLowerCase(Locale.ROOT)))
                    .as("upper and lower case are different digits")
                    .isNotEqualTo(digest);
            return;
        }
        String base64 = Base64.getEncoder().encodeToString(digest);
        for (String text : List.of(published, published.toUpperCase(Locale.ROOT), base64)) {
            assertThat(Manifests.read(algorithm.tag() + " (a) = " + text).only().checksums())
                    .as(text)
                    .containsExactly(checksum);
        }
    }

    private static MessageDigest platform(ChecksumAlgorithm algorithm) throws Exception {
        return MessageDigest.getInstance(algorithm == ChecksumAlgorithm.C4 ? "SHA-512" : algorithm.label());
    }
}
