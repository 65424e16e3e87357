package rollbook.verification;

import java.util.ArrayList;
import java.util.LinkedHashMap;
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

    /**
     * Of every medium with a copy on it, by its id.
     *
     * @param copies all copies of the rolls
     */
    static Map<UUID, MediumProof> ofAll(
            ClearingRules rules, List<Roll> rolls, List<Copy> copies, Map<UUID, CopyVerdict> verdicts) {
        Map<UUID, List<Copy>> byRoll = copies.stream().collect(Collectors.groupingBy(Copy::rollId));
        Map<UUID, MediumProof> proofs = new LinkedHashMap<>();
        for (Roll roll : rolls) {
            List<Copy> ofRoll = byRoll.getOrDefault(roll.id(), List.of());
            Proof proof = new Proof(rules, ofRoll, verdicts);
            Map<UUID, MediaKind> media = new LinkedHashMap<>();
            proof.present().forEach(copy -> media.put(copy.itemId(), copy.itemKind()));
            media.forEach((itemId, kind) -> proofs.computeIfAbsent(itemId, item -> new MediumProof(new ArrayList<>()))
                    .rolls
                    .add(new OfRoll(roll.id(), roll.code(), proof.without(itemId, kind))));
        }
        return proofs;
    }

    static MediumProof of(
            UUID itemId, ClearingRules rules, List<Roll> rolls, List<Copy> copies, Map<UUID, CopyVerdict> verdicts) {
        return ofAll(rules, rolls, copies, verdicts).getOrDefault(itemId, new MediumProof(List.of()));
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
