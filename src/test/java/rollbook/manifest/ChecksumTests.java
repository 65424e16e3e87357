package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ChecksumTests {

    /** Digests of no bytes: RFC 1321 A.5, FIPS 180-4, the xxHash documents; the C4 ID from the C4 documents. */
    @ParameterizedTest
    @CsvSource({
        "MD5, d41d8cd98f00b204e9800998ecf8427e",
        "SHA1, da39a3ee5e6b4b0d3255bfef95601890afd80709",
        "SHA256, e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
        "XXH64, ef46db3751d8e999",
        "XXH3_64, 2d06800538d394c2",
        "XXH128, 99aa06d3014798d86001c324468d497f",
        "C4, c459dsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT",
    })
    void knowsTheDigestOfAnEmptyFile(ChecksumAlgorithm algorithm, String published) {
        Checksum checksum = Checksum.parse(algorithm, published);

        assertThat(checksum.ofNoBytes()).isTrue();
        assertThat(checksum.text()).isEqualTo(published);
    }

    /** The Java platform's own digests as the second opinion. */
    @ParameterizedTest
    @EnumSource(
            value = ChecksumAlgorithm.class,
            names = {"MD5", "SHA1", "SHA256", "SHA512"})
    void digestLengthIsThatOfThePlatform(ChecksumAlgorithm algorithm) throws Exception {
        MessageDigest platform = MessageDigest.getInstance(algorithm.label());

        assertThat(algorithm.digestBytes()).isEqualTo(platform.getDigestLength());
        assertThat(algorithm.hasEmptyDigest(platform.digest())).isTrue();
    }

    /** Published C4 IDs of single words (the public C4 ID documents); SHA-512 by the Java platform. */
    @ParameterizedTest
    @CsvSource({
        "alfa, c43zYcLni5LF9rR4Lg4B8h3Jp8SBwjcnyyeh4bc6gTPHndKuKdjUWx1kJPYhZxYt3zV6tQXpDs2shPsPYjgG81wZM1",
        "bravo, c42jd8KUQG9DKppN1qt5aWS3PAmdPmNutXyVTb8H123FcuU3shPxpUXsVdcouSALZ4PaDvMYzQSMYCWkb6rop9zhDa",
        "charlie, c44erLietE8C1iKmQ3y4ENqA9g82Exdkoxox3KEHops2ux5MTsuMjfbFRvUPsPdi9Pxc3C2MRvLxWT8eFw5XKbRQGw",
        "golf, c41yLiwAPdsjiBAAw8AFwQGG3cAWnNbDio21NtHE8yD1Fh5irRE4FsccZvm1WdJ4FNHtR1kt5kev7wERsgYomaQbfs",
    })
    void c4IsTheSha512DigestInBase58(String word, String published) throws Exception {
        byte[] sha512 = MessageDigest.getInstance("SHA-512").digest(word.getBytes(StandardCharsets.UTF_8));

        assertThat(Checksum.of(ChecksumAlgorithm.C4, sha512).text()).isEqualTo(published);
        assertThat(Checksum.parse(ChecksumAlgorithm.C4, published).digest()).isEqualTo(sha512);
    }

    /** The digest of 64 zero bytes and that of the number 58, as the C4 documents give them; the largest possible ID. */
    @Test
    void c4PadsToAFixedWidth() {
        byte[] number58 = new byte[64];
        number58[63] = 58;

        assertThat(Checksum.of(ChecksumAlgorithm.C4, new byte[64]).text()).isEqualTo("c4" + "1".repeat(88));
        assertThat(Checksum.of(ChecksumAlgorithm.C4, number58).text()).isEqualTo("c4" + "1".repeat(86) + "21");
        String largest = "c467rpwLCuS5DGA8KGZXKsVQ7dnPb9goRLoKfgGbLfQg9WoLUgNY77E2jT11fem3coV9nAkguBACzrU1iyZM4B8roQ";
        assertThat(Checksum.parse(ChecksumAlgorithm.C4, largest).digest()).containsOnly(0xFF);
        assertThat(Checksum.decode(ChecksumAlgorithm.C4, largest.replace("B8roQ", "B8roR")))
                .isNull();
        assertThat(Checksum.decode(ChecksumAlgorithm.C4, "c4" + "0".repeat(88))).isNull();
    }

    @Test
    void c4SurvivesThereAndBack() {
        long seed = 20_260_304;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 500; i++) {
            byte[] digest = new byte[64];
            random.nextBytes(digest);
            digest[0] = i % 3 == 0 ? 0 : digest[0];
            String text = Checksum.of(ChecksumAlgorithm.C4, digest).text();
            assertThat(Checksum.parse(ChecksumAlgorithm.C4, text).digest())
                    .as("seed %d, case %d", seed, i)
                    .isEqualTo(digest);
        }
    }

    @Test
    void comparesBytesNotText() {
        Checksum lower = Checksum.parse(ChecksumAlgorithm.MD5, Manifests.ABC_MD5);
        Checksum upper = Checksum.parse(ChecksumAlgorithm.MD5, Manifests.ABC_MD5.toUpperCase(Locale.ROOT));

        assertThat(upper).isEqualTo(lower).hasSameHashCodeAs(lower);
        assertThat(Checksum.assumed(ChecksumAlgorithm.MD5, lower.digest())).isEqualTo(lower);
        assertThat(Checksum.of(ChecksumAlgorithm.XXH128, lower.digest())).isNotEqualTo(lower);
    }

    @Test
    void refusesADigestOfAnotherLength() {
        assertThatIllegalArgumentException().isThrownBy(() -> Checksum.of(ChecksumAlgorithm.MD5, new byte[15]));
        assertThatIllegalArgumentException().isThrownBy(() -> Checksum.parse(ChecksumAlgorithm.SHA1, "00"));
        assertThat(Checksum.decode(ChecksumAlgorithm.MD5, Manifests.ABC_MD5.replace('f', 'g')))
                .isNull();
    }

    @Test
    void cannotBeChangedFromOutside() {
        byte[] digest = new byte[16];
        Checksum checksum = Checksum.of(ChecksumAlgorithm.MD5, digest);
        digest[0] = 1;
        checksum.digest()[1] = 1;

        assertThat(checksum.digest()).containsOnly(0);
    }
}
