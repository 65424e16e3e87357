package rollbook.demo;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

/**
 * When everything happens, so that the main unit's day 11 is in progress now. It was to be shot on the working day
 * before, but day 8 slipped by one and the rest with it:
 *
 * <pre>
 *   M T W T F   M T W T F   M T W T F   M T W T F   M T W T F
 *   1 2 3 4 5   6 7 - 8 9  10 11 ...                       24
 * </pre>
 *
 * @param now the end of the story: now, or the afternoon of the last working day on a weekend
 * @param workDate of day 11
 */
record StoryDates(ZoneId zone, Instant now, LocalDate workDate) {
    static final int MAIN_DAYS = 24;
    static final int SLIPPED = 8;
    static final int TODAY = 11;
    /** The second unit's days, by the main unit's day of the same date. */
    static final List<Integer> SECOND_UNIT_DAYS = List.of(3, 5, 6, 8, 10, 11, 13, 15, 18, 20);

    /** How long day 11 has been shot, wherever in the day or night the portal is started. */
    static final Duration SHOT_TODAY = Duration.ofHours(7);

    private static final LocalTime CALL = LocalTime.of(8, 0);
    private static final LocalTime WEEKEND_NOW = LocalTime.of(17, 0);

    static StoryDates endingAt(Instant started, ZoneId zone) {
        // A shooting day that began last night is still last night's.
        LocalDate date = LocalDate.ofInstant(started.minus(SHOT_TODAY).minus(Duration.ofHours(1)), zone);
        while (isWeekend(date)) {
            date = date.minusDays(1);
        }
        Instant now = started.minus(Duration.ofMinutes(3));
        Instant afternoon = date.atTime(WEEKEND_NOW).atZone(zone).toInstant();
        boolean sameDay = LocalDate.ofInstant(now.minus(SHOT_TODAY), zone).equals(date);
        return new StoryDates(zone, sameDay ? now : afternoon, date);
    }

    static boolean isWeekend(LocalDate date) {
        return date.getDayOfWeek() == DayOfWeek.SATURDAY || date.getDayOfWeek() == DayOfWeek.SUNDAY;
    }

    /** The dates as they were entered, before day 8 slipped. */
    List<LocalDate> enteredDates() {
        return workingDays(back(workDate, TODAY), MAIN_DAYS);
    }

    /** The dates as they are: from day 8 on the next working day each. */
    LocalDate dateOfMainDay(int number) {
        List<LocalDate> dates = workingDays(back(workDate, TODAY), MAIN_DAYS + 1);
        return dates.get(number < SLIPPED ? number - 1 : number);
    }

    List<LocalDate> secondUnitDates() {
        return SECOND_UNIT_DAYS.stream().map(this::dateOfMainDay).toList();
    }

    /** When the main unit's day begins: in the morning, but for day 11, which ends now. */
    Instant callOf(int mainDay) {
        return mainDay == TODAY
                ? now.minus(SHOT_TODAY)
                : dateOfMainDay(mainDay).atTime(CALL).atZone(zone).toInstant();
    }

    Instant at(LocalDate date, int hour, int minute) {
        return date.atTime(hour, minute).atZone(zone).toInstant();
    }

    /** That many days before the first shooting day, in the morning. */
    Instant daysBefore(int days) {
        return at(dateOfMainDay(1).minusDays(days), 10, 0);
    }

    /** So many working days later than the date, or than the first working day from it on. */
    static LocalDate plusWorkingDays(LocalDate date, int days) {
        return workingDays(date, days + 1).get(days);
    }

    private static LocalDate back(LocalDate from, int workingDays) {
        LocalDate date = from;
        for (int left = workingDays; left > 0; ) {
            date = date.minusDays(1);
            left -= isWeekend(date) ? 0 : 1;
        }
        return date;
    }

    private static List<LocalDate> workingDays(LocalDate first, int count) {
        List<LocalDate> dates = new ArrayList<>();
        for (LocalDate date = first; dates.size() < count; date = date.plusDays(1)) {
            if (!isWeekend(date)) {
                dates.add(date);
            }
        }
        return dates;
    }
}
