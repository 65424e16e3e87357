package rollbook.schedule;

import java.math.BigDecimal;
import java.util.UUID;

/**
 * What was planned of a day when it began to be shot, whatever became of its plan afterwards.
 *
 * @param minutes of all cameras together
 * @param bytes as recorded, in the formats as they were then
 */
public record PlanAtStart(UUID dayId, BigDecimal minutes, long bytes) {}
