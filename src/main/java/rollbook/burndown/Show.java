package rollbook.burndown;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * What is still to be shot.
 *
 * @param today the date in the production's zone for which the pools' figures hold
 * @param days in the order in which they are counted; on one date the earlier in the list goes first
 * @param endOfShow the last date that counts, today at the earliest
 */
public record Show(LocalDate today, List<DayToCome> days, LocalDate endOfShow) {
    public Show {
        days = days.stream().sorted(Comparator.comparing(DayToCome::countedOn)).toList();
        if (endOfShow.isBefore(today)) {
            throw new IllegalArgumentException("The show ended on %s, before %s".formatted(endOfShow, today));
        }
        for (DayToCome day : days) {
            if (day.countedOn().isBefore(today) || day.countedOn().isAfter(endOfShow)) {
                throw new IllegalArgumentException(
                        "%s is counted neither today, %s, nor up to the end, %s".formatted(day, today, endOfShow));
            }
        }
    }
}
