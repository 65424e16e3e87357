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
import java.util.SplittableRandom;
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

    @Test
    void aFileThatIsOnlySpelledOtherwiseIsThere() {
        FileFinding finding = only(md5("Clips/Take 3?.mov", 1), md5("CLIPS/take 3_.mov", 1));

        assertThat(finding.kind()).isEqualTo(Kind.SPELLED_OTHERWISE);
        assertThat(finding.path()).isEqualTo("Clips/Take 3?.mov");
        assertThat(finding.otherPath()).isEqualTo("CLIPS/take 3_.mov");
    }

    @Test
    void aFileThatIsSpelledOtherwiseWithOtherBytesIsNotMissing() {
        FileFinding finding = only(md5("Clips/a.mov", 1), md5("clips/a.mov", 2));

        assertThat(finding.kind()).isEqualTo(Kind.DIFFERENT);
        assertThat(finding.otherPath()).isEqualTo("clips/a.mov");
        assertThat(only(file("A", 5L, digest(MD5, 1)), file("a", 5L, digest(SHA1, 1)))
                        .kind())
                .isEqualTo(Kind.SIZE_ONLY);
        assertThat(only(file("A", null, digest(MD5, 1)), file("a", null, digest(SHA1, 1)))
                        .kind())
                .isEqualTo(Kind.NAME_ONLY);
    }

    @Test
    void whichOfTwoSpellingsIsMeantTheDigestsTell() {
        assertThat(kinds(listing(md5("a:", 1), md5("a|", 2)), listing(md5("A_", 2), md5("a_", 1))))
                .containsExactly(Kind.SPELLED_OTHERWISE, Kind.SPELLED_OTHERWISE);
        assertThat(kinds(listing(md5("a:", 1), md5("a|", 2)), listing(md5("A_", 2))))
                .containsExactly(Kind.MISSING, Kind.SPELLED_OTHERWISE);
        assertThat(kinds(listing(md5("a:", 1), md5("a|", 1)), listing(md5("a_", 1))))
                .as("two equal files are not proven by one")
                .containsExactly(Kind.SPELLED_OTHERWISE, Kind.MISSING);
    }

    @Test
    void aFileWithEqualBytesElsewhereIsMovedThoughAnotherIsSpelledLikeIt() {
        assertThat(kinds(listing(md5("a", 1)), listing(md5("A", 2), md5("x/y", 1))))
                .containsExactly(Kind.MOVED, Kind.EXTRA);
    }

    /** ASC MHL 1.0, 5.6.6: the record of a renamed file names its previous path. */
    @Test
    void aRenamedFileIsFoundByItsPreviousPath() {
        FileListing reference = listing(md5("a", 1), md5("b", 1));
        FileListing copy = listing(renamed("x", "b", 1), renamed("y", "a", 1));

        assertThat(ManifestComparison.of(reference, copy).findings())
                .extracting(FileFinding::path, FileFinding::kind, FileFinding::otherPath)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("a", Kind.MOVED, "y"),
                        org.assertj.core.groups.Tuple.tuple("b", Kind.MOVED, "x"));
        assertThat(ManifestComparison.of(copy, reference).findings())
                .extracting(FileFinding::path, FileFinding::otherPath)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("x", "b"), org.assertj.core.groups.Tuple.tuple("y", "a"));
    }

    @Test
    void aPreviousPathProvesNothingWithoutEqualBytes() {
        assertThat(kinds(listing(md5("a", 1)), listing(renamed("x", "a", 2))))
                .containsExactly(Kind.MISSING, Kind.EXTRA);
    }

    @Test
    void keepsTheFirstFindingsAndCountsAndHandsOutAll() {
        List<ManifestEntry> reference = new ArrayList<>();
        for (int i = 0; i < ManifestComparison.FINDINGS_KEPT + 5; i++) {
            reference.add(md5("f" + i, 1));
        }
        List<FileFinding> all = new ArrayList<>();

        ManifestComparison comparison = ManifestComparison.of(FileListing.of(reference), listing(), all::add);

        assertThat(comparison.count(Kind.MISSING)).isEqualTo(reference.size());
        assertThat(all).hasSize(reference.size());
        assertThat(comparison.findings()).isEqualTo(all.subList(0, ManifestComparison.FINDINGS_KEPT));
    }

    /** Every file of the reference comes out as one thing, and no file of the copy stands for two. */
    @Test
    void countsEachFileOnce() {
        String[] paths = {"a", "A", "b", "b.", "B", "c:", "c_", "x/a", "x\\a"};
        for (long seed = 1; seed <= 3_000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<ManifestEntry> reference = new ArrayList<>();
            List<ManifestEntry> copy = new ArrayList<>();
            for (String path : paths) {
                for (List<ManifestEntry> side : List.of(reference, copy)) {
                    for (int times = random.nextInt(5) - 2; times > 0; times--) {
                        side.add(md5(path, random.nextInt(3)));
                    }
                }
            }
            FileListing expected = FileListing.of(reference);
            FileListing found = FileListing.of(copy);

            ManifestComparison comparison = ManifestComparison.of(expected, found);

            long extra = comparison.count(Kind.EXTRA);
            long ofReference = comparison.findings().stream()
                    .filter(finding -> finding.kind() != Kind.EXTRA)
                    .map(FileFinding::path)
                    .distinct()
                    .count();
            List<String> others = comparison.findings().stream()
                    .map(FileFinding::otherPath)
                    .filter(java.util.Objects::nonNull)
                    .toList();
            assertThat(others).as("seed %d", seed).doesNotHaveDuplicates();
            assertThat(comparison.count(Kind.SAME) + ofReference)
                    .as("seed %d", seed)
                    .isBetween((long) expected.size(), (long) expected.size() + found.size() - extra);
            assertThat(comparison.count(Kind.SAME)
                            + comparison.count(Kind.MOVED)
                            + comparison.count(Kind.SPELLED_OTHERWISE))
                    .as("seed %d: no more than a pairing by digest alone would give", seed)
                    .isLessThanOrEqualTo(mostPairs(reference, copy));
        }
    }

    /** Lists in ascending order are gone through side by side, others by an index: what is found is the same. */
    @Test
    void theOrderOfTheListsDoesNotMatter() {
        for (long seed = 1; seed <= 2_000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<ManifestEntry> reference = someOf(random);
            List<ManifestEntry> copy = someOf(random);

            ManifestComparison ascending = ManifestComparison.of(ofDocument(reference), ofDocument(copy));
            java.util.Collections.shuffle(reference, new java.util.Random(seed));
            java.util.Collections.shuffle(copy, new java.util.Random(-seed));
            ManifestComparison shuffled = ManifestComparison.of(ofDocument(reference), ofDocument(copy));

            for (Kind kind : Kind.values()) {
                assertThat(shuffled.count(kind)).as("seed %d, %s", seed, kind).isEqualTo(ascending.count(kind));
            }
            assertThat(shuffled.findings().stream().filter(finding -> finding.kind() != Kind.MOVED))
                    .as("seed %d", seed)
                    .containsExactlyInAnyOrderElementsOf(ascending.findings().stream()
                            .filter(finding -> finding.kind() != Kind.MOVED)
                            .toList());
        }
    }

    /** Some files in the order of their names, of which no two are spelled alike or hold the same. */
    private static List<ManifestEntry> someOf(SplittableRandom random) {
        List<ManifestEntry> files = new ArrayList<>();
        for (int number = 100; number < 200; number++) {
            if (random.nextInt(4) > 0) {
                files.add(md5("f" + number, random.nextInt(20) == 0 ? number - 100 : number));
            }
        }
        return files;
    }

    private static FileListing ofDocument(List<ManifestEntry> entries) {
        PackedEntries document = new PackedEntries();
        entries.forEach(document::add);
        return FileListing.of(document, new PartFilter("", List.of()));
    }

    private static long mostPairs(List<ManifestEntry> reference, List<ManifestEntry> copy) {
        long pairs = 0;
        for (int seed = 0; seed < 3; seed++) {
            Checksum checksum = digest(MD5, seed);
            pairs += Math.min(
                    reference.stream()
                            .filter(one -> one.checksums().contains(checksum))
                            .map(ManifestEntry::path)
                            .distinct()
                            .count(),
                    copy.stream()
                            .filter(one -> one.checksums().contains(checksum))
                            .map(ManifestEntry::path)
                            .distinct()
                            .count());
        }
        return pairs;
    }

    private static ManifestEntry renamed(String path, String previousPath, int seed) {
        return new ManifestEntry(path, null, List.of(digest(MD5, seed)), Action.NONE, 1, previousPath, null);
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
