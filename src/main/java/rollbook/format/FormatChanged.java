package rollbook.format;

import java.util.UUID;

/** A recording format was added, changed or removed. Heard in the same transaction. */
public record FormatChanged(UUID productionId) {}
