package rollbook.verification;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.inventory.CardState;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.CopyPlan;
import rollbook.production.MediaKind;
import rollbook.production.PolicyTrial;
import rollbook.verification.ClearingGate.Hold;
import rollbook.web.Display;

/** Looks at every medium of a kind twice, once by the policy that holds and once by a draft. */
@Component
class PolicyTrials implements PolicyTrial {
    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final CopyPlan plan;
    private final RollBoard board;
    private final Display display;

    PolicyTrials(Rolls rolls, Copies copies, Verdicts verdicts, CopyPlan plan, RollBoard board, Display display) {
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.plan = plan;
        this.board = board;
        this.display = display;
    }

    @Override
    public Outcome outcome(UUID productionId, ClearingPolicy draft) {
        ClearingRules now = plan.rules(productionId);
        List<Roll> all = rolls.list(productionId);
        List<Copy> allCopies = copies.list(productionId);
        Map<UUID, CopyVerdict> judged = verdicts.all(productionId);
        Trial trial = new Trial();
        if (draft.subject() == MediaKind.CARD) {
            tryCards(trial, now, now.with(draft), all, allCopies, judged);
        } else {
            Map<UUID, MediumProof> before = MediumProof.ofAll(now, all, allCopies, judged);
            Map<UUID, MediumProof> after = MediumProof.ofAll(now.with(draft), all, allCopies, judged);
            mediaOf(draft.subject(), allCopies)
                    .forEach((itemId, code) -> trial.add(
                            code,
                            "media/" + itemId + "/clear",
                            says(before.get(itemId)),
                            says(after.get(itemId)),
                            true));
        }
        return new Outcome(trial.held, trial.freed);
    }

    private void tryCards(
            Trial trial,
            ClearingRules now,
            ClearingRules then,
            List<Roll> all,
            List<Copy> allCopies,
            Map<UUID, CopyVerdict> judged) {
        Map<UUID, List<Copy>> byRoll = allCopies.stream().collect(Collectors.groupingBy(Copy::rollId));
        for (Roll roll : all) {
            boolean held = roll.cardState() == CardState.HELD;
            if (roll.onCard() && (held || roll.cardState() == CardState.CLEAR_TO_ERASE)) {
                List<Copy> ofRoll = byRoll.getOrDefault(roll.id(), List.of());
                trial.add(
                        roll.cardCode(),
                        "rolls/" + roll.id(),
                        says(new Proof(now, ofRoll, judged)),
                        says(new Proof(then, ofRoll, judged)),
                        held);
            }
        }
    }

    /** The codes of the media of a kind that hold a copy, by their ids. */
    private static Map<UUID, String> mediaOf(MediaKind kind, List<Copy> allCopies) {
        Map<UUID, String> codes = new LinkedHashMap<>();
        allCopies.stream()
                .filter(copy -> copy.itemKind() == kind && !copy.isErased())
                .sorted(Comparator.comparing(Copy::itemCode))
                .forEach(copy -> codes.put(copy.itemId(), copy.itemCode()));
        return codes;
    }

    /** What holds the card, in words; empty if nothing does. */
    private String says(Proof proof) {
        List<Hold> holds = proof.holds();
        return holds.isEmpty() ? "" : board.says(holds.get(0));
    }

    private String says(@Nullable MediumProof proof) {
        if (proof == null || proof.held().isEmpty()) {
            return "";
        }
        MediumProof.OfRoll roll = proof.held().get(0);
        return display.text("verification.medium.held", roll.rollCode(), says(roll.proof()));
    }

    /** Media that a draft makes a difference to, as they are found. */
    private static final class Trial {
        private final List<Change> held = new ArrayList<>();
        private final List<Change> freed = new ArrayList<>();

        void add(String code, String path, String before, String after, boolean isHeld) {
            if (before.isEmpty() && !after.isEmpty()) {
                held.add(new Change(code, path, after));
            } else if (!before.isEmpty() && after.isEmpty() && isHeld) {
                freed.add(new Change(code, path, before));
            }
        }
    }
}
