package rollbook.offload;

import java.util.UUID;

/** A roll was loaded, pulled, measured or corrected. Heard in the same transaction. */
public record RollChanged(UUID productionId, UUID rollId) {}
