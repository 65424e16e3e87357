package rollbook.verification;

import java.util.List;
import java.util.Objects;
import rollbook.manifest.EvidenceFacts;
import rollbook.manifest.ReferenceFacts;
import rollbook.offload.Copy;
import rollbook.production.Rendition;
import rollbook.verification.Evidence.Piece;

/**
 * Which documents speak for a copy, and which it is compared with: a pure function of what was assigned to the roll.
 *
 * @param reference the parts that the copy is compared with, the first one uploaded first
 * @param evidence the parts of the one document that speaks for the copy, or of those that are one statement
 * @param pieces everything that speaks of the copy's rendition
 */
record EvidenceChoice(Copy copy, List<Piece> reference, List<Piece> evidence, List<Piece> pieces) {

    static EvidenceChoice of(Copy copy, List<Piece> ofRoll, List<Copy> copies) {
        List<Piece> pieces = ofRendition(copy.rendition(), ofRoll, copies);
        return new EvidenceChoice(copy, reference(pieces), evidenceOf(copy, pieces), pieces);
    }

    /** Nothing to compare. */
    boolean isEmpty() {
        return evidence.isEmpty() || reference.isEmpty();
    }

    Piece firstReference() {
        return reference.get(0);
    }

    Piece firstEvidence() {
        return evidence.get(0);
    }

    ReferenceFacts referenceFacts() {
        Piece first = firstReference();
        ReferenceFacts.Origin origin =
                first.subject() == Subject.CARD ? ReferenceFacts.Origin.CARD : ReferenceFacts.Origin.COPY;
        return copy.rendition() == Rendition.ENCODED
                ? new ReferenceFacts(origin, first.sha256(), ReferenceFacts.RoundTrip.ABSENT)
                : ReferenceFacts.asRecorded(origin, first.sha256());
    }

    EvidenceFacts evidenceFacts() {
        Piece spoken = firstEvidence();
        boolean forCard = pieces.stream().anyMatch(piece -> piece.subject() == Subject.CARD && isSpoken(piece));
        boolean forAnotherCopy = pieces.stream()
                .anyMatch(piece ->
                        piece.subject() == Subject.COPY && !copy.id().equals(piece.copyId()) && isSpoken(piece));
        return new EvidenceFacts(spoken.sha256(), forCard, forAnotherCopy, spoken.process());
    }

    private boolean isSpoken(Piece piece) {
        return evidence.stream().anyMatch(spoken -> spoken.sha256().equals(piece.sha256()));
    }

    /** The newest document about this copy, if it came after the copy's last writing began; it may have several parts. */
    private static List<Piece> evidenceOf(Copy copy, List<Piece> pieces) {
        List<Piece> valid = pieces.stream()
                .filter(piece -> copy.id().equals(piece.copyId()))
                .filter(piece -> !piece.uploadedAt().isBefore(copy.writtenFrom()))
                .toList();
        return valid.isEmpty() ? valid : ofDocument(valid.get(valid.size() - 1), valid);
    }

    private static List<Piece> ofDocument(Piece one, List<Piece> pieces) {
        return pieces.stream()
                .filter(piece ->
                        piece.statementId().equals(one.statementId()) && Objects.equals(piece.copyId(), one.copyId()))
                .toList();
    }

    /** An encoded rendition has other bytes than the card: only documents of its own copies can be compared with it. */
    private static List<Piece> ofRendition(Rendition rendition, List<Piece> pieces, List<Copy> copies) {
        return pieces.stream()
                .filter(piece -> piece.subject() == Subject.CARD
                        ? rendition == Rendition.AS_RECORDED
                        : copies.stream()
                                .anyMatch(copy -> copy.id().equals(piece.copyId()) && copy.rendition() == rendition))
                .toList();
    }

    /**
     * All manifests of the card itself, each perhaps of another algorithm; where they contradict each other, that is
     * found. Without any, the first document about a copy, and then nothing is proven.
     */
    private static List<Piece> reference(List<Piece> pieces) {
        List<Piece> ofCard =
                pieces.stream().filter(piece -> piece.subject() == Subject.CARD).toList();
        return ofCard.isEmpty() && !pieces.isEmpty() ? ofDocument(pieces.get(0), pieces) : ofCard;
    }
}
