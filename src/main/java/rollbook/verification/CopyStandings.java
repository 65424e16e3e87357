package rollbook.verification;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.ClearingRules;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.web.Display;

/** How every copy and every medium of a production stands, for those who read its rolls and copies anyway. */
@Service
public class CopyStandings {
    private final Verdicts verdicts;
    private final MediumClearances clearances;
    private final CopyPlan plan;
    private final RollBoard board;
    private final Display display;

    CopyStandings(Verdicts verdicts, MediumClearances clearances, CopyPlan plan, RollBoard board, Display display) {
        this.verdicts = verdicts;
        this.clearances = clearances;
        this.plan = plan;
        this.board = board;
        this.display = display;
    }

    /**
     * @param legs of the copy plan
     * @param copies by copy
     * @param media by item; those without a copy are missing
     */
    public record Standings(List<Leg> legs, Map<UUID, CopyStanding> copies, Map<UUID, MediumStanding> media) {
        public CopyStanding of(Copy copy) {
            return copies.getOrDefault(copy.id(), CopyStanding.UNKNOWN);
        }

        public MediumStanding ofMedium(UUID itemId) {
            return media.getOrDefault(itemId, MediumStanding.EMPTY);
        }
    }

    /**
     * In three statements.
     *
     * @param rolls all of the production
     * @param copies all of theirs
     */
    public Standings of(UUID productionId, List<Roll> rolls, List<Copy> copies) {
        ClearingRules rules = plan.rules(productionId);
        Map<UUID, CopyVerdict> judged = verdicts.all(productionId);
        Set<UUID> cleared = clearances.cleared(productionId);
        Map<UUID, List<Copy>> byRoll = copies.stream().collect(Collectors.groupingBy(Copy::rollId));
        Map<UUID, CopyStanding> ofCopies = new LinkedHashMap<>();
        byRoll.values().forEach(ofRoll -> {
            Proof proof = new Proof(rules, ofRoll, judged);
            ofRoll.forEach(copy -> ofCopies.put(copy.id(), standing(proof.state(copy))));
        });
        Map<UUID, MediumStanding> ofMedia = new LinkedHashMap<>();
        MediumProof.ofAll(rules, rolls, copies, judged)
                .forEach((itemId, proof) -> ofMedia.put(itemId, standing(proof, cleared.contains(itemId))));
        return new Standings(rules.legs(), ofCopies, ofMedia);
    }

    private static CopyStanding standing(ClearingGate.CopyState copy) {
        return new CopyStanding(copy.verdict(), copy.isProven(), copy.isKnownBad(), copy.checkedAt());
    }

    private MediumStanding standing(MediumProof proof, boolean cleared) {
        return new MediumStanding(
                MediumStanding.State.of(proof, cleared),
                proof.rolls().size(),
                proof.held().stream().map(this::held).toList());
    }

    /** What a roll that holds its medium waits for. */
    String held(MediumProof.OfRoll roll) {
        return display.text(
                "verification.medium.held",
                roll.rollCode(),
                board.says(roll.proof().holds().get(0)));
    }
}
