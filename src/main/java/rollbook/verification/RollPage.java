package rollbook.verification;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
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
    private final Evidence evidence;
    private final Verdicts verdicts;
    private final Clearances clearances;
    private final RollFacts facts;
    private final RollBoard board;
    private final Display display;

    RollPage(
            Rolls rolls,
            Copies copies,
            Offloads offloads,
            CopyPlan plan,
            Evidence evidence,
            Verdicts verdicts,
            Clearances clearances,
            RollFacts facts,
            RollBoard board,
            Display display) {
        this.rolls = rolls;
        this.copies = copies;
        this.offloads = offloads;
        this.plan = plan;
        this.evidence = evidence;
        this.verdicts = verdicts;
        this.clearances = clearances;
        this.facts = facts;
        this.board = board;
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
            Evidence.@Nullable Piece document,
            List<Verdicts.Difference> differences,
            long more) {}

    record HistoryLine(CopyVerdict verdict, String itemCode, List<String> reasons) {}

    record View(
            String sentence,
            Roll roll,
            RollStanding standing,
            List<String> holds,
            List<String> proven,
            List<CopyView> copies,
            List<Evidence.Piece> cardDocuments,
            List<Evidence.Piece> documents,
            List<HistoryLine> history,
            RollFacts.Facts facts,
            @Nullable String withoutProof,
            RollSafety safety,
            List<Offload> offloads) {}

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
        history.forEach(verdict -> newest.putIfAbsent(verdict.copyId(), verdict));
        Proof proof = new Proof(plan.rules(production), copies.ofRoll(production, rollId), newest);
        List<Evidence.Piece> pieces = evidence.ofRoll(production, rollId);
        RollStanding standing = RollStanding.of(roll, proof);
        RollFacts.Facts known = facts.of(production, rollId);
        return new View(
                sentence(roll, standing),
                roll,
                standing,
                proof.holds().stream().map(board::says).toList(),
                proven(proof),
                copyViews(production, proof, pieces),
                pieces.stream().filter(piece -> piece.subject() == Subject.CARD).toList(),
                pieces,
                historyLines(history, proof.copies()),
                known,
                withoutProof(known),
                RollSafety.of(proof, known.habits()),
                offloads.ofRoll(production, rollId));
    }

    /** One sentence for each copy that is proven: for the caution beside clearing and erasing. */
    private List<String> proven(Proof proof) {
        return proof.counting().stream()
                .map(copy -> display.text(
                        "verification.proven-copy",
                        copy.itemCode(),
                        proof.verdicts().get(copy.copyId()).counts().same()))
                .toList();
    }

    private List<CopyView> copyViews(UUID production, Proof proof, List<Evidence.Piece> pieces) {
        List<Long> ids = proof.verdicts().values().stream()
                .map(CopyVerdict::id)
                .filter(java.util.Objects::nonNull)
                .toList();
        Map<Long, List<Verdicts.Difference>> differences = verdicts.differences(production, ids, DIFFERENCES_SHOWN);
        List<CopyView> views = new ArrayList<>();
        for (Copy copy : proof.copies()) {
            views.add(copyView(copy, proof, pieces, differences));
        }
        return views;
    }

    private CopyView copyView(
            Copy copy, Proof proof, List<Evidence.Piece> pieces, Map<Long, List<Verdicts.Difference>> differences) {
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
        Evidence.Piece document = pieces.stream()
                .filter(piece -> piece.partId().equals(judged.evidencePartId())
                        && copy.id().equals(piece.copyId()))
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
                reasons(judged),
                board.note(judged),
                document,
                shown,
                all - shown.size());
    }

    private List<HistoryLine> historyLines(List<CopyVerdict> history, List<Copy> all) {
        Map<UUID, String> itemCodes = new LinkedHashMap<>();
        all.forEach(copy -> itemCodes.put(copy.id(), copy.itemCode()));
        return history.stream()
                .map(verdict ->
                        new HistoryLine(verdict, itemCodes.getOrDefault(verdict.copyId(), ""), reasons(verdict)))
                .toList();
    }

    List<String> reasons(CopyVerdict verdict) {
        return verdict.reasons().stream()
                .map(reason -> ReasonKeys.text(display, reason))
                .toList();
    }
}
