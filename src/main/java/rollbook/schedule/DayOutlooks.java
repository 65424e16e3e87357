package rollbook.schedule;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Implemented by the module that forecasts: what is expected of shooting days. */
public interface DayOutlooks {
    /** By the day's id, in one statement; days of which nothing is known are left out. */
    Map<UUID, Outlook> of(UUID productionId, List<ShootingDay> days);

    /**
     * What is known of a day besides its plan.
     *
     * @param expected null of days that are over, and where no forecast tells
     * @param added whether the schedule didn't have it when the show was first forecast
     */
    record Outlook(@Nullable Expected expected, boolean added) {}

    /** Bytes of the whole day as recorded: in one of ten cases fewer than the low, in one of ten more than the high. */
    record Expected(long lowBytes, long medianBytes, long highBytes) {}
}
