package rollbook.production;

import java.time.DayOfWeek;
import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;

/**
 * One show.
 *
 * @param workingDays the weekdays on which suppliers and couriers work; lead times are counted in them
 */
public record Production(
        UUID id, String code, String name, ZoneId zone, String currency, Set<DayOfWeek> workingDays, int version) {
    /** What a production's code looks like: it stands in every address of its pages. Empty is another fault. */
    public static final String CODE = "|[A-Z0-9][A-Z0-9-]{1,19}";
}
