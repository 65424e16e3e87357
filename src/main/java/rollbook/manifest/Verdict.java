package rollbook.manifest;

/**
 * What the manifests prove of a copy, declared from the strongest to the weakest; {@link #UNKNOWN} stands last because
 * it claims nothing at all.
 */
public enum Verdict {
    /** Every file of the reference is there with an equal digest, and the evidence is independent. */
    PROVEN,
    /** The same, but evidence and reference are not independent of each other. */
    CONSISTENT,
    /** Every file is there; of at least one only the size could be compared. */
    SIZE_ONLY,
    /** Files of the reference are missing. */
    INCOMPLETE,
    /** Files have other bytes, or the evidence contradicts itself. */
    FAILED,
    /** Nothing was sent, or nothing could be compared. */
    UNKNOWN;

    public String messageKey() {
        return "manifest.verdict." + name();
    }

    /** Whether this verdict is as strong as the other or stronger. */
    public boolean atLeast(Verdict other) {
        return compareTo(other) <= 0;
    }
}
