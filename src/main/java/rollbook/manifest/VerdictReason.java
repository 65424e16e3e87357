package rollbook.manifest;

import java.util.EnumSet;
import java.util.Set;

/** Why a verdict is what it is, or what a reader of it should know besides. */
public enum VerdictReason {
    REFERENCE_EMPTY,
    EVIDENCE_EMPTY,
    DIFFERENT_BYTES,
    ALL_DIFFER_ALGORITHM_ASSUMED,
    LISTED_TWICE,
    MISSING_FILES,
    NAME_ONLY,
    SIZE_ONLY,
    REFERENCE_WITHOUT_CHECKSUMS,
    EVIDENCE_WITHOUT_CHECKSUMS,
    REFERENCE_HAS_FAILED_FILES,
    SAME_DOCUMENT_AS_REFERENCE,
    SAME_DOCUMENT_AS_CARD,
    SAME_DOCUMENT_AS_ENCODER,
    SAME_DOCUMENT_FOR_TWO_COPIES,
    SAME_READING_AS_REFERENCE,
    SAME_READING_FOR_TWO_COPIES,
    SAME_READING_AS_BEFORE,
    NO_CARD_CHECKSUMS,
    NO_ENCODER_CHECKSUMS,
    NO_READ_BACK,
    FLATTENED,
    BYTE_ORDER_REVERSED,
    ROUND_TRIP_PROVEN,
    NO_ROUND_TRIP,
    SAME_LINES_FOR_TWO_COPIES,
    SPELLED_OTHERWISE,
    MOVED_FILES,
    EXTRA_FILES;

    private static final Set<VerdictReason> DEPENDENCE = EnumSet.range(SAME_DOCUMENT_AS_REFERENCE, FLATTENED);

    /** Whether it is a ground on which equal digests don't speak for a copy on their own. */
    public boolean isDependence() {
        return DEPENDENCE.contains(this);
    }

    public String messageKey() {
        return "manifest.reason." + name();
    }
}
