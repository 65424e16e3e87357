package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.Manifests.assumed;
import static rollbook.manifest.Manifests.digest;
import static rollbook.manifest.Manifests.file;
import static rollbook.manifest.Manifests.listing;
import static rollbook.manifest.Manifests.md5;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.manifest.EvidenceFacts.Tie;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;
import rollbook.manifest.ReferenceFacts.Origin;
import rollbook.manifest.ReferenceFacts.RoundTrip;

/** Each rule of the verdict, attacked from the side on which it would claim too much. */
class CopyJudgementTests {
    private static final ReferenceFacts CARD = ReferenceFacts.asRecorded(Origin.CARD, "c0");
    private static final EvidenceFacts LIST = EvidenceFacts.of("e1", Process.NONE);
    private static final FileListing REFERENCE = listing(md5("a", 1), md5("b", 2));
    private static final FileListing EQUAL = listing(md5("a", 1), md5("b", 2));

    @Test
    void equalDigestsFromAnIndependentDocumentProveTheCopy() {
        assertThat(judge(CARD, LIST, REFERENCE, EQUAL)).isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of()));
    }

    /** Each line may be in its own order; the digests are those of "abc" and of no bytes in the xxHash documents. */
    @Test
    void saysThatDigestsArePrintedInTheOtherByteOrder() throws Exception {
        FileListing canonical = FileListing.of(Manifests.read("44bc2cf5ad770999  a\nef46db3751d8e999  b\n", "a.xxh64")
                .entries());
        FileListing mixed = FileListing.of(Manifests.read("990977adf52cbc44  a\nef46db3751d8e999  b\n", "b.xxh64")
                .entries());

        assertThat(judge(CARD, LIST, canonical, mixed))
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of(VerdictReason.BYTE_ORDER_REVERSED)));
    }

    @Test
    void otherBytesFail() {
        check(listing(md5("a", 1), md5("b", 3)), Verdict.FAILED, VerdictReason.DIFFERENT_BYTES);
    }

    @Test
    void aContradictionFails() {
        check(listing(md5("a", 1), md5("b", 2), md5("b", 3)), Verdict.FAILED, VerdictReason.LISTED_TWICE);
    }

    @Test
    void aMissingFileMakesTheCopyIncomplete() {
        check(listing(md5("a", 1)), Verdict.INCOMPLETE, VerdictReason.MISSING_FILES);
    }

    @Test
    void theWorstFindingDecides() {
        check(listing(md5("a", 9)), Verdict.FAILED, VerdictReason.DIFFERENT_BYTES, VerdictReason.MISSING_FILES);
        FileListing sized = listing(file("a", 5L, digest(MD5, 1)), file("b", 5L, digest(MD5, 1)));
        assertThat(judge(CARD, LIST, sized, listing(file("a", 5L, digest(SHA1, 1))))
                        .verdict())
                .isEqualTo(Verdict.INCOMPLETE);
        assertThat(judge(CARD, LIST, sized, listing(file("a", 5L), file("b", 6L)))
                        .verdict())
                .isEqualTo(Verdict.FAILED);
    }

    @Test
    void oneFileOfWhichOnlyTheSizeAgreesIsEnough() {
        FileListing reference = listing(md5("a", 1), file("b", 5L, digest(MD5, 2)));
        CopyJudgement judgement = judge(CARD, LIST, reference, listing(md5("a", 1), file("b", 5L, digest(SHA1, 2))));

        assertThat(judgement).isEqualTo(new CopyJudgement(Verdict.SIZE_ONLY, List.of(VerdictReason.SIZE_ONLY)));
    }

    @Test
    void namesAloneProveNothing() {
        check(listing(md5("a", 1), file("b", null, digest(SHA1, 2))), Verdict.UNKNOWN, VerdictReason.NAME_ONLY);
        check(
                listing(file("a", 1L), file("b", 1L)),
                Verdict.UNKNOWN,
                VerdictReason.NAME_ONLY,
                VerdictReason.EVIDENCE_WITHOUT_CHECKSUMS);
    }

    @Test
    void anEmptyReferenceProvesNothing() {
        assertThat(judge(CARD, LIST, listing(), EQUAL))
                .isEqualTo(new CopyJudgement(
                        Verdict.UNKNOWN, List.of(VerdictReason.REFERENCE_EMPTY, VerdictReason.EXTRA_FILES)));
        assertThat(judge(CARD, LIST, listing(), listing()).verdict()).isEqualTo(Verdict.UNKNOWN);
    }

    @Test
    void emptyEvidenceProvesNothing() {
        check(listing(), Verdict.INCOMPLETE, VerdictReason.EVIDENCE_EMPTY, VerdictReason.MISSING_FILES);
    }

    @Test
    void extraFilesAreToldButLowerNothing() {
        check(listing(md5("a", 1), md5("b", 2), md5("c", 3)), Verdict.PROVEN, VerdictReason.EXTRA_FILES);
    }

    @Test
    void movedFilesAreThereAndTold() {
        check(listing(md5("a", 1), md5("x/b", 2)), Verdict.PROVEN, VerdictReason.MOVED_FILES);
    }

    @Test
    void filesSpelledOtherwiseAreThereAndTold() {
        check(listing(md5("A", 1), md5("b", 2)), Verdict.PROVEN, VerdictReason.SPELLED_OTHERWISE);
    }

    @Test
    void theReferenceCannotProveACopy() {
        EvidenceFacts itself = EvidenceFacts.of("C0", Process.NONE);

        assertThat(judge(CARD, itself, REFERENCE, EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.SAME_DOCUMENT_AS_REFERENCE)));
    }

    @Test
    void aDocumentThatAlsoSpeaksForTheCardOrAnotherCopyIsNotIndependent() {
        assertThat(judge(
                        CARD,
                        new EvidenceFacts("e1", Set.of(Tie.SAME_DOCUMENT_AS_CARD), Process.NONE),
                        REFERENCE,
                        EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.SAME_DOCUMENT_AS_CARD)));
        assertThat(judge(
                        CARD,
                        new EvidenceFacts("e1", Set.of(Tie.SAME_DOCUMENT_FOR_TWO_COPIES), Process.NONE),
                        REFERENCE,
                        EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.SAME_DOCUMENT_FOR_TWO_COPIES)));
    }

    @Test
    void withoutChecksumsFromTheCardACopyIsConsistentAtBest() {
        ReferenceFacts otherCopy = ReferenceFacts.asRecorded(Origin.COPY, "c0");

        assertThat(judge(otherCopy, LIST, REFERENCE, EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.NO_CARD_CHECKSUMS)));
        assertThat(judge(otherCopy, LIST, REFERENCE, listing(md5("a", 9), md5("b", 2))))
                .isEqualTo(new CopyJudgement(
                        Verdict.FAILED, List.of(VerdictReason.DIFFERENT_BYTES, VerdictReason.NO_CARD_CHECKSUMS)));
    }

    /** ASC MHL 1.0, 6.4.6 and 6.5.1: a transfer's original digests are the source's; verified ones were read back. */
    @Test
    void aTransferProvesOnlyWhatItReadBack() {
        assertThat(mhl(Process.TRANSFER, Action.ORIGINAL, Action.ORIGINAL))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.NO_READ_BACK)));
        assertThat(mhl(Process.TRANSFER, Action.VERIFIED, Action.ORIGINAL).verdict())
                .as("one file without a read-back")
                .isEqualTo(Verdict.CONSISTENT);
        assertThat(mhl(Process.TRANSFER, Action.VERIFIED, Action.VERIFIED))
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of()));
        assertThat(mhl(Process.IN_PLACE, Action.ORIGINAL, Action.ORIGINAL))
                .as("computed from the copy itself")
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of()));
    }

    @Test
    void aMovedFileOfATransferNeedsAReadBackToo() {
        FileListing copy = listing(
                file("a", null, Action.VERIFIED, digest(MD5, 1)), file("x", null, Action.ORIGINAL, digest(MD5, 2)));

        assertThat(judge(CARD, EvidenceFacts.of("e1", Process.TRANSFER), REFERENCE, copy))
                .isEqualTo(new CopyJudgement(
                        Verdict.CONSISTENT, List.of(VerdictReason.NO_READ_BACK, VerdictReason.MOVED_FILES)));
    }

    /** ASC MHL 1.0, 6.4.6: flatten computes nothing. */
    @Test
    void aFlattenedListIsConsistentAtBest() {
        assertThat(mhl(Process.FLATTEN, Action.VERIFIED, Action.VERIFIED))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.FLATTENED)));
    }

    @Test
    void failedDigestsOfTheReferenceProveNothing() {
        FileListing reference = listing(md5("a", 1), file("b", null, Action.FAILED, digest(MD5, 2)));

        assertThat(judge(CARD, LIST, reference, EQUAL))
                .isEqualTo(new CopyJudgement(
                        Verdict.UNKNOWN, List.of(VerdictReason.NAME_ONLY, VerdictReason.REFERENCE_HAS_FAILED_FILES)));
    }

    @Test
    void aReferenceWithoutDigestsProvesNothing() {
        FileListing sizes = listing(file("a", 5L), file("b", 5L));
        FileListing copy = listing(file("a", 5L, digest(MD5, 1)), file("b", 5L, digest(MD5, 1)));

        assertThat(judge(CARD, LIST, sizes, copy))
                .isEqualTo(new CopyJudgement(
                        Verdict.SIZE_ONLY,
                        List.of(VerdictReason.SIZE_ONLY, VerdictReason.REFERENCE_WITHOUT_CHECKSUMS)));
    }

    @Test
    void saysWhenAWrongGuessOfTheAlgorithmMayBeTheCause() {
        FileListing guessed = listing(file("a", null, assumed(MD5, 1)), file("b", null, assumed(MD5, 2)));

        assertThat(judge(CARD, LIST, guessed, listing(md5("a", 8), md5("b", 9))).reasons())
                .containsExactly(VerdictReason.DIFFERENT_BYTES, VerdictReason.ALL_DIFFER_ALGORITHM_ASSUMED);
        assertThat(judge(CARD, LIST, guessed, listing(md5("a", 1), md5("b", 9))).reasons())
                .containsExactly(VerdictReason.DIFFERENT_BYTES);
        assertThat(judge(CARD, LIST, REFERENCE, listing(md5("a", 8), md5("b", 9)))
                        .reasons())
                .containsExactly(VerdictReason.DIFFERENT_BYTES);
    }

    @Test
    void anEncodedCopyIsProvenAgainstItsReferenceAndSaysWhenTheRoundTripIsMissing() {
        ReferenceFacts without = new ReferenceFacts(Origin.ENCODING, "c0", RoundTrip.ABSENT);
        ReferenceFacts with = new ReferenceFacts(Origin.ENCODING, "c0", RoundTrip.PROVEN);

        assertThat(judge(without, LIST, REFERENCE, EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of(VerdictReason.NO_ROUND_TRIP)));
        assertThat(judge(with, LIST, REFERENCE, EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of(VerdictReason.ROUND_TRIP_PROVEN)));
    }

    /** The worked example: the first generation repeats the source, the second was read back. */
    @Test
    void judgesTheWorkedExample() throws Exception {
        Manifests.Document first = Manifests.read(Manifests.example(Manifests.FIRST_GENERATION), "1.mhl");
        Manifests.Document second = Manifests.read(Manifests.example(Manifests.SECOND_GENERATION), "2.mhl");
        FileListing reference = FileListing.of(first.entries());

        assertThat(judge(
                        CARD,
                        EvidenceFacts.of("e1", second.header().process()),
                        reference,
                        FileListing.of(second.entries())))
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of()));
        assertThat(judge(CARD, EvidenceFacts.of("e1", first.header().process()), reference, reference))
                .isEqualTo(new CopyJudgement(Verdict.CONSISTENT, List.of(VerdictReason.NO_READ_BACK)));
    }

    /** Every tie, origin, process and finding with every other: the verdict of the table in docs/maths.md, nothing else. */
    @Test
    void everyCombinationOfGroundsHasTheVerdictOfTheTable() {
        Map<FileListing, Verdict> findings = new LinkedHashMap<>();
        findings.put(EQUAL, Verdict.PROVEN);
        findings.put(listing(md5("a", 1), md5("x/b", 2), md5("c", 3)), Verdict.PROVEN);
        findings.put(listing(md5("a", 1), file("b", null, digest(SHA1, 2))), Verdict.UNKNOWN);
        findings.put(listing(md5("a", 1)), Verdict.INCOMPLETE);
        findings.put(listing(md5("a", 1), md5("b", 3)), Verdict.FAILED);
        findings.put(listing(md5("a", 1), md5("b", 2), md5("b", 3)), Verdict.FAILED);
        int combinations = 0;
        for (Map.Entry<FileListing, Verdict> finding : findings.entrySet()) {
            for (Set<Tie> ties : subsets()) {
                for (Origin origin : Origin.values()) {
                    for (Process process : Process.values()) {
                        for (RoundTrip roundTrip : RoundTrip.values()) {
                            Verdict verdict = judge(
                                            new ReferenceFacts(origin, "c0", roundTrip),
                                            new EvidenceFacts("e1", ties, process),
                                            REFERENCE,
                                            finding.getKey())
                                    .verdict();
                            assertThat(verdict)
                                    .as("%s %s %s %s", ties, origin, process, roundTrip)
                                    .isEqualTo(
                                            finding.getValue() == Verdict.PROVEN && depends(ties, origin, process)
                                                    ? Verdict.CONSISTENT
                                                    : finding.getValue());
                            combinations++;
                        }
                    }
                }
            }
        }
        assertThat(combinations).isEqualTo(findings.size() * 128 * 4 * 4 * 3);
    }

    /** design of the verdicts: all equal is proven only if the card or the encoder was hashed and nothing is shared. */
    private static boolean depends(Set<Tie> ties, Origin origin, Process process) {
        boolean remarkOnly = ties.isEmpty() || ties.equals(Set.of(Tie.SAME_LINES_FOR_TWO_COPIES));
        boolean fromSource = origin == Origin.CARD || origin == Origin.ENCODING;
        boolean read = process == Process.NONE || process == Process.IN_PLACE;
        return !(remarkOnly && fromSource && read);
    }

    @Test
    void aVerdictIsConsistentExactlyWhenAReasonOfDependenceIsGiven() {
        for (Set<Tie> ties : subsets()) {
            for (Origin origin : Origin.values()) {
                for (Process process : Process.values()) {
                    CopyJudgement judgement = judge(
                            ReferenceFacts.asRecorded(origin, "c0"),
                            new EvidenceFacts("e1", ties, process),
                            REFERENCE,
                            EQUAL);
                    assertThat(judgement.reasons().stream().anyMatch(VerdictReason::isDependence))
                            .as("%s", judgement)
                            .isEqualTo(judgement.verdict() == Verdict.CONSISTENT);
                }
            }
        }
    }

    @Test
    void oneMoreGroundOfDependenceNeverRaisesAVerdict() {
        for (FileListing copy : List.of(EQUAL, listing(md5("a", 1)), listing(md5("a", 1), md5("b", 3)))) {
            for (Set<Tie> ties : subsets()) {
                Verdict without = judge(CARD, new EvidenceFacts("e1", ties, Process.NONE), REFERENCE, copy)
                        .verdict();
                for (Tie one : Tie.values()) {
                    Set<Tie> more = new HashSet<>(ties);
                    more.add(one);
                    Verdict with = judge(CARD, new EvidenceFacts("e1", more, Process.NONE), REFERENCE, copy)
                            .verdict();
                    assertThat(without.atLeast(with)).as("%s and %s", ties, one).isTrue();
                }
            }
        }
    }

    private static List<Set<Tie>> subsets() {
        List<Set<Tie>> subsets = new ArrayList<>();
        for (int bits = 0; bits < 1 << Tie.values().length; bits++) {
            Set<Tie> ties = EnumSet.noneOf(Tie.class);
            for (Tie tie : Tie.values()) {
                if ((bits >> tie.ordinal() & 1) == 1) {
                    ties.add(tie);
                }
            }
            subsets.add(ties);
        }
        return subsets;
    }

    @Test
    void aListThatOnlyCommentsTellFromAnotherCopysIsToldAndProves() {
        EvidenceFacts told = new EvidenceFacts("e1", Set.of(Tie.SAME_LINES_FOR_TWO_COPIES), Process.NONE);

        assertThat(judge(CARD, told, REFERENCE, EQUAL))
                .isEqualTo(new CopyJudgement(Verdict.PROVEN, List.of(VerdictReason.SAME_LINES_FOR_TWO_COPIES)));
    }

    /** Whatever happens to a copy, it is never proven while a file of the reference lacks equal bytes in it. */
    @Test
    void damageIsNeverProven() {
        long seed = 4_711;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 3_000; i++) {
            List<ManifestEntry> files = new ArrayList<>();
            for (int f = 0; f < 1 + random.nextInt(6); f++) {
                files.add(file("f" + f, 10L + f, digest(MD5, f), digest(SHA1, f)));
            }
            List<ManifestEntry> damaged = new ArrayList<>(files);
            int at = random.nextInt(files.size());
            ManifestEntry victim = damaged.remove(at);
            switch (random.nextInt(5)) {
                case 0 -> damaged.add(file(victim.path(), victim.sizeBytes(), digest(MD5, 99), digest(SHA1, at)));
                case 1 -> damaged.add(file(victim.path(), victim.sizeBytes()));
                case 2 -> damaged.add(file(victim.path(), 1L, victim.checksums().get(0)));
                case 3 -> damaged.addAll(List.of(victim, md5(victim.path(), 98)));
                default -> damaged.add(file("other", victim.sizeBytes(), digest(MD5, at), digest(SHA1, 97)));
            }
            Verdict verdict = judge(CARD, LIST, FileListing.of(files), FileListing.of(damaged))
                    .verdict();
            assertThat(verdict).as("seed %d, case %d", seed, i).isNotIn(Verdict.PROVEN, Verdict.CONSISTENT);
        }
    }

    @Test
    void verdictsHaveAnOrderOfStrength() {
        assertThat(Verdict.PROVEN.atLeast(Verdict.CONSISTENT)).isTrue();
        assertThat(Verdict.CONSISTENT.atLeast(Verdict.CONSISTENT)).isTrue();
        assertThat(Verdict.CONSISTENT.atLeast(Verdict.PROVEN)).isFalse();
        assertThat(Verdict.UNKNOWN.atLeast(Verdict.SIZE_ONLY)).isFalse();
        assertThat(Verdict.values())
                .containsExactly(
                        Verdict.PROVEN,
                        Verdict.CONSISTENT,
                        Verdict.SIZE_ONLY,
                        Verdict.INCOMPLETE,
                        Verdict.FAILED,
                        Verdict.UNKNOWN);
    }

    private static CopyJudgement mhl(Process process, Action first, Action second) {
        FileListing copy = listing(file("a", null, first, digest(MD5, 1)), file("b", null, second, digest(MD5, 2)));
        return judge(CARD, EvidenceFacts.of("e1", process), REFERENCE, copy);
    }

    private static void check(FileListing copy, Verdict verdict, VerdictReason... reasons) {
        assertThat(judge(CARD, LIST, REFERENCE, copy)).isEqualTo(new CopyJudgement(verdict, List.of(reasons)));
    }

    private static CopyJudgement judge(
            ReferenceFacts reference, EvidenceFacts evidence, FileListing expected, FileListing copy) {
        return CopyJudgement.judge(reference, evidence, ManifestComparison.of(expected, copy));
    }
}
