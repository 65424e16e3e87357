package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.C4;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.ChecksumAlgorithm.SHA512;
import static rollbook.manifest.ChecksumAlgorithm.XXH128;
import static rollbook.manifest.ChecksumAlgorithm.XXH3_64;
import static rollbook.manifest.ChecksumAlgorithm.XXH64;
import static rollbook.manifest.Manifests.assumed;
import static rollbook.manifest.Manifests.digest;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class AgreementTests {

    @Test
    void oneCommonAlgorithmIsEnough() {
        check(List.of(digest(MD5, 1)), List.of(digest(MD5, 1), digest(SHA1, 2)), Agreement.SAME);
    }

    @Test
    void allCommonAlgorithmsMustAgree() {
        check(List.of(digest(MD5, 1), digest(SHA1, 3)), List.of(digest(MD5, 1), digest(SHA1, 2)), Agreement.DIFFERENT);
    }

    @Test
    void differentAlgorithmsSayNothing() {
        check(List.of(digest(MD5, 1)), List.of(digest(SHA1, 1)), Agreement.NOTHING_IN_COMMON);
        check(List.of(digest(MD5, 1)), List.of(digest(XXH128, 1)), Agreement.NOTHING_IN_COMMON);
        check(List.of(), List.of(digest(MD5, 1)), Agreement.NOTHING_IN_COMMON);
    }

    @Test
    void anAssumedAlgorithmThatDisagreesWithAnotherStatedOneSaysNothing() {
        check(List.of(assumed(MD5, 1)), List.of(digest(XXH128, 2)), Agreement.NOTHING_IN_COMMON);
    }

    @Test
    void equalBytesConfirmAnAssumedAlgorithm() {
        check(List.of(assumed(MD5, 1)), List.of(digest(XXH128, 1)), Agreement.SAME);
        check(List.of(assumed(MD5, 1)), List.of(digest(MD5, 9), digest(XXH128, 1)), Agreement.SAME);
    }

    @Test
    void anAssumedAlgorithmThatDisagreesWithTheSameOneIsADifference() {
        check(List.of(assumed(MD5, 1)), List.of(digest(MD5, 2)), Agreement.DIFFERENT);
        check(List.of(assumed(MD5, 1)), List.of(assumed(MD5, 2)), Agreement.DIFFERENT);
    }

    /** SMPTE ST 2114: a C4 ID is the SHA-512 digest. */
    @Test
    void c4AndSha512AreTheSameFunction() {
        check(List.of(digest(C4, 1)), List.of(digest(SHA512, 1)), Agreement.SAME);
        check(List.of(digest(C4, 1)), List.of(digest(SHA512, 2)), Agreement.DIFFERENT);
    }

    /** The xxHash documents: digests may be printed least significant byte first, in untagged lists without a mark. */
    @Test
    void theByteOrderOfXxhDigestsDoesNotMatter() {
        long seed = 1_431;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 2_000; i++) {
            for (ChecksumAlgorithm algorithm : List.of(XXH64, XXH3_64, XXH128)) {
                Checksum one = NastyNames.checksum(random, algorithm);
                boolean assumed = random.nextBoolean();
                byte[] reversed = Checksum.reversed(one.digest());
                Checksum other = assumed
                        ? Checksum.assumed(
                                ChecksumAlgorithm.ofDigestBytes(reversed.length).get(random.nextInt(2)), reversed)
                        : Checksum.of(algorithm, reversed);
                check(List.of(one), List.of(other), Agreement.SAME);
                assertThat(Agreement.reversesBytes(List.of(one), List.of(other)))
                        .as("seed %d", seed)
                        .isTrue();
                assertThat(Agreement.settlesAlgorithm(List.of(one), List.of(other)))
                        .isEqualTo(assumed);

                reversed[random.nextInt(reversed.length)] ^= (byte) (1 + random.nextInt(255));
                assertThat(Agreement.of(List.of(one), List.of(Checksum.of(algorithm, reversed))))
                        .as("seed %d: one byte differs", seed)
                        .isEqualTo(Agreement.DIFFERENT);
            }
        }
    }

    @Test
    void theByteOrderOfOtherDigestsMatters() {
        SplittableRandom random = new SplittableRandom(1_432);
        for (ChecksumAlgorithm algorithm : List.of(MD5, SHA1, SHA512)) {
            Checksum one = NastyNames.checksum(random, algorithm);
            Checksum other = Checksum.of(algorithm, Checksum.reversed(one.digest()));
            check(List.of(one), List.of(other), Agreement.DIFFERENT);
        }
    }

    @Test
    void equalDigestsInOneOrderAreNotReversed() {
        assertThat(Agreement.reversesBytes(List.of(digest(XXH64, 1)), List.of(digest(XXH64, 1))))
                .as("its bytes are all the same")
                .isFalse();
        assertThat(Agreement.settlesAlgorithm(List.of(digest(XXH64, 1)), List.of(digest(XXH64, 1))))
                .isFalse();
        assertThat(Agreement.settlesAlgorithm(List.of(assumed(MD5, 1)), List.of(assumed(MD5, 1))))
                .as("nobody states it")
                .isFalse();
        assertThat(Agreement.settlesAlgorithm(List.of(assumed(MD5, 1)), List.of(digest(XXH128, 2))))
                .isFalse();
    }

    private static void check(List<Checksum> one, List<Checksum> other, Agreement expected) {
        assertThat(Agreement.of(one, other)).isEqualTo(expected);
        assertThat(Agreement.of(other, one)).as("the other way round").isEqualTo(expected);
    }
}
