package rollbook.inventory;

import java.util.Optional;
import java.util.UUID;

/**
 * Implemented by the module that keeps agreements with suppliers: asked before somebody corrects whether an item is hired,
 * from whom, for how much and until when. Called inside the transaction that holds the item's row lock.
 */
public interface TermsKeeper {
    /** @return the code of the agreement where that is changed instead, or nothing if there is none */
    Optional<String> agreementOf(UUID productionId, UUID itemId);
}
