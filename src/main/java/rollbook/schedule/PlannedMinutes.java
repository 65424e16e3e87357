package rollbook.schedule;

import java.math.BigDecimal;
import java.util.UUID;

/** How long a camera is to record in a format on a shooting day, in minutes. */
public record PlannedMinutes(UUID dayId, UUID cameraId, UUID formatId, BigDecimal minutes) {}
