package rollbook.manifest;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * Where the evidence for a copy comes from.
 *
 * @param documentSha256 the document's identity, lower-case hexadecimal
 * @param ties to other documents of the same rendition and roll; that it covers other rolls too is none
 */
public record EvidenceFacts(String documentSha256, Set<Tie> ties, ManifestHeader.Process process) {

    /** What the document has in common with another one, so that it may not come from a reading of its own. */
    public enum Tie {
        /** It was also sent as the manifest of the card. */
        SAME_DOCUMENT_AS_CARD(VerdictReason.SAME_DOCUMENT_AS_CARD),
        /** It was also sent as the manifest of the encoder's output. */
        SAME_DOCUMENT_AS_ENCODER(VerdictReason.SAME_DOCUMENT_AS_ENCODER),
        /** It was also sent for another copy. */
        SAME_DOCUMENT_FOR_TWO_COPIES(VerdictReason.SAME_DOCUMENT_FOR_TWO_COPIES),
        /** It equals one of the reference but for who wrote it, when and where. */
        SAME_READING_AS_REFERENCE(VerdictReason.SAME_READING_AS_REFERENCE),
        /** It equals one of another copy but for who wrote it, when and where. */
        SAME_READING_FOR_TWO_COPIES(VerdictReason.SAME_READING_FOR_TWO_COPIES),
        /** It equals, but for that, one of this copy from before the copy was written again. */
        SAME_READING_AS_BEFORE(VerdictReason.SAME_READING_AS_BEFORE),
        /** A list that differs from another copy's in nothing but comments, line ends and order: its sender's word. */
        SAME_LINES_FOR_TWO_COPIES(VerdictReason.SAME_LINES_FOR_TWO_COPIES);

        private final VerdictReason reason;

        Tie(VerdictReason reason) {
            this.reason = reason;
        }

        VerdictReason reason() {
            return reason;
        }

        /** Whether it makes equal digests prove less, and isn't only to be told. */
        boolean lowers() {
            return this != SAME_LINES_FOR_TWO_COPIES;
        }
    }

    public EvidenceFacts {
        ties = ties.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(ties));
    }

    /** Evidence from a document that has nothing in common with others. */
    public static EvidenceFacts of(String documentSha256, ManifestHeader.Process process) {
        return new EvidenceFacts(documentSha256, Set.of(), process);
    }
}
