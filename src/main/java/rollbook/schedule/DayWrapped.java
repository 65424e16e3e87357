package rollbook.schedule;

import java.util.UUID;

/** A unit's day was wrapped. Heard in the same transaction. */
public record DayWrapped(UUID productionId, UUID dayId) {}
