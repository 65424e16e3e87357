package rollbook.manifest;

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
    SAME_DOCUMENT_FOR_TWO_COPIES,
    NO_CARD_CHECKSUMS,
    NO_READ_BACK,
    FLATTENED,
    BYTE_ORDER_REVERSED,
    NO_ROUND_TRIP,
    MOVED_FILES,
    EXTRA_FILES;

    public String messageKey() {
        return "manifest.reason." + name();
    }
}
