package rollbook.verification;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Offload;
import rollbook.offload.Offloads;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Everything that a roll's page shows. */
@Component
class RollPage {
    private static final int DIFFERENCES_SHOWN = 5;

    private final Rolls rolls;
    private final Copies copies;
    private final Offloads offloads;
    private final CopyPlan plan;
    private final Assignments assignments;
    private final Verdicts verdicts;
    private final Clearances clearances;
    private final RollFacts facts;
    private final RollBoard board;
    private final RollTrail trail;
    private final VerdictStories stories;
    private final EncodingViews encodings;
    private final Display display;

    RollPage(
            Rolls rolls,
            Copies copies,
            Offloads offloads,
            CopyPlan plan,
            Assignments assignments,
            Verdicts verdicts,
            Clearances clearances,
            RollFacts facts,
            RollBoard board,
            RollTrail trail,
            VerdictStories stories,
            EncodingViews encodings,
            Display display) {
        this.rolls = rolls;
        this.copies = copies;
        this.offloads = offloads;
        this.plan = plan;
        this.assignments = assignments;
        this.verdicts = verdicts;
        this.clearances = clearances;
        this.facts = facts;
        this.board = board;
        this.trail = trail;
        this.stories = stories;
        this.encodings = encodings;
        this.display = display;
    }

    /** @param returns whether its medium comes back into use
     * @param differences the first of them; {@code more} of them are on the verdict's own page */
    record CopyView(
            Copy copy,
            @Nullable String legName,
            boolean returns,
            Verdict verdict,
            @Nullable CopyVerdict judged,
            List<String> reasons,
            String note,
            @Nullable RollDocument document,
            List<Verdicts.Difference> differences,
            long more) {}

    record View(
            String sentence,
            Roll roll,
            RollStanding standing,
            List<String> holds,
            List<String> proven,
            List<CopyView> copies,
            boolean hasCardDocument,
            List<RollDocument> documents,
            List<VerdictStories.Story> stories,
            EncodingViews.@Nullable EncodingView encoding,
            RollFacts.Facts facts,
            @Nullable String withoutProof,
            RollSafety safety,
            List<Offload> offloads,
            RollTrail.Picture way) {}

    /**
     * What the pages show on which somebody decides about the card.
     *
     * @param proven a sentence for each copy that counts
     * @param holds what holds the card, all of it
     * @param withoutProof who cleared the card without proof and why, if somebody did
     */
    record Brief(
            String sentence,
            Roll roll,
            RollStanding standing,
            List<String> proven,
            List<String> holds,
            @Nullable String withoutProof) {}

    Brief brief(Membership viewer, UUID rollId) {
        UUID production = viewer.productionId();
        Roll roll = rolls.get(production, rollId);
        Proof proof = clearances.proof(production, rollId);
        RollStanding standing = RollStanding.of(roll, proof);
        return new Brief(
                sentence(roll, standing),
                roll,
                standing,
                proven(proof),
                proof.holds().stream().map(board::says).toList(),
                withoutProof(facts.of(production, rollId)));
    }

    private String sentence(Roll roll, RollStanding standing) {
        String says = board.says(standing);
        return standing.isHeld() ? display.text("verification.roll.held", roll.cardCode(), says) : says;
    }

    private @Nullable String withoutProof(RollFacts.Facts known) {
        Clearance clearance = known.withoutProof();
        return clearance == null
                ? null
                : display.text(
                        "verification.override.says",
                        clearance.askedByName(),
                        clearance.clearedByName(),
                        clearance.overrideReason());
    }

    View view(Membership viewer, UUID rollId) {
        UUID production = viewer.productionId();
        Roll roll = rolls.get(production, rollId);
        List<CopyVerdict> history = verdicts.history(production, rollId);
        Map<UUID, CopyVerdict> newest = new LinkedHashMap<>();
        history.stream()
                .filter(verdict -> verdict.copyId() != null)
                .forEach(verdict -> newest.putIfAbsent(verdict.copyId(), verdict));
        Proof proof = new Proof(plan.rules(production), copies.ofRoll(production, rollId), newest);
        List<RollDocument> documents = assignments.ofRoll(production, rollId);
        RollStanding standing = RollStanding.of(roll, proof);
        RollFacts.Facts known = facts.of(production, rollId);
        return new View(
                sentence(roll, standing),
                roll,
                standing,
                proof.holds().stream().map(board::says).toList(),
                proven(proof),
                copyViews(production, proof, documents),
                documents.stream().anyMatch(one -> one.stands() && one.subject() == Subject.CARD),
                documents,
                stories.of(history, proof.copies(), documents),
                encodings.of(production, rollId, history, proof.copies(), documents),
                known,
                withoutProof(known),
                RollSafety.of(proof, known.habits()),
                offloads.ofRoll(production, rollId),
                trail.picture(roll, proof.copies(), history, known.clearances(), viewer.zone()));
    }

    /** One sentence for each copy that counts: for the caution beside clearing and erasing. */
    private List<String> proven(Proof proof) {
        return proof.counting().stream()
                .map(copy -> display.text(
                        "verification.proven-copy" + provenBy(copy),
                        copy.itemCode(),
                        proof.verdicts().get(copy.copyId()).counts().same()))
                .toList();
    }

    /** What the caution may say of a copy: only what was shown. */
    private static String provenBy(ClearingGate.CopyState copy) {
        if (copy.roundTrip() != RoundTrip.NOT_NEEDED) {
            return copy.roundTrip() == RoundTrip.PROVEN ? ".decoded" : ".not-decoded";
        }
        return copy.verdict() == Verdict.PROVEN ? "" : ".other-copy";
    }

    private List<CopyView> copyViews(UUID production, Proof proof, List<RollDocument> documents) {
        List<Long> ids = proof.verdicts().values().stream()
                .map(CopyVerdict::id)
                .filter(Objects::nonNull)
                .toList();
        Map<Long, List<Verdicts.Difference>> differences = verdicts.differences(production, ids, DIFFERENCES_SHOWN);
        List<CopyView> views = new ArrayList<>();
        for (Copy copy : proof.copies()) {
            views.add(copyView(copy, proof, documents, differences));
        }
        return views;
    }

    private CopyView copyView(
            Copy copy, Proof proof, List<RollDocument> documents, Map<Long, List<Verdicts.Difference>> differences) {
        Optional<Leg> leg = proof.legs().stream()
                .filter(candidate -> candidate.id().equals(copy.legId()))
                .findFirst();
        String legName = leg.map(Leg::name).orElse(null);
        boolean returns = leg.isPresent() && leg.get().returnsAfterDays() != null;
        CopyVerdict judged = proof.verdicts().get(copy.id());
        if (judged == null) {
            return new CopyView(copy, legName, returns, Verdict.UNKNOWN, null, List.of(), "", null, List.of(), 0);
        }
        List<Verdicts.Difference> shown = differences.getOrDefault(judged.id(), List.of());
        RollDocument document = documents.stream()
                .filter(RollDocument::stands)
                .filter(one -> one.partId().equals(judged.evidencePartId())
                        && copy.id().equals(one.copyId()))
                .findFirst()
                .orElse(null);
        CopyVerdict.Counts counts = judged.counts();
        long all = counts.wrong()
                + counts.missing()
                + counts.extra()
                + counts.moved()
                + counts.spelledOtherwise()
                + counts.sizeOnly()
                + counts.nameOnly();
        return new CopyView(
                copy,
                legName,
                returns,
                judged.verdict(),
                judged,
                ReasonKeys.texts(display, judged),
                board.note(judged),
                document,
                shown,
                all - shown.size());
    }
}
