package rollbook.verification;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.manifest.CopyJudgement;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.FileListing;
import rollbook.manifest.ManifestComparison;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.RollWarning;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.CopyWritten;
import rollbook.offload.Rolls;
import rollbook.production.Rendition;
import rollbook.verification.Evidence.Piece;
import rollbook.web.NotFoundException;

/**
 * Judges every copy of a roll, and its decoded files, by what has been uploaded and assigned. A verdict is put on record when it says
 * something else than the newest one did; then clearances that relied on it are looked at again.
 */
@Service
class RollJudge {
    private final Rolls rolls;
    private final Copies copies;
    private final Evidence evidence;
    private final Verdicts verdicts;
    private final AlgorithmStatements algorithms;
    private final ClipSummaries clips;
    private final Clearances clearances;
    private final MediumClearances mediumClearances;
    private final Clock clock;

    RollJudge(
            Rolls rolls,
            Copies copies,
            Evidence evidence,
            Verdicts verdicts,
            AlgorithmStatements algorithms,
            ClipSummaries clips,
            Clearances clearances,
            MediumClearances mediumClearances,
            Clock clock) {
        this.rolls = rolls;
        this.copies = copies;
        this.evidence = evidence;
        this.verdicts = verdicts;
        this.algorithms = algorithms;
        this.clips = clips;
        this.clearances = clearances;
        this.mediumClearances = mediumClearances;
        this.clock = clock;
    }

    @Transactional(rollbackFor = Exception.class)
    public void judge(UUID productionId, UUID rollId) throws IOException {
        try {
            rolls.lock(productionId, rollId);
        } catch (NotFoundException e) {
            // The loading was taken back before the job came to it.
            return;
        }
        List<Piece> pieces = evidence.ofRoll(productionId, rollId);
        Map<UUID, CopyVerdict> before = verdicts.ofRoll(productionId, rollId);
        Listings listings = new Listings();
        List<Copy> ofRoll = copies.ofRoll(productionId, rollId);
        RoundTrip roundTrip = roundTrip(productionId, rollId, pieces, ofRoll, listings);
        List<Piece> encoded = new ArrayList<>(EvidenceChoice.encoderOutput(pieces));
        for (Copy copy : ofRoll) {
            // An erased copy has its verdict, and no document can change that; only writing it again can.
            if (!copy.isErased()) {
                EvidenceChoice choice = EvidenceChoice.of(copy, pieces, ofRoll);
                CopyVerdict unknown = CopyVerdict.unknown(copy.id(), CopyVerdict.Reason.NO_EVIDENCE, clock.instant());
                Optional<CopyVerdict> last = Optional.ofNullable(before.get(copy.id()));
                Verdict verdict = judge(productionId, rollId, unknown, choice, roundTrip, last, listings);
                if (copy.rendition() == Rendition.ENCODED && verdict.atLeast(Verdict.CONSISTENT)) {
                    encoded.addAll(choice.evidence());
                }
            }
        }
        rolls.measuredEncoded(productionId, rollId, encodedBytes(encoded));
        lookAgain(productionId, rollId);
    }

    private void lookAgain(UUID productionId, UUID rollId) {
        clearances.lookAgain(productionId, rollId);
        mediumClearances.lookAgain(productionId, rollId);
    }

    /** Judges the decoded files: proven equal to the card's, they prove the encoding of every encoded copy. */
    private RoundTrip roundTrip(
            UUID productionId, UUID rollId, List<Piece> pieces, List<Copy> ofRoll, Listings listings)
            throws IOException {
        EvidenceChoice decoded = EvidenceChoice.ofDecoded(pieces, ofRoll);
        CopyVerdict unknown = CopyVerdict.unknown(null, CopyVerdict.Reason.NOT_DECODED, clock.instant());
        Optional<CopyVerdict> before = verdicts.newestOfDecoded(productionId, rollId);
        Verdict verdict = judge(productionId, rollId, unknown, decoded, RoundTrip.NOT_NEEDED, before, listings);
        return verdict == Verdict.PROVEN ? RoundTrip.PROVEN : RoundTrip.ABSENT;
    }

    /** The size of a roll's encoded files by the first document that gives sizes; the others tell it once more. */
    private static long encodedBytes(List<Piece> pieces) {
        Map<UUID, Long> byDocument = pieces.stream()
                .collect(Collectors.groupingBy(
                        Piece::documentId, LinkedHashMap::new, Collectors.summingLong(Piece::sizeBytes)));
        return byDocument.values().stream()
                .filter(bytes -> bytes > 0)
                .findFirst()
                .orElse(0L);
    }

    /** @param unknown what holds where there is nothing to compare */
    private Verdict judge(
            UUID productionId,
            UUID rollId,
            CopyVerdict unknown,
            EvidenceChoice choice,
            RoundTrip roundTrip,
            Optional<CopyVerdict> before,
            Listings listings)
            throws IOException {
        if (choice.isEmpty()) {
            // What was never judged has no verdict to lower; that the copy is being written again stays its reason.
            if (before.filter(verdict -> verdict.evidencePartId() != null).isPresent()) {
                verdicts.append(productionId, rollId, unknown, List.of());
            }
            return unknown.verdict();
        }
        ManifestComparison comparison =
                ManifestComparison.of(listings.of(choice.reference()), listings.of(choice.evidence()));
        CopyJudgement judgement =
                CopyJudgement.judge(choice.referenceFacts(roundTrip), choice.evidenceFacts(), comparison);
        CopyVerdict verdict = new CopyVerdict(
                null,
                unknown.copyId(),
                judgement.verdict(),
                reasons(productionId, choice, judgement, comparison),
                choice.firstReference().partId(),
                choice.firstEvidence().partId(),
                counts(comparison),
                clock.instant(),
                choice.firstEvidence().uploadedAt());
        if (before.filter(verdict::saysTheSameAs).isEmpty()) {
            verdicts.append(productionId, rollId, verdict, comparison.findings());
        }
        return verdict.verdict();
    }

    /** The judgement's reasons, how algorithms became known, and what a person should look at in the roll itself. */
    private List<String> reasons(
            UUID productionId, EvidenceChoice choice, CopyJudgement judgement, ManifestComparison comparison) {
        List<UUID> documents = Stream.concat(choice.reference().stream(), choice.evidence().stream())
                .map(Piece::documentId)
                .distinct()
                .toList();
        AlgorithmStatements.Grounds grounds = algorithms.grounds(documents);
        List<String> reasons = new ArrayList<>();
        judgement.reasons().forEach(reason -> reasons.add(reason.name()));
        if (grounds.open() && comparison.algorithmSettled()) {
            reasons.add(CopyVerdict.Reason.ALGORITHM_BY_AGREEMENT.name());
        }
        grounds.sayers().forEach(name -> reasons.add(CopyVerdict.Reason.ALGORITHM_SAID.by(name)));
        clips.warnings(productionId, parts(choice.reference())).stream()
                .map(RollWarning::kind)
                .filter(RollWarning.Kind::isRemark)
                .distinct()
                .sorted()
                .forEach(kind -> reasons.add(kind.name()));
        return reasons;
    }

    private static List<UUID> parts(List<Piece> pieces) {
        return pieces.stream().map(Piece::partId).toList();
    }

    private static CopyVerdict.Counts counts(ManifestComparison comparison) {
        return new CopyVerdict.Counts(
                comparison.count(Kind.SAME),
                comparison.count(Kind.DIFFERENT),
                comparison.count(Kind.MISSING),
                comparison.count(Kind.EXTRA),
                comparison.count(Kind.MOVED),
                comparison.count(Kind.SIZE_ONLY),
                comparison.count(Kind.NAME_ONLY),
                comparison.count(Kind.LISTED_TWICE),
                comparison.count(Kind.SPELLED_OTHERWISE));
    }

    /** A copy that is being written over is proven no longer, whatever was proven of what was there before. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onCopyWritten(CopyWritten written) {
        Optional<CopyVerdict> before = verdicts.newest(written.productionId(), written.copyId());
        if (before.isPresent()) {
            Instant now = clock.instant();
            verdicts.append(
                    written.productionId(),
                    written.rollId(),
                    CopyVerdict.unknown(written.copyId(), CopyVerdict.Reason.WRITTEN_AGAIN, now),
                    List.of());
            lookAgain(written.productionId(), written.rollId());
        }
    }

    /** Reads each document's parts once for all the copies of a roll. */
    private final class Listings {
        private final Map<List<UUID>, FileListing> byParts = new HashMap<>();

        FileListing of(List<Piece> pieces) throws IOException {
            List<UUID> parts = parts(pieces);
            FileListing known = byParts.get(parts);
            if (known == null) {
                known = evidence.listing(pieces);
                byParts.put(parts, known);
            }
            return known;
        }
    }
}
