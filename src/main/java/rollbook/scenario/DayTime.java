package rollbook.scenario;

import java.util.Locale;

/** Times of a day that was played: milliseconds since midnight of its date, which may pass 24 hours. */
final class DayTime {
    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;
    private static final int HOURS = 24;

    private DayTime() {}

    /** 20:41, and 00:41+1 on the next day; to the nearest minute. */
    static String clock(long millis) {
        long minutes = Math.round((double) millis / MINUTE);
        long days = daysAfter(millis);
        String clock = String.format(Locale.ROOT, "%02d:%02d", minutes / 60 % HOURS, minutes % 60);
        return days == 0 ? clock : clock + "+" + days;
    }

    /** On how many dates after its first one that minute lies. */
    static long daysAfter(long millis) {
        return Math.round((double) millis / MINUTE) / (HOURS * HOUR / MINUTE);
    }

    static double minutes(long millis) {
        return (double) millis / MINUTE;
    }
}
