package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.ChecksumAlgorithm.XXH128;
import static rollbook.manifest.Manifests.assumed;
import static rollbook.manifest.Manifests.digest;
import static rollbook.manifest.Manifests.file;
import static rollbook.manifest.Manifests.listing;
import static rollbook.manifest.Manifests.md5;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.manifest.FileFinding.Facts;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.ManifestEntry.Action;

class ManifestComparisonTests {

    @Test
    void countsWhatIsSameAndKeepsOnlyTheRest() {
        ManifestComparison comparison = ManifestComparison.of(
                listing(md5("a", 1), md5("b", 2), md5("c", 3)), listing(md5("b", 2), md5("a", 9), md5("d", 4)));

        assertThat(comparison.count(Kind.SAME)).isEqualTo(1);
        assertThat(comparison.findings())
                .extracting(FileFinding::path, FileFinding::kind)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("a", Kind.DIFFERENT),
                        org.assertj.core.groups.Tuple.tuple("c", Kind.MISSING),
                        org.assertj.core.groups.Tuple.tuple("d", Kind.EXTRA));
        assertThat(comparison.referenceFiles()).isEqualTo(3);
        assertThat(comparison.copyFiles()).isEqualTo(3);
    }

    @Test
    void saysWhatWasExpectedAndFound() {
        FileFinding finding = only(file("a", 5L, digest(MD5, 1)), file("a", 6L, digest(MD5, 1)));

        assertThat(finding.kind()).isEqualTo(Kind.DIFFERENT);
        assertThat(finding.expected()).isEqualTo(new Facts(5L, "MD5 " + "01".repeat(16)));
        assertThat(finding.found()).isEqualTo(new Facts(6L, "MD5 " + "01".repeat(16)));
    }

    @Test
    void allCommonAlgorithmsMustAgree() {
        assertThat(kind(
                        file("a", null, digest(MD5, 1), digest(SHA1, 1)),
                        file("a", null, digest(MD5, 1), digest(SHA1, 2))))
                .isEqualTo(Kind.DIFFERENT);
    }

    @Test
    void withoutACommonAlgorithmSizesAreCompared() {
        assertThat(kind(file("a", 5L, digest(MD5, 1)), file("a", 5L, digest(SHA1, 1))))
                .isEqualTo(Kind.SIZE_ONLY);
        assertThat(kind(file("a", 5L, digest(MD5, 1)), file("a", 6L, digest(SHA1, 1))))
                .isEqualTo(Kind.DIFFERENT);
        assertThat(kind(file("a", 5L), file("a", 5L))).isEqualTo(Kind.SIZE_ONLY);
    }

    @Test
    void withoutSizesOnlyTheNameAgrees() {
        assertThat(kind(file("a", 5L, digest(MD5, 1)), file("a", null, digest(SHA1, 1))))
                .isEqualTo(Kind.NAME_ONLY);
        assertThat(kind(file("a", null, digest(MD5, 1)), file("a", null, digest(SHA1, 1))))
                .isEqualTo(Kind.NAME_ONLY);
    }

    @Test
    void agreementWithAStatedAlgorithmTellsAnAssumedOne() {
        FileListing guessed = listing(file("a", null, assumed(MD5, 1)));

        assertThat(ManifestComparison.of(listing(file("a", null, digest(XXH128, 1))), guessed)
                        .algorithmSettled())
                .isTrue();
        assertThat(ManifestComparison.of(guessed, listing(md5("a", 1))).algorithmSettled())
                .isTrue();
        assertThat(ManifestComparison.of(guessed, guessed).algorithmSettled())
                .as("nobody states it")
                .isFalse();
        assertThat(ManifestComparison.of(listing(md5("a", 2)), guessed).algorithmSettled())
                .isFalse();
    }

    @Test
    void anAssumedAlgorithmIsNoGroundForADifference() {
        assertThat(kind(file("a", null, assumed(MD5, 1)), file("a", null, digest(XXH128, 2))))
                .isEqualTo(Kind.NAME_ONLY);
        assertThat(kind(file("a", 7L, assumed(MD5, 1)), file("a", 7L, digest(XXH128, 2))))
                .isEqualTo(Kind.SIZE_ONLY);
    }

    @Test
    void findsAMovedFile() {
        FileFinding finding = only(file("a", 5L, digest(MD5, 1)), file("x/a", 5L, digest(MD5, 1)));

        assertThat(finding.kind()).isEqualTo(Kind.MOVED);
        assertThat(finding.path()).isEqualTo("a");
        assertThat(finding.otherPath()).isEqualTo("x/a");
    }

    @Test
    void aMovedFileNeedsEqualBytesAndSize() {
        assertThat(kinds(listing(file("a", 5L, digest(MD5, 1))), listing(file("b", 6L, digest(MD5, 1)))))
                .containsExactly(Kind.MISSING, Kind.EXTRA);
        assertThat(kinds(listing(file("a", 5L, digest(MD5, 1))), listing(file("b", 5L, digest(MD5, 2)))))
                .containsExactly(Kind.MISSING, Kind.EXTRA);
        assertThat(kinds(listing(file("a", 5L)), listing(file("b", 5L)))).containsExactly(Kind.MISSING, Kind.EXTRA);
        assertThat(kinds(
                        listing(file("a", 5L, digest(MD5, 1), digest(SHA1, 1))),
                        listing(file("b", 5L, digest(MD5, 1), digest(SHA1, 2)))))
                .containsExactly(Kind.MISSING, Kind.EXTRA);
    }

    @Test
    void oneFileOfTheCopyStandsForOneOfTheReference() {
        assertThat(kinds(listing(md5("a", 1), md5("b", 1)), listing(md5("x", 1))))
                .containsExactly(Kind.MOVED, Kind.MISSING);
        assertThat(kinds(listing(md5("a", 1), md5("b", 1)), listing(md5("b", 1))))
                .as("a file that stays in its place stands for itself only")
                .containsExactly(Kind.MISSING);
    }

    @Test
    void aMovedFileIsNotFoundAgainByAnotherAlgorithm() {
        FileListing reference = listing(md5("a", 1), file("b", null, digest(SHA1, 1)));

        assertThat(kinds(reference, listing(file("x", null, digest(MD5, 1), digest(SHA1, 1)))))
                .containsExactly(Kind.MOVED, Kind.MISSING);
    }

    @Test
    void findsFilesThatChangedPlaces() {
        assertThat(kinds(listing(md5("a", 1), md5("b", 2)), listing(md5("a", 2), md5("b", 1))))
                .as("each path holds other bytes than it should")
                .containsExactly(Kind.DIFFERENT, Kind.DIFFERENT);
    }

    @Test
    void aPathListedTwiceWithOtherDigestsIsFound() {
        List<Kind> inCopy = kinds(listing(md5("a", 1)), listing(md5("a", 1), md5("a", 2)));
        List<Kind> inReference = kinds(listing(md5("a", 1), md5("a", 2)), listing(md5("a", 1)));
        List<Kind> extra = kinds(listing(md5("a", 1)), listing(md5("a", 1), md5("b", 2), md5("b", 3)));
        List<Kind> sizes = kinds(listing(md5("a", 1)), listing(file("a", 1L), file("a", 2L)));

        assertThat(List.of(inCopy, inReference, extra, sizes))
                .allSatisfy(kinds -> assertThat(kinds).containsExactly(Kind.LISTED_TWICE));
    }

    @Test
    void aContradictoryFileIsNotTakenForAMovedOne() {
        assertThat(kinds(listing(md5("a", 1)), listing(md5("b", 1), md5("b", 2))))
                .containsExactly(Kind.MISSING, Kind.LISTED_TWICE);
    }

    @Test
    void linesThatAgreeAreOneFile() {
        FileListing copy = listing(md5("a", 1), file("a", 5L, digest(SHA1, 1)), md5("a", 1));

        assertThat(copy.size()).isEqualTo(1);
        assertThat(kinds(listing(file("a", null, digest(SHA1, 1))), copy)).isEmpty();
        assertThat(kinds(listing(file("a", null, digest(SHA1, 2))), copy)).containsExactly(Kind.DIFFERENT);
    }

    /** ASC MHL 1.0, 5.6.4: a failed digest is the newly computed one and never verifies. */
    @Test
    void aFailedDigestDiffersUnlessItEqualsTheReference() {
        assertThat(kind(md5("a", 1), file("a", null, Action.FAILED, digest(MD5, 2))))
                .isEqualTo(Kind.DIFFERENT);
        assertThat(kind(file("a", 5L, digest(MD5, 1)), file("a", 5L, Action.FAILED, digest(SHA1, 2))))
                .isEqualTo(Kind.DIFFERENT);
        assertThat(kinds(listing(md5("a", 1)), listing(file("a", null, Action.FAILED, digest(MD5, 1)))))
                .isEmpty();
    }

    @Test
    void aFailedDigestOfTheReferenceProvesNothing() {
        assertThat(kind(file("a", null, Action.FAILED, digest(MD5, 1)), md5("a", 1)))
                .isEqualTo(Kind.NAME_ONLY);
        assertThat(kinds(listing(file("a", null, Action.FAILED, digest(MD5, 1))), listing(md5("b", 1))))
                .containsExactly(Kind.MISSING, Kind.EXTRA);
    }

    /** One digest with many sizes is no accident; it must not take quadratic time. */
    @Test
    void manyEqualDigestsAreHandledQuickly() {
        List<ManifestEntry> reference = new ArrayList<>();
        List<ManifestEntry> copy = new ArrayList<>();
        for (int i = 0; i < 50_000; i++) {
            reference.add(file("r" + i, (long) i, digest(MD5, 1)));
            copy.add(file("c" + i, 1_000_000L + i, digest(MD5, 1)));
        }

        ManifestComparison comparison = ManifestComparison.of(FileListing.of(reference), FileListing.of(copy));

        assertThat(comparison.count(Kind.MISSING)).isEqualTo(50_000);
    }

    private static Kind kind(ManifestEntry expected, ManifestEntry found) {
        return only(expected, found).kind();
    }

    private static FileFinding only(ManifestEntry expected, ManifestEntry found) {
        List<FileFinding> findings =
                ManifestComparison.of(listing(expected), listing(found)).findings();
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }

    private static List<Kind> kinds(FileListing reference, FileListing copy) {
        return ManifestComparison.of(reference, copy).findings().stream()
                .map(FileFinding::kind)
                .toList();
    }
}
