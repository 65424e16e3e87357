package rollbook.schedule;

import java.time.LocalDate;
import java.util.UUID;

/**
 * A numbered shooting day of a unit.
 *
 * @param date the calendar date on which it begins
 */
public record ShootingDay(
        UUID id, UUID unitId, String unitName, int number, LocalDate date, DayState state, String note, int version) {

    /** By which people find it: DAY11. Each unit may have one of that number. */
    public String code() {
        return "DAY" + number;
    }
}
