package rollbook.manifest;

import static rollbook.manifest.FileFinding.Kind.DIFFERENT;
import static rollbook.manifest.FileFinding.Kind.EXTRA;
import static rollbook.manifest.FileFinding.Kind.LISTED_TWICE;
import static rollbook.manifest.FileFinding.Kind.MISSING;
import static rollbook.manifest.FileFinding.Kind.MOVED;
import static rollbook.manifest.FileFinding.Kind.NAME_ONLY;
import static rollbook.manifest.FileFinding.Kind.SIZE_ONLY;
import static rollbook.manifest.FileFinding.Kind.SPELLED_OTHERWISE;

import java.util.ArrayList;
import java.util.List;
import rollbook.manifest.EvidenceFacts.Tie;
import rollbook.manifest.ManifestHeader.Process;
import rollbook.manifest.ReferenceFacts.Origin;

/**
 * The verdict on one copy from one document, with its reasons, the deciding ones first.
 *
 * <p>The worst finding decides: other bytes, then missing files, then files of which nothing or only the size could be
 * compared. Only where every file of the reference is there with an equal digest does it matter where the evidence
 * comes from. Moved files count as there; extra files never lower a verdict; both are told.
 */
public record CopyJudgement(Verdict verdict, List<VerdictReason> reasons) {
    public CopyJudgement {
        reasons = List.copyOf(reasons);
    }

    public static CopyJudgement judge(ReferenceFacts reference, EvidenceFacts evidence, ManifestComparison comparison) {
        List<VerdictReason> dependence = dependence(reference, evidence, comparison);
        List<VerdictReason> reasons = new ArrayList<>(findingReasons(comparison));
        reasons.addAll(dependence);
        addRemarks(reference, evidence, comparison, reasons);
        return new CopyJudgement(verdict(comparison, dependence), reasons);
    }

    private static Verdict verdict(ManifestComparison comparison, List<VerdictReason> dependence) {
        if (comparison.referenceFiles() == 0) {
            return Verdict.UNKNOWN;
        }
        if (has(comparison, DIFFERENT) || has(comparison, LISTED_TWICE)) {
            return Verdict.FAILED;
        }
        if (has(comparison, MISSING)) {
            return Verdict.INCOMPLETE;
        }
        if (has(comparison, NAME_ONLY)) {
            return Verdict.UNKNOWN;
        }
        if (has(comparison, SIZE_ONLY)) {
            return Verdict.SIZE_ONLY;
        }
        return dependence.isEmpty() ? Verdict.PROVEN : Verdict.CONSISTENT;
    }

    private static List<VerdictReason> findingReasons(ManifestComparison comparison) {
        List<VerdictReason> reasons = new ArrayList<>();
        add(reasons, comparison.referenceFiles() == 0, VerdictReason.REFERENCE_EMPTY);
        add(reasons, comparison.copyFiles() == 0, VerdictReason.EVIDENCE_EMPTY);
        add(reasons, has(comparison, DIFFERENT), VerdictReason.DIFFERENT_BYTES);
        add(reasons, comparison.mayBeOtherAlgorithm(), VerdictReason.ALL_DIFFER_ALGORITHM_ASSUMED);
        add(reasons, has(comparison, LISTED_TWICE), VerdictReason.LISTED_TWICE);
        add(reasons, has(comparison, MISSING), VerdictReason.MISSING_FILES);
        add(reasons, has(comparison, NAME_ONLY), VerdictReason.NAME_ONLY);
        add(reasons, has(comparison, SIZE_ONLY), VerdictReason.SIZE_ONLY);
        boolean referenceWithout = comparison.referenceFiles() > 0 && !comparison.referenceHasChecksums();
        boolean copyWithout = comparison.copyFiles() > 0 && !comparison.copyHasChecksums();
        add(reasons, referenceWithout, VerdictReason.REFERENCE_WITHOUT_CHECKSUMS);
        add(reasons, copyWithout, VerdictReason.EVIDENCE_WITHOUT_CHECKSUMS);
        add(reasons, comparison.failedInReference(), VerdictReason.REFERENCE_HAS_FAILED_FILES);
        return reasons;
    }

    /** Every ground on which equal digests don't speak for the copy on their own. */
    private static List<VerdictReason> dependence(
            ReferenceFacts reference, EvidenceFacts evidence, ManifestComparison comparison) {
        List<VerdictReason> reasons = new ArrayList<>();
        boolean itself = reference.documentSha256().equalsIgnoreCase(evidence.documentSha256());
        boolean repeatsSource = evidence.process() == Process.TRANSFER && comparison.equalWithoutReadBack() > 0;
        add(reasons, itself, VerdictReason.SAME_DOCUMENT_AS_REFERENCE);
        evidence.ties().stream().filter(Tie::lowers).map(Tie::reason).forEach(reasons::add);
        add(reasons, reference.origin() == Origin.COPY, VerdictReason.NO_CARD_CHECKSUMS);
        add(reasons, reference.origin() == Origin.ENCODED_COPY, VerdictReason.NO_ENCODER_CHECKSUMS);
        add(reasons, repeatsSource, VerdictReason.NO_READ_BACK);
        add(reasons, evidence.process() == Process.FLATTEN, VerdictReason.FLATTENED);
        return reasons;
    }

    private static void addRemarks(
            ReferenceFacts reference,
            EvidenceFacts evidence,
            ManifestComparison comparison,
            List<VerdictReason> reasons) {
        add(reasons, comparison.bytesReversed(), VerdictReason.BYTE_ORDER_REVERSED);
        switch (reference.roundTrip()) {
            case PROVEN -> reasons.add(VerdictReason.ROUND_TRIP_PROVEN);
            case ABSENT -> reasons.add(VerdictReason.NO_ROUND_TRIP);
            case NOT_NEEDED -> {
                // nothing to say of files as recorded
            }
        }
        evidence.ties().stream().filter(tie -> !tie.lowers()).map(Tie::reason).forEach(reasons::add);
        add(reasons, has(comparison, SPELLED_OTHERWISE), VerdictReason.SPELLED_OTHERWISE);
        add(reasons, has(comparison, MOVED), VerdictReason.MOVED_FILES);
        add(reasons, has(comparison, EXTRA), VerdictReason.EXTRA_FILES);
    }

    private static boolean has(ManifestComparison comparison, FileFinding.Kind kind) {
        return comparison.count(kind) > 0;
    }

    private static void add(List<VerdictReason> reasons, boolean holds, VerdictReason reason) {
        if (holds) {
            reasons.add(reason);
        }
    }
}
