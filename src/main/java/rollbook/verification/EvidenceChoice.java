package rollbook.verification;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import rollbook.manifest.EvidenceFacts;
import rollbook.manifest.EvidenceFacts.Tie;
import rollbook.manifest.ManifestHeader.Process;
import rollbook.manifest.ReferenceFacts;
import rollbook.manifest.ReferenceFacts.Origin;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.offload.Copy;
import rollbook.production.Rendition;
import rollbook.verification.Evidence.Piece;

/**
 * Which documents speak for a copy or for decoded files, and which they are compared with: a pure function of what was
 * assigned to the roll.
 *
 * @param rendition whose files are compared
 * @param validFrom documents sent before say nothing any more
 * @param reference the parts that are compared with, the first one uploaded first
 * @param evidence the parts of the one document that speaks, or of those that are one statement
 * @param pieces everything that speaks of the rendition
 */
record EvidenceChoice(
        Rendition rendition, Instant validFrom, List<Piece> reference, List<Piece> evidence, List<Piece> pieces) {

    static EvidenceChoice of(Copy copy, List<Piece> ofRoll, List<Copy> copies) {
        List<Piece> pieces = ofRendition(copy.rendition(), ofRoll, copies);
        return new EvidenceChoice(
                copy.rendition(),
                copy.writtenFrom(),
                reference(copy.rendition(), pieces),
                newest(pieces, piece -> copy.id().equals(piece.copyId()), copy.writtenFrom()),
                pieces);
    }

    /**
     * What speaks for the round trip: decoded files are compared like a copy as recorded. They must have come after the
     * encoder's output, or they were decoded from an earlier one.
     */
    static EvidenceChoice ofDecoded(List<Piece> ofRoll, List<Copy> copies) {
        List<Piece> output = encoderOutput(ofRoll);
        Instant encoded = output.isEmpty() ? Instant.EPOCH : output.get(0).uploadedAt();
        List<Piece> pieces = ofRendition(Rendition.AS_RECORDED, ofRoll, copies);
        return new EvidenceChoice(
                Rendition.AS_RECORDED,
                encoded,
                reference(Rendition.AS_RECORDED, pieces),
                newest(pieces, piece -> piece.subject() == Subject.DECODED, encoded),
                pieces);
    }

    /** The first document of what the encoder put out. */
    static List<Piece> encoderOutput(List<Piece> ofRoll) {
        return ofRoll.stream()
                .filter(piece -> piece.subject() == Subject.ENCODED_OUTPUT)
                .findFirst()
                .map(first -> ofDocument(first, ofRoll))
                .orElse(List.of());
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

    /** @param roundTrip whether the roll's encoding is proven; of no concern to files as recorded */
    ReferenceFacts referenceFacts(RoundTrip roundTrip) {
        Piece first = firstReference();
        boolean encoded = rendition == Rendition.ENCODED;
        Origin origin = switch (first.subject()) {
            case CARD -> Origin.CARD;
            case ENCODED_OUTPUT -> Origin.ENCODING;
            case COPY, DECODED, NOT_A_ROLL -> encoded ? Origin.ENCODED_COPY : Origin.COPY;
        };
        return new ReferenceFacts(origin, first.sha256(), encoded ? roundTrip : RoundTrip.NOT_NEEDED);
    }

    EvidenceFacts evidenceFacts() {
        Set<Tie> ties = EnumSet.noneOf(Tie.class);
        for (Piece other : pieces) {
            if (evidence.stream().anyMatch(spoken -> spoken.sha256().equals(other.sha256()))) {
                addSameDocument(other, ties);
            } else if (evidence.stream().anyMatch(spoken -> spoken.hasBodyOf(other))) {
                addSameReading(other, ties);
            }
        }
        return new EvidenceFacts(firstEvidence().sha256(), ties, firstEvidence().process());
    }

    private void addSameDocument(Piece other, Set<Tie> ties) {
        switch (other.subject()) {
            case CARD -> ties.add(Tie.SAME_DOCUMENT_AS_CARD);
            case ENCODED_OUTPUT -> ties.add(Tie.SAME_DOCUMENT_AS_ENCODER);
            case COPY, DECODED, NOT_A_ROLL -> {
                if (!speaksOfTheSame(other)) {
                    ties.add(Tie.SAME_DOCUMENT_FOR_TWO_COPIES);
                }
            }
        }
    }

    /**
     * An ASC MHL document says by its host and date that it is a reading of its own, and both are easily touched up. A
     * list says nothing of itself but in comments: they are its sender's word, which stands and is told.
     */
    private void addSameReading(Piece other, Set<Tie> ties) {
        boolean ofCopy = other.copyId() != null || other.subject() == Subject.DECODED;
        if (firstEvidence().process() == Process.NONE) {
            if (ofCopy && !speaksOfTheSame(other)) {
                ties.add(Tie.SAME_LINES_FOR_TWO_COPIES);
            }
        } else if (!ofCopy) {
            ties.add(Tie.SAME_READING_AS_REFERENCE);
        } else if (!speaksOfTheSame(other)) {
            ties.add(Tie.SAME_READING_FOR_TWO_COPIES);
        } else if (other.uploadedAt().isBefore(validFrom)) {
            ties.add(Tie.SAME_READING_AS_BEFORE);
        }
    }

    private boolean speaksOfTheSame(Piece other) {
        return sameSubject(firstEvidence(), other);
    }

    private static boolean sameSubject(Piece one, Piece other) {
        return one.subject() == other.subject() && Objects.equals(one.copyId(), other.copyId());
    }

    /** The newest of some documents that is still valid; it may have several parts. */
    private static List<Piece> newest(List<Piece> pieces, Predicate<Piece> wanted, Instant validFrom) {
        List<Piece> valid = pieces.stream()
                .filter(wanted)
                .filter(piece -> !piece.uploadedAt().isBefore(validFrom))
                .toList();
        return valid.isEmpty() ? valid : ofDocument(valid.get(valid.size() - 1), valid);
    }

    private static List<Piece> ofDocument(Piece one, List<Piece> pieces) {
        return pieces.stream()
                .filter(piece -> piece.statementId().equals(one.statementId()) && sameSubject(piece, one))
                .toList();
    }

    /** An encoded rendition has other bytes than the card: only the encoder's output and encoded copies compare. */
    private static List<Piece> ofRendition(Rendition rendition, List<Piece> pieces, List<Copy> copies) {
        return pieces.stream()
                .filter(piece -> switch (piece.subject()) {
                    case CARD, DECODED -> rendition == Rendition.AS_RECORDED;
                    case ENCODED_OUTPUT -> rendition == Rendition.ENCODED;
                    case COPY ->
                        copies.stream()
                                .anyMatch(copy -> copy.id().equals(piece.copyId()) && copy.rendition() == rendition);
                    case NOT_A_ROLL -> false;
                })
                .toList();
    }

    /**
     * All manifests of the card itself, or of the encoder's output, each perhaps of another algorithm; where they
     * contradict each other, that is found. Without any, the first document about a copy, and then nothing is proven.
     */
    private static List<Piece> reference(Rendition rendition, List<Piece> pieces) {
        Subject source = rendition == Rendition.AS_RECORDED ? Subject.CARD : Subject.ENCODED_OUTPUT;
        List<Piece> ofSource =
                pieces.stream().filter(piece -> piece.subject() == source).toList();
        if (!ofSource.isEmpty()) {
            return ofSource;
        }
        return pieces.stream()
                .filter(piece -> piece.subject() == Subject.COPY)
                .findFirst()
                .map(first -> ofDocument(first, pieces))
                .orElse(List.of());
    }
}
