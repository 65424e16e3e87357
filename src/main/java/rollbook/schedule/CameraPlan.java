package rollbook.schedule;

import java.math.BigDecimal;
import java.util.UUID;

/** Minutes that a camera is to record in a format on one day. */
public record CameraPlan(UUID cameraId, UUID formatId, BigDecimal minutes) {}
