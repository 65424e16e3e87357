package rollbook.production;

import java.time.DayOfWeek;
import java.time.ZoneId;
import java.util.Set;
import java.util.UUID;

/**
 * One show.
 *
 * @param workingDays the weekdays on which suppliers and couriers work; lead times are counted in them
 * @param virusChecked whether somebody says that content is checked for viruses: Rollbook can't see it
 * @param writeBlocked whether somebody says that originals are read write-protected: Rollbook can't see it
 */
public record Production(
        UUID id,
        String code,
        String name,
        ZoneId zone,
        String currency,
        Set<DayOfWeek> workingDays,
        boolean virusChecked,
        boolean writeBlocked,
        int version) {
    /** What a production's code looks like: it stands in every address of its pages. Empty is another fault. */
    public static final String CODE = "|[A-Z0-9][A-Z0-9-]{1,19}";
}
