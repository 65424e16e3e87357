package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.C4;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.ChecksumAlgorithm.SHA512;
import static rollbook.manifest.ChecksumAlgorithm.XXH128;
import static rollbook.manifest.Manifests.assumed;
import static rollbook.manifest.Manifests.digest;

import java.util.List;
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

    private static void check(List<Checksum> one, List<Checksum> other, Agreement expected) {
        assertThat(Agreement.of(one, other)).isEqualTo(expected);
        assertThat(Agreement.of(other, one)).as("the other way round").isEqualTo(expected);
    }
}
