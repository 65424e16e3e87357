package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.inventory.CardState;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.CopyPlan;
import rollbook.production.PolicyTrial;
import rollbook.verification.ClearingGate.Hold;

/** Looks at every medium of a kind twice, once by the policy that holds and once by a draft. */
@Component
class PolicyTrials implements PolicyTrial {
    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final CopyPlan plan;
    private final RollBoard board;

    PolicyTrials(Rolls rolls, Copies copies, Verdicts verdicts, CopyPlan plan, RollBoard board) {
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.plan = plan;
        this.board = board;
    }

    @Override
    public Outcome outcome(UUID productionId, ClearingPolicy draft) {
        ClearingRules now = plan.rules(productionId);
        ClearingRules then = now.with(draft);
        Map<UUID, CopyVerdict> judged = verdicts.all(productionId);
        Map<UUID, List<Copy>> byRoll = copies.list(productionId).stream().collect(Collectors.groupingBy(Copy::rollId));
        List<Change> held = new ArrayList<>();
        List<Change> freed = new ArrayList<>();
        for (Roll roll : rolls.list(productionId)) {
            boolean copied = roll.cardState() == CardState.HELD || roll.cardState() == CardState.CLEAR_TO_ERASE;
            if (roll.onCard() && copied) {
                List<Copy> ofRoll = byRoll.getOrDefault(roll.id(), List.of());
                List<Hold> before = new Proof(now, ofRoll, judged).holds();
                List<Hold> after = new Proof(then, ofRoll, judged).holds();
                if (before.isEmpty() && !after.isEmpty()) {
                    held.add(change(roll, after));
                } else if (!before.isEmpty() && after.isEmpty() && roll.cardState() == CardState.HELD) {
                    freed.add(change(roll, before));
                }
            }
        }
        return new Outcome(held, freed);
    }

    private Change change(Roll roll, List<Hold> holds) {
        return new Change(roll.cardCode(), "rolls/" + roll.id(), board.says(holds.get(0)));
    }
}
