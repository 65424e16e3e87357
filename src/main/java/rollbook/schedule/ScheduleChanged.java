package rollbook.schedule;

import java.util.UUID;

/** A shooting day was added, moved, planned anew, started, wrapped, cancelled or removed. Heard in the same transaction. */
public record ScheduleChanged(UUID productionId) {}
