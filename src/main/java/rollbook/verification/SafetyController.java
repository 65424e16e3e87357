package rollbook.verification;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.ClearingRules;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.production.Production;
import rollbook.production.Productions;
import rollbook.verification.SafetyLevel.Missing;
import rollbook.web.Display;

/** How safe the production's copies are: as safe as the roll that is the least so. */
@Controller
class SafetyController {
    private static final int NAMED = 50;

    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final CopyPlan plan;
    private final Productions productions;
    private final Rechecks rechecks;
    private final Display display;

    SafetyController(
            Rolls rolls,
            Copies copies,
            Verdicts verdicts,
            CopyPlan plan,
            Productions productions,
            Rechecks rechecks,
            Display display) {
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.plan = plan;
        this.productions = productions;
        this.rechecks = rechecks;
        this.display = display;
    }

    record View(String sentence, int rolls, long lackThreeTwoOne, List<Scale> scales) {}

    /**
     * One scale of levels.
     *
     * @param lowest the level that every roll reaches
     * @param missing what the rolls on it lack for the next, in words
     * @param holding the rolls on it, as many as are named; {@code more} are not
     */
    record Scale(String name, int lowest, List<String> missing, List<Roll> holding, int more) {}

    @GetMapping("/p/{production}/safety")
    String safety(Membership membership, Model model) {
        model.addAttribute("view", view(membership.productionId())).addAttribute("place", "rolls");
        return "verification/safety";
    }

    private View view(UUID productionId) {
        Map<Roll, RollSafety> safety = ofRolls(productionId);
        if (safety.isEmpty()) {
            return new View(display.text("verification.safety.sentence.none"), 0, 0, List.of());
        }
        Scale storage = scale("storage", safety, RollSafety::storage);
        Scale integrity = scale("integrity", safety, RollSafety::integrity);
        return new View(
                display.text("verification.safety.sentence", safety.size(), storage.lowest(), integrity.lowest()),
                safety.size(),
                safety.values().stream().filter(roll -> !roll.threeTwoOne()).count(),
                List.of(storage, integrity));
    }

    /** Of every roll that has left its camera. */
    private Map<Roll, RollSafety> ofRolls(UUID productionId) {
        ClearingRules rules = plan.rules(productionId);
        Production production = productions.get(productionId);
        Habits habits = new Habits(production.virusChecked(), production.writeBlocked(), rechecks.plan(productionId));
        Map<UUID, CopyVerdict> judged = verdicts.all(productionId);
        Map<UUID, List<Copy>> byRoll = copies.list(productionId).stream().collect(Collectors.groupingBy(Copy::rollId));
        Map<Roll, RollSafety> safety = new LinkedHashMap<>();
        for (Roll roll : rolls.list(productionId)) {
            if (roll.pulledAt() != null) {
                List<Copy> ofRoll = byRoll.getOrDefault(roll.id(), List.of());
                Map<UUID, CopyVerdict> itsVerdicts = ofRoll.stream()
                        .filter(copy -> judged.containsKey(copy.id()))
                        .collect(Collectors.toMap(Copy::id, copy -> judged.get(copy.id())));
                safety.put(roll, RollSafety.of(new Proof(rules, ofRoll, itsVerdicts), habits));
            }
        }
        return safety;
    }

    private Scale scale(String name, Map<Roll, RollSafety> safety, Function<RollSafety, SafetyLevel> scale) {
        int lowest = safety.values().stream()
                .mapToInt(roll -> scale.apply(roll).reached())
                .min()
                .orElse(0);
        List<Roll> holding = safety.entrySet().stream()
                .filter(roll -> scale.apply(roll.getValue()).reached() == lowest)
                .map(Map.Entry::getKey)
                .sorted(Comparator.comparing(Roll::code))
                .toList();
        List<String> missing = holding.stream()
                .flatMap(roll -> scale.apply(safety.get(roll)).missing().stream())
                .map(this::says)
                .distinct()
                .toList();
        return new Scale(
                name,
                lowest,
                missing,
                holding.subList(0, Math.min(NAMED, holding.size())),
                Math.max(0, holding.size() - NAMED));
    }

    private String says(Missing missing) {
        return display.text(missing.key(), missing.args().toArray());
    }
}
