package rollbook.verification;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.ClearingRules;
import rollbook.production.MediaKind;

/** Everything that the clearing of a drive, array or tape depends on: what is proven elsewhere of every roll on it. */
record MediumProof(List<OfRoll> rolls) {

    /** @param proof of the roll's copies on other media */
    record OfRoll(UUID rollId, String rollCode, Proof proof) {}

    /** @param copies all copies of the rolls, this medium's among them */
    static MediumProof of(
            ClearingRules rules,
            UUID itemId,
            MediaKind kind,
            List<Roll> rolls,
            List<Copy> copies,
            Map<UUID, CopyVerdict> verdicts) {
        Map<UUID, List<Copy>> byRoll = copies.stream().collect(Collectors.groupingBy(Copy::rollId));
        return new MediumProof(rolls.stream()
                .map(roll -> new OfRoll(
                        roll.id(),
                        roll.code(),
                        new Proof(rules, byRoll.getOrDefault(roll.id(), List.of()), verdicts).without(itemId, kind)))
                .toList());
    }

    /** Whether every roll on it is proven elsewhere, and there is one. */
    boolean mayBeCleared() {
        return !rolls.isEmpty() && held().isEmpty();
    }

    /** The rolls that hold the medium. */
    List<OfRoll> held() {
        return rolls.stream().filter(roll -> !roll.proof().holds().isEmpty()).toList();
    }

    /** The verdicts that a clearance relies on. */
    List<Long> verdictIds() {
        return rolls.stream()
                .flatMap(roll -> roll.proof().verdictIds().stream())
                .toList();
    }
}
