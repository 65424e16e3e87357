package rollbook.verification;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.Hold;
import rollbook.inventory.ItemHold;
import rollbook.offload.Rolls;
import rollbook.verification.LastProofs.OnMedium;

/**
 * A medium stays while a roll that was copied to it has no proven copy on another good one, and while something that was
 * sent about its rolls waits to be judged.
 */
@Component
class CopyHold implements ItemHold {
    private final Rolls rolls;
    private final LastProofs proofs;
    private final Unjudged unjudged;

    CopyHold(Rolls rolls, LastProofs proofs, Unjudged unjudged) {
        this.rolls = rolls;
        this.proofs = proofs;
        this.unjudged = unjudged;
    }

    /** Two media that prove the same roll must not leave at once, each on the strength of the other. */
    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void lockFirst(UUID productionId, Collection<UUID> itemIds) {
        rolls.lockCopiedTo(productionId, itemIds);
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Optional<Hold> reasonToKeep(UUID productionId, UUID itemId) {
        // Once more, for a roll that came onto the medium since; from here on the item's lock keeps others off.
        rolls.lockCopiedTo(productionId, List.of(itemId));
        List<OnMedium> here = proofs.of(productionId, List.of(itemId));
        List<OnMedium> last = here.stream().filter(OnMedium::isLast).toList();
        if (!last.isEmpty()) {
            return Optional.of(Hold.of(
                    "verification.hold.last-proof",
                    last.get(0).rollCode(),
                    last.size() - 1,
                    proofs.elsewhere(last.get(0))));
        }
        return !here.isEmpty()
                        && unjudged.isAnything(
                                productionId,
                                here.stream().map(OnMedium::rollId).toList())
                ? Optional.of(Hold.of("verification.hold.unjudged"))
                : Optional.empty();
    }
}
