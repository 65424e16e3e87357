package rollbook.verification;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.Leg;
import rollbook.verification.ClearingGate.CopyState;
import rollbook.verification.ClearingGate.Hold;

/** Everything that the clearing of one roll's card depends on, read together. */
record Proof(ClearingRules rules, List<Copy> copies, Map<UUID, CopyVerdict> verdicts) {

    List<Leg> legs() {
        return rules.legs();
    }

    /** What holds the card; empty if it may be cleared. */
    List<Hold> holds() {
        return ClearingGate.holds(rules.policy(), rules.legs(), states());
    }

    List<CopyState> states() {
        return copies.stream().map(this::state).toList();
    }

    private CopyState state(Copy copy) {
        CopyVerdict verdict = verdicts.get(copy.id());
        return new CopyState(
                copy.id(),
                copy.itemCode(),
                copy.itemId(),
                copy.itemKind(),
                copy.placeId(),
                copy.offSite(),
                copy.itemCondition() == Condition.GOOD,
                copy.legId(),
                copy.rendition(),
                verdict == null ? Verdict.UNKNOWN : verdict.verdict(),
                verdict == null ? 0 : verdict.counts().wrong(),
                verdict == null ? 0 : verdict.counts().missing());
    }

    /** The verdicts of the copies that count towards clearing. */
    List<Long> verdictIds() {
        return states().stream()
                .filter(CopyState::counts)
                .map(copy -> id(verdicts.get(copy.copyId())))
                .toList();
    }

    /** Of these copies, those that are proven no longer: the verdict that says so, by copy. */
    Map<UUID, Long> lost(Set<UUID> copyIds) {
        Map<UUID, Long> lost = new LinkedHashMap<>();
        verdicts.values().stream()
                .filter(verdict -> copyIds.contains(verdict.copyId()) && verdict.verdict() != Verdict.PROVEN)
                .forEach(verdict -> lost.put(verdict.copyId(), id(verdict)));
        return lost;
    }

    /** The policy in words that need no message file to be understood years later. */
    String policyOnRecord() {
        ClearingPolicy policy = rules.policy();
        return "proven copies as recorded: at least %d, on %d items, of %d kinds, at %d places%s; legs needed: %s"
                .formatted(
                        policy.provenCopies(),
                        policy.items(),
                        policy.mediaKinds(),
                        policy.places(),
                        policy.offSite() ? ", one off-site" : "",
                        rules.legs().stream()
                                .filter(Leg::neededToClear)
                                .map(Leg::name)
                                .collect(Collectors.joining(", ")));
    }

    private static long id(@Nullable CopyVerdict verdict) {
        if (verdict == null || verdict.id() == null) {
            throw new IllegalStateException("a verdict that was read has an id");
        }
        return verdict.id();
    }
}
