package rollbook.calendar;

import java.time.Instant;
import java.time.LocalDate;

/**
 * Something that is due on a date.
 *
 * @param uid by which a calendar knows the thing again after it changed
 * @param date in the production's zone
 * @param path of the page that shows the thing
 * @param changedAt when what is said here came to be so
 * @param sequence how often the thing was changed, where it is counted
 */
record Entry(
        String uid, LocalDate date, String summary, String description, String path, Instant changedAt, int sequence) {}
