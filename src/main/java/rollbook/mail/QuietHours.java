package rollbook.mail;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/**
 * When a person doesn't want mail, by the clocks where they are.
 *
 * @param until the first minute after it; earlier than {@code from} if midnight lies between
 */
record QuietHours(LocalTime from, LocalTime until, ZoneId zone) {

    /** That instant, or the end of the quiet hours that it lies in. */
    Instant notBefore(Instant instant) {
        ZonedDateTime there = instant.atZone(zone);
        LocalTime time = there.toLocalTime();
        boolean evening = !time.isBefore(from);
        boolean morning = time.isBefore(until);
        boolean overMidnight = until.isBefore(from);
        if (overMidnight ? !evening && !morning : !evening || !morning) {
            return instant;
        }
        LocalDate ends = overMidnight && evening ? there.toLocalDate().plusDays(1) : there.toLocalDate();
        // The hour that comes twice is quiet both times.
        return ends.atTime(until).atZone(zone).withLaterOffsetAtOverlap().toInstant();
    }
}
