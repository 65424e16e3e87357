package rollbook.production;

import java.util.UUID;

/** The copy plan or the clearing policy of a production has changed. Heard in the same transaction. */
public record CopyPlanChanged(UUID productionId) {}
