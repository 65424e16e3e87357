package rollbook.offload;

import java.util.UUID;

/** An offload began to write a copy, over an earlier one if there was one. Heard in the same transaction. */
public record CopyWritten(UUID productionId, UUID rollId, UUID copyId) {}
