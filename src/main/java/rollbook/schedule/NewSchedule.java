package rollbook.schedule;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * A run of shooting days of a unit, numbered on from the first, each with the same plan.
 *
 * @param dates in their order
 */
public record NewSchedule(UUID unitId, int firstNumber, List<LocalDate> dates, List<CameraPlan> plan) {}
