package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DigesterTests {

    /**
     * XXH: the self-test table published with the algorithm (xxHash, {@code cli/xsum_sanity_check.c}), seed 0, on its
     * own buffer; lengths on both sides of every change of method.
     */
    @ParameterizedTest
    @CsvSource({
        "XXH64, 0, ef46db3751d8e999",
        "XXH64, 1, e934a84adb052768",
        "XXH64, 4, 9136a0dca57457ee",
        "XXH64, 14, 8282dcc4994e35c8",
        "XXH64, 222, b641ae8cb691c174",
        "XXH3_64, 0, 2d06800538d394c2",
        "XXH3_64, 1, c44bdff4074eecdb",
        "XXH3_64, 6, 27b56a84cd2d7325",
        "XXH3_64, 12, a713daf0dfbb77e7",
        "XXH3_64, 24, a3fe70bf9d3510eb",
        "XXH3_64, 48, 397da259ecba1f11",
        "XXH3_64, 80, bcdefbbb2c47c90a",
        "XXH3_64, 195, cd94217ee362ec3a",
        "XXH3_64, 403, cdeb804d65c6dea4",
        "XXH3_64, 512, 617e49599013cb6b",
        "XXH3_64, 2048, dd59e2c3a5f038e0",
        "XXH3_64, 2099, c6b9d9b3fc9ac765",
        "XXH3_64, 2240, 6e73a90539cf2948",
        "XXH3_64, 2367, cb37aeb9e5d361ed",
        "XXH128, 0, 99aa06d3014798d86001c324468d497f",
        "XXH128, 1, a6cd5e9392000f6ac44bdff4074eecdb",
        "XXH128, 6, 082afe0b8162d12a3e7039bdda43cfc6",
        "XXH128, 12, 6e3efd8fc7802b18061a192713f69ad9",
        "XXH128, 24, 0ce966e4678d37611e7044d28b1b901d",
        "XXH128, 48, a002ac4e5478227ef942219aed80f67b",
        "XXH128, 81, 4952f58181ab00425e8bafb9f95fb803",
        "XXH128, 222, 337e09641b948717f1aebd597cec6b3a",
        "XXH128, 403, 1b6de21e332dd73dcdeb804d65c6dea4",
        "XXH128, 512, 18d2d110dcc9bca1617e49599013cb6b",
        "XXH128, 2048, f736557fd47073a5dd59e2c3a5f038e0",
        "XXH128, 2240, ccb134fbfa7ce49d6e73a90539cf2948",
        "XXH128, 2367, e89c0f6ff369b427cb37aeb9e5d361ed",
    })
    void computesThePublishedTable(ChecksumAlgorithm algorithm, int length, String digest) {
        assertThat(algorithm.checksumOf(selfTestBuffer(length)).text()).isEqualTo(digest);
    }

    /**
     * MD5: RFC 1321, A.5. SHA: the examples of FIPS 180, second-hand. C4: the published example of the algorithm's
     * documents.
     */
    @ParameterizedTest
    @CsvSource({
        "MD5, abc, 900150983cd24fb0d6963f7d28e17f72",
        "MD5, message digest, f96b697d7cb7938d525a2f31aaf161d0",
        "SHA1, abc, a9993e364706816aba3e25717850c26c9cd0d89d",
        "SHA256, abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        "SHA512, abc, ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f",
        "C4, alfa, c43zYcLni5LF9rR4Lg4B8h3Jp8SBwjcnyyeh4bc6gTPHndKuKdjUWx1kJPYhZxYt3zV6tQXpDs2shPsPYjgG81wZM1",
    })
    void computesPublishedExamples(ChecksumAlgorithm algorithm, String text, String digest) {
        assertThat(algorithm
                        .checksumOf(text.getBytes(StandardCharsets.US_ASCII))
                        .text())
                .isEqualTo(digest);
    }

    @ParameterizedTest
    @EnumSource
    void theDigestOfNothingIsTheOneThatIsKnown(ChecksumAlgorithm algorithm) {
        assertThat(algorithm.digester().digest()).isEqualTo(algorithm.emptyDigest());
    }

    @ParameterizedTest
    @EnumSource
    void piecesGiveWhatTheWholeGives(ChecksumAlgorithm algorithm) {
        long seed = 231;
        SplittableRandom random = new SplittableRandom(seed);
        Digester digester = algorithm.digester();
        for (int i = 0; i < 200; i++) {
            byte[] bytes = new byte[random.nextInt(3_000)];
            random.nextBytes(bytes);
            int at = 0;
            while (at < bytes.length) {
                int piece = Math.min(bytes.length - at, 1 + random.nextInt(700));
                digester.update(bytes, at, piece);
                at += piece;
            }
            assertThat(digester.digest())
                    .as("seed %d, case %d", seed, i)
                    .isEqualTo(algorithm.checksumOf(bytes).digest());
        }
    }

    @Test
    void aDigesterBeginsAnew() {
        Digester md5 = ChecksumAlgorithm.MD5.digester();
        byte[] first = md5.update(new byte[] {1}).digest();

        assertThat(md5.update(new byte[] {1}).digest()).isEqualTo(first);
    }

    private static byte[] selfTestBuffer(int length) {
        byte[] buffer = new byte[length];
        long generator = 2_654_435_761L;
        for (int i = 0; i < length; i++) {
            buffer[i] = (byte) (generator >>> 56);
            generator *= Long.parseUnsignedLong("11400714785074694797");
        }
        return buffer;
    }
}
