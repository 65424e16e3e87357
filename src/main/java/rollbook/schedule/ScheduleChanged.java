package rollbook.schedule;

import java.util.UUID;

/** Shooting days or what is planned for them have changed. Heard in the same transaction. */
public record ScheduleChanged(UUID productionId) {}
